import type { Value } from "@plumbmark/calc";
import { kindMass } from "../faces/face-kinds.js";
import { partValue } from "../reading/reader.js";
import type { RiggingDesign } from "../rigging/rigging-design.js";

/** Something lifted by hand in one piece. */
export interface LiftedPiece {
  readonly path: string;
  readonly label: string;
  readonly mass: Value;
}

/** A panel of every kind in every face. */
function panels({ faces }: RiggingDesign): readonly LiftedPiece[] {
  const kinds = new Map<string, LiftedPiece>();
  for (const face of faces)
    for (const kind of face.kinds) {
      const name = kind.part?.name ?? `of face ${face.name}`;
      if (!kinds.has(name))
        kinds.set(name, { path: `${face.path}.panel`, label: `Panel ${name}`, mass: kindMass(face, kind) });
    }
  return [...kinds.values()];
}

/** The processor, where the catalogue has it. */
function processor({ processor: part }: RiggingDesign): readonly LiftedPiece[] {
  const label = `The processor ${part?.name ?? ""}`;
  return part ? [{ path: "data.processor", label, mass: partValue(part, "mass", "mass", "mass", label) }] : [];
}

/** Panels, bars, the processor, and what is written under `pieces`; extras of a face are fitted to it, not lifted alone. */
export function piecesOf(build: RiggingDesign): readonly LiftedPiece[] {
  const base = "rigging.lifting.pieces";
  const written = build.reader.keys(base).map((name) => ({
    path: `${base}.${name}`,
    label: `The piece ${name}`,
    mass: build.reader.value(`${base}.${name}`, "mass", "mass", `The piece ${name}`),
  }));
  return [
    ...panels(build),
    ...build.bars.map(({ path, label, selfMass }) => ({ path, label, mass: selfMass })),
    ...processor(build),
    ...written,
  ];
}
