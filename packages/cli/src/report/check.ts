import type { Check } from "./form.js";
import { labelled, pad, plain, wrap } from "./lines.js";
import type { Palette } from "./palette.js";
import { showSource } from "./source.js";
import { distinct } from "./working.js";

const INDENT = 10;
const LABEL = 11;

/** Where it stands and, unless it simply fails, how it came out: `line 78   open`. */
const placeOf = ({ at, outcome }: Check): string => `line ${at.line}${outcome === "fails" ? "" : `   ${outcome}`}`;

function heading(check: Check, width: number, ink: Palette): string {
  const level = ink.level(check)(pad(check.level.toUpperCase(), INDENT - 2));
  const place = placeOf(check);
  const room = Math.max(plain(check.rule).length + 3, Math.min(56, width - INDENT - 18));
  return `  ${level}${ink.strong(pad(plain(check.rule), room))}${place}`;
}

/** What stands below the sentence of a check that does not hold, label by label. */
function grounds(check: Check): readonly (readonly [label: string, text: string])[] {
  const { waiver, missing } = check;
  const working = distinct(check.working ?? [])
    .map((line) => line.with)
    .join(";  ");
  return [
    ["working", working],
    ...check.sources.map((source, index) => [index === 0 ? "rests on" : "", showSource(source)] as const),
    ["write down", check.outcome === "open" && !check.mend ? (missing ?? []).join(", ") : ""],
    ["waived", waiver ? `${waiver.because} (${waiver.by}, until ${waiver.until})` : ""],
    ["mend", check.outcome === "waived" ? "" : (check.mend ?? "")],
  ];
}

/** One check as lines of text. A check that holds is told in two; the others with their working, source and mend. */
export function showCheck(check: Check, width: number, ink: Palette): readonly string[] {
  const says = wrap(check.says, width - INDENT).map((line) => " ".repeat(INDENT) + line);
  if (check.outcome === "holds") return [heading(check, width, ink), ...says];
  const below = grounds(check).flatMap(([label, text]) =>
    text === "" ? [] : labelled(label, text, INDENT, LABEL, width),
  );
  return [heading(check, width, ink), ...says, ...below];
}
