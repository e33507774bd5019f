import type { Value } from "@plumbmark/calc";
import type { Design } from "../../model/design.js";
import type { LaidCable } from "../cables.js";
import { byLength, notCounted, number, type Piece } from "../piece.js";
import { NOT_STATED } from "../table.js";

const lengthText = (length: Value): string => (length.known ? String(length.value) : NOT_STATED);

/** Cables of one part and length that belong to one run, chain or path make one entry. */
export function cablePieces(cables: readonly LaidCable[]): readonly Piece[] {
  const groups = new Map<string, LaidCable[]>();
  for (const cable of cables) {
    const key = [cable.name, lengthText(cable.length), cable.use, cable.kind].join("\u0000");
    const group = groups.get(key);
    if (group) group.push(cable);
    else groups.set(key, [cable]);
  }
  return [...groups.values()].map((group) => {
    const { name, part, kind, length, use } = group[0] as LaidCable;
    return byLength({ name, part, kind: `${kind} cable`, count: number(group.length, kind), use }, length);
  });
}

/** Jumpers of runs and chains whose panels are not written down: how many there are cannot be told. */
export const unknownJumpers = (build: Design): readonly Piece[] =>
  [...build.runs, ...build.chains]
    .filter(({ panels, jumper }) => panels === undefined && jumper.written)
    .map(({ path, name, label, jumper }) => {
      const count = notCounted(`${path}.panels`, "panels in cable order", label);
      const use = `${path.startsWith("power.") ? "run" : "chain"} ${name}`;
      return byLength({ name: jumper.part?.name ?? NOT_STATED, part: jumper.part, count, use }, jumper.length);
    });
