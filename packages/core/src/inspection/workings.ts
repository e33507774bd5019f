import { guessMark, type Known, type Print, printer, siUnit, type Value } from "@plumbmark/calc";
import type { DocumentModel } from "./document-model.js";
import { workingEntries } from "./judging/judge.js";
import type { WorkingEntry } from "./record.js";

/** One computed value by path; without `value` it cannot be told, and `missing` says why. */
export interface WorkedValue {
  readonly value?: number;
  readonly unit: string;
  readonly text: string;
  readonly missing?: readonly string[];
  readonly working: readonly WorkingEntry[];
}

const worked = (value: Value, print: Print): WorkedValue =>
  value.known
    ? {
        value: Number(value.value.toPrecision(9)),
        unit: siUnit(value.kind),
        text: `${print(value.value, value.kind)}${guessMark(value)}`,
        working: workingEntries([value as Known], print),
      }
    : {
        unit: siUnit(value.kind),
        text: "cannot be told",
        missing: value.gaps.map((gap) => gap.because ?? `${gap.of ?? "The document"} has no ${gap.what} written down.`),
        working: [],
      };

/** Every computed value of a document with its working, printed in its own units, by path. */
export function workedValues({
  build,
  system,
}: Pick<DocumentModel, "build" | "system">): ReadonlyMap<string, WorkedValue> {
  const print = printer(system);
  return new Map([...build.values].map(([key, value]) => [key, worked(value, print)]));
}
