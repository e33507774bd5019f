import type { InspectionRecord } from "@plumbmark/core";
import type { VerdictChange } from "../record/changes.js";
import type { Colour } from "../terminal/context.js";
import { type Check, SAFETY } from "./form.js";
import { labelled, pad, plain, wrap } from "./lines.js";
import { type Palette, palette } from "./palette.js";

export interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const line = ({ level, rule, at, says, outcome }: Check, width: number): readonly string[] => [
  `    ${pad(level.toUpperCase(), 8)}${plain(rule)}   line ${at.line}${outcome === "open" ? "   open" : ""}`,
  ...wrap(says, width - 12).map((text) => " ".repeat(12) + text),
];

/** Checks under a label; nothing when there are none. */
export const told = (label: string, checks: readonly Check[], width: number): readonly string[] =>
  checks.length === 0 ? [] : [`  ${label}`, ...checks.flatMap((check) => line(check, width))];

const showChange = (
  { file, was, is, appears, goes }: VerdictChange,
  width: number,
  ink: Palette,
): readonly string[] => [
  `${ink.strong(plain(file))}   ${ink.verdict(is)(is)}, was ${was}`,
  ...told("stands against it now", appears, width),
  ...told("stands against it no longer", goes, width),
  "",
];

/** Which documents change verdict between two house standards, and by which checks. */
export function againstText(
  now: InspectionRecord,
  before: InspectionRecord,
  changes: readonly VerdictChange[],
  { width, colour }: Page,
): string {
  const ink = palette(colour);
  const count = (is: VerdictChange["is"]): number => changes.filter((change) => change.is === is).length;
  const drafts = count("draft");
  const kept = now.documents.length - changes.length;
  const lines = [
    ...labelled("by", now.standard, 0, 11, width),
    ...labelled("against", before.standard, 0, 11, width),
    "",
    ...changes.flatMap((change) => showChange(change, width, ink)),
    `${now.documents.length} documents: ${count("not ready")} no longer ready, ${count("ready")} ready now, ${drafts > 0 ? `${drafts} drafts now, ` : ""}${kept} with the same verdict.`,
    ...wrap(SAFETY, width).map((text) => ink.quiet(text)),
  ];
  return `${lines.join("\n")}\n`;
}
