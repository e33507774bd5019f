import { type Known, missing, type Value } from "@plumbmark/calc";
import type { Assembly, AssemblyPart, FitRange } from "./assembly.js";
import type { Hang } from "./hang.js";
import type { Leg } from "./leg.js";

/** An end of an assembly, and what takes hold there. */
export interface Grip {
  readonly end: "bar" | "structure";
  /** The assembly: its place in the document, and what messages call it. */
  readonly path: string;
  readonly label: string;
  readonly part: AssemblyPart;
  /** A sling is laid round anything, or pulled straight; hardware is made for a pipe, a flange, an eye, or nobody says. */
  readonly by: "round" | "straight" | "eye" | "pipe" | "flange" | undefined;
  /** What it is made for; undefined where nothing has to fit, or nobody says. */
  readonly made: FitRange | undefined;
  /** What is there: diameter of the pipe, or width of the flange. */
  readonly there: Value<"length">;
}

const WHAT = { pipe: "diameter of the pipe above it", flange: "width of the beam's flange above it" } as const;

/** What the structure above is like where a hang or a leg takes hold: that of its own point, else that above the bar. */
function above(held: Hang | Leg, bar: Hang["bar"], key: "pipe" | "flange"): Value<"length"> {
  const { reader } = bar.build;
  const structure = reader.text(`${held.path}.point`)?.split(".")[0];
  const { venue } = reader;
  if (!venue || structure === undefined || structure === bar.under)
    return reader.value(`${bar.path}.${key}`, "length", WHAT[key], bar.label);
  const path = `structure.${structure}.${key}`;
  const found = venue.survey.values.get(path) as Known<"length"> | undefined;
  return found
    ? { ...found, origin: { ...found.origin, stated: venue.at(path) } as Known["origin"] }
    : missing("length", { path, file: venue.survey.file, what: WHAT[key], of: held.label, place: structure });
}

function gripAt(
  end: Grip["end"],
  assembly: Assembly,
  there: (key: "pipe" | "flange") => Value<"length">,
): readonly Grip[] {
  const part = end === "bar" ? assembly.parts.at(-1) : assembly.parts[0];
  // That it is not written, or not in the catalogue, is told by another rule.
  if (!part?.part) return [];
  const here = { end, path: assembly.path, label: assembly.label, part };
  const none = { made: undefined, there: there("pipe") };
  if (assembly.isSling(part)) return [{ ...here, ...none, by: part.mode === "straight" ? "straight" : "round" }];
  const flange = end === "structure" ? assembly.fitsFlange(part) : undefined;
  if (flange) return [{ ...here, by: "flange", made: flange, there: there("flange") }];
  const pipe = assembly.fitsPipe(part);
  if (pipe) return [{ ...here, by: "pipe", made: pipe, there: there("pipe") }];
  const isInEye = end === "structure" && part.part.data.flange === "none";
  return [{ ...here, ...none, by: isInEye ? "eye" : undefined }];
}

/** What takes hold of the bar and of the structure: the last and the first part of what a hang hangs by. */
export function gripsOf(hang: Hang): readonly Grip[] {
  const { bar, legs } = hang;
  const grip = bar.section.grip;
  const own = hang.assembly === undefined && legs.length > 0 ? [] : [hang];
  const ends: readonly (Hang | Leg)[] = legs.length > 0 ? legs : own;
  const lower: readonly (Hang | Leg)[] = own.length > 0 ? own : legs;
  const assemblyOf = (held: Hang | Leg): Assembly => ("ownAssembly" in held ? held.ownAssembly : held.assembly);
  return [
    ...ends.flatMap((held) => gripAt("structure", assemblyOf(held), (key) => above(held, bar, key))),
    ...lower.flatMap((held) => gripAt("bar", assemblyOf(held), () => grip)),
  ];
}
