/** Up to this share of full drive the curve is a straight line (WCAG 2.2). */
export const LINEAR_BELOW = 0.04045;

/** Linear light of one 8-bit component. */
function linear(byte: number): number {
  const c = byte / 255;
  return c <= LINEAR_BELOW ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

/** Relative luminance, 0 to 1, of a colour written `#rrggbb` (WCAG 2.2). Throws on any other writing. */
function relativeLuminance(colour: string): number {
  const bytes = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/iu
    .exec(colour)
    ?.slice(1)
    .map((hex) => Number.parseInt(hex, 16));
  if (!bytes) throw new Error(`${colour} is no colour written #rrggbb`);
  const [red, green, blue] = bytes.map(linear) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2). To be compared unrounded: 4.499 is under 4.5. */
export function contrastRatio(one: string, other: string): number {
  const [darker, lighter] = [relativeLuminance(one), relativeLuminance(other)].sort((a, b) => a - b) as [
    number,
    number,
  ];
  return (lighter + 0.05) / (darker + 0.05);
}
