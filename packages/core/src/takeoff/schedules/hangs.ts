import type { Value } from "@plumbmark/calc";
import type { Build } from "../../model/build.js";
import type { Assembly } from "../../model/rigging/assembly.js";
import type { Hang } from "../../model/rigging/hang.js";
import { type ColumnOf, NOT_STATED } from "../table.js";

/** A suspension point, or one leg of a bridle below it. */
export interface HangLine {
  /** Its place in the document. */
  readonly path: string;
  readonly bar: string;
  readonly name: string;
  readonly at: Value | undefined;
  readonly assembly: Assembly;
  readonly load: Value;
  readonly worst: Value;
  /** What the structure bears there, level and at worst: the load with the hardware it hangs by. */
  readonly onStructure: readonly [Value, Value] | undefined;
  /** The case that governs, in words. */
  readonly when: string;
  readonly angle: Value | undefined;
  readonly structure: Value | undefined;
}

function linesOf(hang: Hang): readonly HangLine[] {
  const { bar } = hang;
  const base = { bar: bar.name, angle: undefined, at: undefined };
  const { reaction, when } = hang.worst;
  const own: HangLine = {
    ...base,
    path: hang.path,
    name: hang.name,
    at: hang.at,
    assembly: hang.ownAssembly,
    load: hang.reaction,
    worst: reaction,
    onStructure: hang.bridled ? undefined : [hang.onStructure(hang.level), hang.onStructure(reaction)],
    when: when.trim().replace(/^, and /u, "with "),
    structure: hang.bridled ? undefined : hang.structure,
  };
  const legs = hang.legs.map((leg) => ({
    ...base,
    path: leg.path,
    name: `${hang.name} ${leg.side} leg`,
    assembly: leg.assembly,
    load: leg.tension(hang.reaction),
    worst: leg.tension(reaction),
    onStructure: [leg.onStructure(leg.tension(hang.level)), leg.onStructure(leg.tension(reaction))] as const,
    when: when.trim().replace(/^, and /u, "with "),
    angle: leg.angle,
    structure: leg.structure,
  }));
  return [own, ...legs];
}

export const hangLines = ({ bars }: Build): readonly HangLine[] => bars.flatMap(({ hangs }) => hangs.flatMap(linesOf));

/** Parts from the structure down, as they are written. */
const partsOf = ({ assembly, angle }: HangLine): string => {
  if (assembly.parts.length > 0) return assembly.parts.map(({ name }) => name || NOT_STATED).join(", ");
  return angle === undefined ? "" : NOT_STATED;
};

export const hangColumns: readonly ColumnOf<HangLine>[] = [
  { name: "Bar", of: ({ bar }) => bar },
  { name: "Hang", of: ({ name }) => name },
  { name: "From the left", kind: "length", of: ({ at }) => at },
  { name: "Assembly, load order", of: partsOf },
  { name: "Load, level", kind: "mass", of: ({ load }) => load },
  { name: "Load at worst", kind: "mass", of: ({ worst }) => worst },
  { name: "At worst", of: ({ when }) => when },
  { name: "On structure, level", kind: "mass", of: ({ onStructure }) => onStructure?.[0] },
  { name: "On structure at worst", kind: "mass", of: ({ onStructure }) => onStructure?.[1] },
  { name: "Angle", kind: "angle", of: ({ angle }) => angle },
  {
    name: "Least WLL",
    kind: "mass",
    of: ({ assembly }) => (assembly.parts.length > 0 ? assembly.weakest : undefined),
  },
  { name: "Structure rated", kind: "mass", of: ({ structure }) => structure },
];
