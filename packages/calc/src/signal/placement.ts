/** A rectangle of whole pixels on a raster: top-left corner, width, height. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Whether a rectangle lies wholly on a raster. */
export const isInside = (one: Rectangle, raster: { readonly width: number; readonly height: number }): boolean =>
  one.x >= 0 && one.y >= 0 && one.x + one.width <= raster.width && one.y + one.height <= raster.height;

/** The part two rectangles share; undefined when they only touch or lie apart. */
export function overlap(one: Rectangle, other: Rectangle): Rectangle | undefined {
  const x = Math.max(one.x, other.x);
  const y = Math.max(one.y, other.y);
  const width = Math.min(one.x + one.width, other.x + other.width) - x;
  const height = Math.min(one.y + one.height, other.y + other.height) - y;
  return width > 0 && height > 0 ? { x, y, width, height } : undefined;
}
