import type { InspectionRecord } from "@plumbmark/core";
import type { Difference } from "../record/differences.js";
import { type Page, told } from "./against-text.js";
import { SAFETY } from "./form.js";
import { labelled, pad, plain, wrap } from "./lines.js";
import { type Palette, palette } from "./palette.js";

function verdicts({ was, is }: Difference, ink: Palette): string {
  if (is === undefined) return `gone, was ${was}`;
  const now = ink.verdict(is)(is);
  return was === undefined ? `new, ${now}` : was === is ? `${now} as before` : `${now}, was ${was}`;
}

const figureLines = ({ figures }: Difference): readonly string[] =>
  Object.entries(figures).map(([name, { was, is }]) => `  ${pad(name, 8)}${is}, was ${was}`);

const show = (difference: Difference, width: number, ink: Palette): readonly string[] => [
  `${ink.strong(plain(difference.file))}   ${verdicts(difference, ink)}`,
  ...figureLines(difference),
  ...told("stands against it now", difference.appears, width),
  ...told("stands against it no longer", difference.goes, width),
  "",
];

/** How documents differ from what they were in a revision. */
export function revisionText(
  revision: string,
  now: InspectionRecord,
  found: readonly Difference[],
  { width, colour }: Page,
): string {
  const ink = palette(colour);
  const became = (is: Difference["is"]): number => found.filter((each) => each.is === is && each.was !== is).length;
  const lines = [
    ...labelled("against", plain(revision), 0, 11, width),
    "",
    ...found.flatMap((each) => show(each, width, ink)),
    `${now.documents.length} documents now: ${became("ready")} became ready, ${became("not ready")} became not ready, ${found.length} differ in all.`,
    ...wrap(SAFETY, width).map((text) => ink.quiet(text)),
  ];
  return `${lines.join("\n")}\n`;
}
