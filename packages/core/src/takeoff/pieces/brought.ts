import type { Design } from "../../model/design.js";
import { byLength, notCounted, number, type Piece, wholePiece } from "../piece.js";

const USE = "brought along";

/** What is neither hung nor part of the picture, but has to be there; cables are weighed by their length. */
export const broughtPieces = ({ reader }: Design): readonly Piece[] =>
  reader.keys("also-bring").map((name) => {
    const path = `also-bring.${name}`;
    const long = reader.has(`${path}.count`);
    const written = reader.count(long ? `${path}.count` : path, Number.MAX_SAFE_INTEGER);
    const count = written === 0 ? notCounted(path, "number of them", name) : number(written, name);
    const ordered = { name, part: reader.parts.get(name), count, use: USE };
    return long
      ? byLength(ordered, reader.value(`${path}.length`, "length", "length", `The part ${name}`))
      : wholePiece(ordered);
  });
