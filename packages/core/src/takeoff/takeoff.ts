import type { Design } from "../model/design.js";
import { once } from "../model/reading/once.js";
import { cablesOf, type LaidCable } from "./cables.js";
import type { Piece } from "./piece.js";
import { broughtPieces } from "./pieces/brought.js";
import { cablePieces, unknownJumpers } from "./pieces/cables.js";
import { devicePieces } from "./pieces/devices.js";
import { facePieces } from "./pieces/panels.js";
import { riggingPieces } from "./pieces/rigging.js";

/** Quantities counted from the design: every cable, and every piece that has to be there. */
export class Takeoff {
  constructor(readonly build: Design) {}

  get cables(): readonly LaidCable[] {
    return once(this, "cables", () => cablesOf(this.build));
  }

  get pieces(): readonly Piece[] {
    return once(this, "pieces", () => [
      ...facePieces(this.build),
      ...cablePieces(this.cables),
      ...unknownJumpers(this.build),
      ...devicePieces(this.build),
      ...riggingPieces(this.build),
      ...broughtPieces(this.build),
    ]);
  }
}
