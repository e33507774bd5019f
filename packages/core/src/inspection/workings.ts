import { type Known, type Print, printer, siUnit, type Value } from "@plumbmark/calc";
import { systemOf } from "../model/reading/system.js";
import type { RepositoryFiles } from "../repository/files.js";
import { contextOf } from "./context.js";
import { workingEntries } from "./judge.js";
import { buildOf } from "./models.js";
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
        text: print(value.value, value.kind),
        working: workingEntries([value as Known], print),
      }
    : {
        unit: siUnit(value.kind),
        text: "cannot be told",
        missing: value.gaps.map((gap) => gap.because ?? `${gap.of ?? "The document"} has no ${gap.what} written down.`),
        working: [],
      };

/** Workings of one document of the repository. @throws RangeError when it is not among the documents. */
export function workings(files: RepositoryFiles, path: string, today: string): ReadonlyMap<string, WorkedValue> {
  const context = contextOf(files, today);
  const opened = context.opened.find((each) => each.file.path === path);
  if (!opened) throw new RangeError(`There is no build document ${path}.`);
  const { build } = buildOf(opened, context);
  const print = printer(systemOf(build.reader, build.practice));
  return new Map([...build.values].map(([key, value]) => [key, worked(value, print)]));
}
