import type { Design } from "../model/design.js";
import { once, onceAcross } from "../model/reading/once.js";
import { cablesOf, type LaidCable } from "./cables.js";
import type { Piece } from "./piece.js";
import { broughtPieces } from "./pieces/brought.js";
import { cablePieces, unknownJumpers } from "./pieces/cables.js";
import { devicePieces } from "./pieces/devices.js";
import { facePieces } from "./pieces/panels.js";
import { riggingPieces } from "./pieces/rigging.js";

/** Kinds of pieces: while a document is written, those of a kind are counted again where what they rest on changed. */
const PIECES: readonly (readonly [kind: string, pieces: (takeoff: Takeoff) => readonly Piece[]])[] = [
  ["faces", ({ build }) => facePieces(build)],
  ["cables", ({ cables }) => cablePieces(cables)],
  ["jumpers", ({ build }) => unknownJumpers(build)],
  ["devices", ({ build }) => devicePieces(build)],
  ["rigging", ({ build }) => riggingPieces(build)],
  ["brought", ({ build }) => broughtPieces(build)],
];

/** Quantities counted from the design: every cable, and every piece that has to be there. */
export class Takeoff {
  constructor(readonly build: Design) {}

  get cables(): readonly LaidCable[] {
    return onceAcross(this.build, "cables laid", () => cablesOf(this.build));
  }

  get pieces(): readonly Piece[] {
    return once(this, "pieces", () =>
      PIECES.flatMap(([kind, pieces]) => onceAcross(this.build, `pieces of ${kind}`, () => pieces(this))),
    );
  }
}
