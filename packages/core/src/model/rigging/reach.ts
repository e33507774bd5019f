import { missing, sum, type Value } from "@plumbmark/calc";
import { partOptional, partValue } from "../reading/reader.js";
import type { Assembly, AssemblyPart } from "./assembly.js";

/** Shortest and longest a part can be: a rope its length, hardware what it adds, a turnbuckle from end to end. */
function lengthOf({ part, name }: AssemblyPart, label: string): readonly [Value<"length">, Value<"length">] {
  const of = `${label}: ${name}`;
  if (part?.kind === "rope") {
    const length = partValue(part, "length", "length", "length between its ends", of);
    return [length, length];
  }
  const one = partOptional(part, "effective", "length", "length it adds");
  if (one?.known) return [one, one];
  const what = "length it adds";
  return [partValue(part, "effective.1", "length", what, of), partValue(part, "effective.2", "length", what, of)];
}

/** Shortest and longest an assembly can be made; missing when a part does not say how long it is. */
export function assembledLength({ parts, path, label }: Assembly): readonly [Value<"length">, Value<"length">] {
  if (parts.length === 0) {
    const none = missing("length", { path, what: "assembly", of: label });
    return [none, none];
  }
  const lengths = parts.map((part) => lengthOf(part, label));
  return [
    sum(
      lengths.map(([short]) => short),
      "length",
      "shortest",
    ),
    sum(
      lengths.map(([, long]) => long),
      "length",
      "longest",
    ),
  ];
}
