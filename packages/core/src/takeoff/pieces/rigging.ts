import { missing } from "@plumbmark/calc";
import type { Design } from "../../model/design.js";
import { partName } from "../../model/reading/reader.js";
import type { AssemblyPart } from "../../model/rigging/assembly.js";
import type { Bar } from "../../model/rigging/bar.js";
import type { Hang } from "../../model/rigging/hang.js";
import { byLength, notCounted, number, type Piece, weighedPiece, wholePiece } from "../piece.js";
import { NOT_STATED } from "../table.js";

const EYES = 2;

/** A part of an assembly, and the clips of a rope that ends in clips: so many on each of its two eyes. */
function hardware({ name, part, termination, clips, path }: AssemblyPart, use: string): readonly Piece[] {
  const own = wholePiece({ name: name === "" ? NOT_STATED : name, part, count: number(1, name), use });
  if (termination !== "clips") return [own];
  const count =
    clips === undefined ? notCounted(path, "number of clips on each eye", name) : number(clips * EYES, "clips");
  const mass = missing("mass", { path, what: "mass of the clips", of: name });
  return [own, { ...weighedPiece(`clips of ${name}`, "rope clip", mass, use), count }];
}

/** Everything that bears a hang: its assembly and the legs of its bridle. */
const hangPieces = (hang: Hang): readonly Piece[] =>
  hang.strands.flatMap(({ assembly }) => assembly.parts.flatMap((part) => hardware(part, `bar ${hang.bar.name}`)));

function barPieces(bar: Bar): readonly Piece[] {
  const { reader } = bar.build;
  const name = reader.text(`${bar.path}.section`) ?? NOT_STATED;
  const other = bar.otherLoad;
  const use = `bar ${bar.name}`;
  return [
    byLength(
      { name, part: reader.parts.get(name), kind: "bar", count: number(1, "bar"), use },
      bar.length,
      bar.massPerLength,
    ),
    ...(other ? [weighedPiece("other load", "other load", other, use)] : []),
    ...bar.hangs.flatMap(hangPieces),
  ];
}

/** The second suspension of each bar: each of its parts once at every hang it is at. */
const secondPieces = ({ bars }: Design): readonly Piece[] =>
  bars.flatMap(({ second, name }) => {
    if (!second) return [];
    const { hangs, path, label, assembly } = second;
    const use = `second suspension of bar ${name}`;
    if (hangs) return hangs.flatMap(() => assembly.parts.flatMap((part) => hardware(part, use)));
    const count = notCounted(`${path}.at`, "hangs it is at", label);
    return assembly.parts.map(({ name: part, part: entry }) => wholePiece({ name: part, part: entry, count, use }));
  });

/** The second suspension as an older form of document has it: each of its parts once at every hang. */
function secondaryPieces(build: Design): readonly Piece[] {
  const hangs = build.bars.reduce((total, bar) => total + bar.hangs.length, 0);
  const count = hangs === 0 ? notCounted("rigging.bars", "hangs", "The rigging") : number(hangs, "hangs");
  const use = "second suspension, one at each hang";
  return build.reader
    .list("rigging.secondary")
    .map(partName)
    .map((name) => wholePiece({ name, part: build.reader.parts.get(name), count, use }));
}

/** What holds a standing face upright. */
const basePieces = ({ faces }: Design): readonly Piece[] =>
  faces.flatMap(({ stand, name }) =>
    stand
      ? [
          weighedPiece("base", "base", stand.baseMass, `face ${name}`),
          weighedPiece("ballast", "ballast", stand.ballast, `face ${name}`),
        ]
      : [],
  );

export const riggingPieces = (build: Design): readonly Piece[] => [
  ...build.bars.flatMap(barPieces),
  ...secondPieces(build),
  ...secondaryPieces(build),
  ...basePieces(build),
];
