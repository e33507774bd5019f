import type { Design } from "../model/design.js";
import { cablesOf, type LaidCable } from "./cables.js";
import type { Piece } from "./piece.js";
import { broughtPieces } from "./pieces/brought.js";
import { cablePieces, unknownJumpers } from "./pieces/cables.js";
import { devicePieces } from "./pieces/devices.js";
import { facePieces } from "./pieces/panels.js";
import { riggingPieces } from "./pieces/rigging.js";

/** Quantities counted from the design: every cable, and every piece that has to be there. */
export class Takeoff {
  #cables: readonly LaidCable[] | undefined;
  #pieces: readonly Piece[] | undefined;

  constructor(readonly build: Design) {}

  get cables(): readonly LaidCable[] {
    this.#cables ??= cablesOf(this.build);
    return this.#cables;
  }

  get pieces(): readonly Piece[] {
    this.#pieces ??= [
      ...facePieces(this.build),
      ...cablePieces(this.cables),
      ...unknownJumpers(this.build),
      ...devicePieces(this.build),
      ...riggingPieces(this.build),
      ...broughtPieces(this.build),
    ];
    return this.#pieces;
  }
}
