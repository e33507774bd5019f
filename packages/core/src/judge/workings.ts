import { type Known, type Print, printer, siUnit, type Value } from "@plumbmark/calc";
import type { Build } from "../model/build.js";
import type { RepositoryFiles } from "../repository/files.js";
import { buildOf, contextOf } from "./inspect.js";
import { workingEntries } from "./judge.js";
import type { WorkingEntry } from "./record.js";

/** One computed value by path; without `value` it cannot be told, and `missing` says why. */
export interface WorkedValue {
  readonly value?: number;
  readonly unit: string;
  readonly text: string;
  readonly missing?: readonly string[];
  readonly working: readonly WorkingEntry[];
}

/** Every computed value of a build, by the path it is quoted with. */
export function valuesOf(build: Build): ReadonlyMap<string, Value> {
  const values = new Map<string, Value>();
  const put = (path: string, own: Readonly<Record<string, Value>>): void => {
    for (const [key, value] of Object.entries(own)) values.set(`${path}.${key}`, value);
  };
  for (const face of build.faces)
    put(face.path, { "panel-count": face.panelCount, width: face.width, height: face.height, "pixels-wide": face.pixelsWide, "pixels-high": face.pixelsHigh, pitch: face.pitch, mass: face.mass, "power-maximum": face.powerMaximum });
  for (const circuit of build.circuits) put(circuit.path, { load: circuit.load, current: circuit.current, "continuous-rating": circuit.continuousRating() });
  for (const run of build.runs) put(run.path, { current: run.current, "voltage-drop": run.voltageDrop, "voltage-at-end": run.voltageAtEnd });
  for (const chain of build.chains) put(chain.path, { panels: chain.panelCount, pixels: chain.pixels, capacity: chain.stated });
  for (const bar of build.bars) {
    put(bar.path, { load: bar.load });
    for (const hang of bar.hangs) put(hang.path, { reaction: hang.reaction });
  }
  return values;
}

const worked = (value: Value, print: Print): WorkedValue =>
  value.known
    ? { value: Number(value.value.toPrecision(9)), unit: siUnit(value.kind), text: print(value.value, value.kind), working: workingEntries([value as Known], print) }
    : { unit: siUnit(value.kind), text: "cannot be told", missing: value.gaps.map((gap) => gap.because ?? `${gap.of ?? "The document"} has no ${gap.what} written down.`), working: [] };

/** Workings of one document of the repository. @throws RangeError when it is not among the documents. */
export function workings(files: RepositoryFiles, path: string, today: string): ReadonlyMap<string, WorkedValue> {
  const context = contextOf(files, today);
  const opened = context.opened.find((each) => each.file.path === path);
  if (!opened) throw new RangeError(`There is no build document ${path}.`);
  const { build } = buildOf(opened, context);
  const print = printer(build.practice === "us" ? "us" : "metric");
  return new Map([...valuesOf(build)].map(([key, value]) => [key, worked(value, print)]));
}
