import type { WorkedValue } from "@plumbmark/core";
import type { Colour } from "../surroundings.js";
import { labelled, pad, plain } from "./lines.js";
import { palette } from "./palette.js";
import { showSourceById } from "./source.js";
import { distinct } from "./working.js";

export type Workings = ReadonlyMap<string, WorkedValue>;

const LABEL = 11;

const stepsOf = (worked: WorkedValue, width: number): readonly string[] =>
  distinct(worked.working).flatMap((line) => [
    ...labelled("formula", line.formula, 2, LABEL, width),
    ...labelled("", line.with, 2, LABEL, width),
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
    const heading = `${ink.strong(pad(plain(path), widest))}   ${plain(worked.text)}`;
    const open = (worked.missing ?? []).flatMap((why) => labelled("because", why, 2, LABEL, width));
    return [heading, ...open, ...stepsOf(worked, width), ""];
  });
  return lines.join("\n");
}
