import type { Point } from "@plumbmark/calc";
import type { Part } from "../../repository/parts.js";

/** The sockets of a panel, as `connector-at` names them. */
export const sockets = ["power-in", "power-out", "data-in", "data-out"] as const;

export type Socket = (typeof sockets)[number];

/** Place of a socket from the panel's top left corner as seen from the rear, metres; undefined when it is not written down. */
export function socketAt(part: Part | undefined, socket: Socket): Point | undefined {
  const [x, y] = ["1", "2"].map((half) => part?.quantities.get(`connector-at.${socket}.${half}`)?.value);
  return x === undefined || y === undefined ? undefined : { x, y };
}

/** A turn of the panel by quarters as the audience sees it, clockwise, about its centre. */
export function turned({ x, y }: Point, degrees: number): Point {
  if (degrees === 90) return { x: -y, y: x };
  if (degrees === 180) return { x: -x, y: -y };
  return degrees === 270 ? { x: y, y: -x } : { x, y };
}
