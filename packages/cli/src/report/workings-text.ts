import type { WorkedValue } from "@plumbmark/core";
import type { Colour } from "../terminal/context.js";
import { labelled, pad, plain } from "./lines.js";
import { palette } from "./palette.js";
import { showSourceById } from "./source.js";
import { distinct } from "./working.js";

export type Workings = ReadonlyMap<string, WorkedValue>;

const LABEL = 11;

/** The steps of a working; a source is named once for the steps in a row that rest on it. */
function stepsOf(worked: WorkedValue, width: number): readonly string[] {
  const steps = distinct(worked.working);
  return steps.flatMap(({ formula, with: numbers, source, from = [] }, index) => [
    ...labelled(source === steps[index - 1]?.source ? "" : "formula", formula, 2, LABEL, width),
    ...labelled("", numbers, 4, LABEL, width),
    ...from.flatMap((stated) => labelled("", `from ${stated}`, 4, LABEL, width)),
    ...(source === undefined || source === steps[index + 1]?.source
      ? []
      : labelled("rests on", showSourceById(source), 2, LABEL, width)),
  ]);
}

/** Computed values, each with its path, its value and the working that leads to it. */
export function workingsText(
  values: Workings,
  { width, colour }: { readonly width: number; readonly colour: Colour },
): string {
  const ink = palette(colour);
  const widest = Math.min(48, Math.max(0, ...[...values.keys()].map((path) => path.length)));
  const lines = [...values].flatMap(([path, worked]) => {
    const heading = `${ink.strong(pad(plain(path), widest))}   ${plain(worked.text)}`;
    const open = (worked.missing ?? []).flatMap((why) => labelled("because", why, 2, LABEL, width));
    return [heading, ...open, ...stepsOf(worked, width), ""];
  });
  return lines.join("\n");
}
