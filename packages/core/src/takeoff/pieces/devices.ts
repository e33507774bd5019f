import type { Design } from "../../model/design.js";
import { devicePower } from "../../model/power/device.js";
import type { Part } from "../../repository/parts.js";
import { number, type Piece, wholePiece } from "../piece.js";
import { stationsOf } from "../stations.js";
import { NOT_STATED } from "../table.js";

const device = (name: string, part: Part | undefined, use: string): Piece =>
  wholePiece(
    { name, part, count: number(1, name), use },
    part?.data.power === "none" ? undefined : devicePower(part, name),
  );

/** The processor and everything in the picture path that is no cable; a processor that ends the path counts once. */
export function devicePieces(build: Design): readonly Piece[] {
  const { reader } = build;
  const stations = stationsOf(build).filter(({ kind }) => kind !== "video-cable");
  const written = reader.has("data.processor");
  const listed = written ? stations.filter(({ kind }) => kind !== "processor") : stations;
  const processor = reader.text("data.processor.part") ?? NOT_STATED;
  return [
    ...(written ? [device(processor, build.processor, "data")] : []),
    ...listed.map(({ name, part }) => device(name, part, "picture path")),
  ];
}
