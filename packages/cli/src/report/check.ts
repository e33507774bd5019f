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

/** A working on one line where it fits, else a line for each step. */
function workingLines(check: Check, room: number): readonly string[] {
  const steps = distinct(check.working ?? []).map((line) => line.with);
  const joined = steps.join("; ");
  return joined.length <= room ? [joined] : steps;
}

/** Puts a label in front of the first of several texts. */
const under = (label: string, texts: readonly string[]): readonly Told[] =>
  texts.map((text, index) => [index === 0 ? label : "", text]);

type Told = readonly [label: string, text: string];

/** `holds with `…length` at most 212 ft`; what a licensed person states is asked for. */
export function showTurn({ "turns-at": turns }: Check): string {
  if (!turns) return "";
  const { path, sense, text, asks } = turns;
  return asks ? `ask the ${asks} for ${sense} ${text} at \`${path}\`` : `holds with \`${path}\` ${sense} ${text}`;
}

/** What the survey of the venue states of it: the file and the line, and who states it. */
const statedIn = ({ "stated-in": stated }: Check): readonly string[] =>
  (stated ?? []).map(({ file, line, path, by }) => `${file}, line ${line}: \`${path}\`, ${by}`);

/** What stands below the sentence of a check that does not hold, label by label; `briefly` without what it rests on. */
function grounds(check: Check, width: number, briefly: boolean): readonly Told[] {
  const { waiver, missing } = check;
  return [
    ...under("working", workingLines(check, width - INDENT - LABEL)),
    ...under("rests on", briefly ? [] : check.sources.map(showSource)),
    ...under("stated in", statedIn(check)),
    ["write down", check.outcome === "open" && !check.mend ? (missing ?? []).join(", ") : ""],
    ["waived", waiver ? `${waiver.because} (${waiver.by}, until ${waiver.until})` : ""],
    ["turns at", check.outcome === "waived" ? "" : showTurn(check)],
    ["mend", check.outcome === "waived" ? "" : (check.mend ?? "")],
  ];
}

/** Checks that are alike but for their sentence: the same rule, line, outcome, working and mend. */
export function alike(checks: readonly Check[]): readonly (readonly [Check, ...Check[]])[] {
  const groups = new Map<string, [Check, ...Check[]]>();
  for (const check of checks) {
    const { rule, level, outcome, at, mend, waiver, working, missing } = check;
    const key = JSON.stringify([rule, level, outcome, at.line, mend, waiver, working, missing]);
    const group = groups.get(key);
    if (group) group.push(check);
    else groups.set(key, [check]);
  }
  return [...groups.values()];
}

/** More sentences than this about one line of a document help nobody. */
const MOST = 6;

function sentences(checks: readonly Check[], width: number): readonly string[] {
  const told = checks.length > MOST ? checks.slice(0, MOST - 1) : checks;
  const rest = checks.length - told.length;
  const all = [...told.map(({ says }) => says), ...(rest > 0 ? [`And ${rest} more like these on this line.`] : [])];
  return all.flatMap((text) => wrap(text, width - INDENT).map((line) => " ".repeat(INDENT) + line));
}

/** Checks that are alike, as lines of text. What holds is told in two; the others with working, source and mend. */
export function showChecks(
  checks: readonly [Check, ...Check[]],
  width: number,
  ink: Palette,
  briefly = false,
): readonly string[] {
  const [check] = checks;
  const top = [heading(check, width, ink), ...sentences(checks, width)];
  if (check.outcome === "holds") return top;
  return [
    ...top,
    ...grounds(check, width, briefly).flatMap(([label, text]) =>
      text === "" ? [] : labelled(label, text, INDENT, LABEL, width),
    ),
  ];
}
