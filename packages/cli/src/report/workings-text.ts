import type { workings } from "@plumbmark/core";
import type { Colour } from "../surroundings.js";
import { labelled, pad, plain } from "./lines.js";
import { palette } from "./palette.js";
import { showSourceById } from "./source.js";
import { showWorking } from "./working.js";

export type Workings = ReturnType<typeof workings>;
export type Worked = Workings extends ReadonlyMap<string, infer One> ? One : never;

const LABEL = 11;

const stepsOf = (worked: Worked, width: number): readonly string[] =>
  worked.working.flatMap((line) => [
    ...labelled("formula", line.formula, 2, LABEL, width),
    ...labelled("", showWorking(line), 2, LABEL, width),
    ...(line.source === undefined ? [] : labelled("rests on", showSourceById(line.source), 2, LABEL, width)),
  ]);

/** Computed values, each with its path, its value and the working that leads to it. */
export function workingsText(
  values: Workings,
  { width, colour }: { readonly width: number; readonly colour: Colour },
): string {
  const ink = palette(colour);
  const widest = Math.min(48, Math.max(0, ...[...values.keys()].map((path) => path.length)));
  const lines = [...values].flatMap(([path, worked]) => {
    const open = (worked.missing ?? []).join(", ");
    const value = worked.value === undefined ? "open" : plain(worked.text);
    const heading = `${ink.strong(pad(plain(path), widest))}   ${value}`;
    return [
      heading,
      ...(open === "" ? [] : labelled("write down", open, 2, LABEL, width)),
      ...stepsOf(worked, width),
      "",
    ];
  });
  return lines.join("\n");
}
