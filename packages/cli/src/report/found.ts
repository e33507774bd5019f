import { type Found, type FoundGap, gravest } from "@plumbmark/core";
import type { Check } from "./form.js";
import { labelled, pad, plain, wrap } from "./lines.js";
import type { Palette } from "./palette.js";

const INDENT = 10;
const LABEL = 11;

export const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

const waits = (number: number): string => `${count(number, "check waits", "checks wait")}`;

/** What only follows from a mistake, below it. */
export const showWaiting = (number: number, width: number): readonly string[] =>
  number === 0
    ? []
    : labelled(
        "waiting",
        `${count(number, "check waits", "checks wait")} for it; \`--every\` lists them.`,
        INDENT,
        LABEL,
        width,
      );

/** What follows from a mistake in another file. */
export const showElsewhere = (
  { file, line, behind }: { readonly file: string; readonly line: number; readonly behind: readonly Check[] },
  width: number,
): readonly string[] =>
  wrap(
    file === ""
      ? `${waits(behind.length)} for what cannot be read in line ${line}.`
      : `${waits(behind.length)} for ${file}, line ${line}; \`--every\` lists them.`,
    width - 2,
  ).map((text) => `  ${text}`);

/** A list that is longer helps nobody: what is on it is put right first. */
const MOST = 16;

/** Where it is found, in few words. */
const FROM = {
  "data sheet": "from the data sheet",
  marking: "marked on it",
  letter: "in the engineer's letter",
  tape: "by tape",
  "panel schedule": "in the panel schedule",
  law: "by law or standard",
} as const;

/** Of the venue: first where somebody has to look, `at rack-a: the breaker rating of circuit stage-4`. */
const atPlace = (place: string, what: string, of: string | undefined): string =>
  `at ${plain(place)}: the ${what}${of === undefined ? "" : ` of ${of.charAt(0).toLowerCase()}${of.slice(1)}`}`;

/** Things that one and the same is to be done about, told together. */
function asked(gaps: readonly FoundGap[]): readonly (readonly [FoundGap, ...FoundGap[]])[] {
  const groups = new Map<string, [FoundGap, ...FoundGap[]]>();
  for (const gap of gaps) {
    const { path, file, what, mend } = gap;
    const key = JSON.stringify(what === undefined && mend !== undefined ? [file, mend] : [file, path, mend, "alone"]);
    const group = groups.get(key);
    if (group) group.push(gap);
    else groups.set(key, [gap]);
  }
  return [...groups.values()];
}

function gapText(gaps: readonly [FoundGap, ...FoundGap[]]): string {
  const [{ file, place, what, of, mend, found }] = gaps;
  const paths = gaps.map(({ path }) => `\`${plain(path)}\``).join(", ");
  const where = `${paths}${file === undefined ? "" : ` in ${plain(file)}`}`;
  // What is decided and not found needs no word of where.
  const from = found === undefined || found === "plan" ? "" : `; ${FROM[found]}`;
  if (what !== undefined && place !== undefined) return `${atPlace(place, what, of)} (${where})${from}`;
  if (what !== undefined) return `${where}: ${what}${of === undefined || file !== undefined ? "" : ` (${of})`}${from}`;
  return mend === undefined ? where : `${where}: ${mend}`;
}

/** What is not written down, each thing once, with the number of checks that wait for it. */
export function showGaps({ gaps, waiting }: Found, width: number, ink: Palette): readonly string[] {
  const things = count(gaps.length, "thing is not written down", "things are not written down");
  return showList(`${things}; ${waits(waiting)} for ${gaps.length === 1 ? "it" : "them"}.`, gaps, width, ink);
}

/** Guesses, each once, with the number of checks that rest on it and of those that would fail were it right. */
export function showGuesses({ guesses, resting }: Found, width: number, ink: Palette): readonly string[] {
  const fails = new Set(guesses.flatMap(({ waiting }) => waiting.filter((check) => check["if-right"] === "fails")));
  const right = guesses.length === 1 ? "is right" : "are right";
  const would = fails.size === 0 ? "all hold" : `${count(fails.size, "fails", "fail")}, told below`;
  const rest = count(resting, "check rests", "checks rest");
  const top = `${count(guesses.length, "guess", "guesses")}; ${rest} on ${guesses.length === 1 ? "it" : "them"}. If ${guesses.length === 1 ? "it" : "they"} ${right}, ${would}.`;
  return showList(top, guesses, width, ink);
}

function showList(top: string, gaps: readonly FoundGap[], width: number, ink: Palette): readonly string[] {
  if (gaps.length === 0) return [];
  const groups = asked(gaps);
  const told = groups.length > MOST ? groups.slice(0, MOST - 1) : groups;
  const rest = groups.slice(told.length).flat().length;
  return [
    ...wrap(top, width - 2).map((line) => `  ${ink.strong(line)}`),
    ...told.flatMap((group) => {
      const waiting = [...new Set(group.flatMap((gap) => gap.waiting))];
      const level = gravest(waiting);
      const lines = labelled(String(waiting.length), gapText(group), INDENT, 4, width);
      const ofLevel = { level, outcome: "open" } as Check;
      return lines.map((line, index) =>
        index === 0 ? `  ${ink.level(ofLevel)(pad(level.toUpperCase(), INDENT - 2))}${line.slice(INDENT)}` : line,
      );
    }),
    ...(rest > 0 ? [`${" ".repeat(INDENT + 4)}and ${rest} more; \`--every\` lists them.`] : []),
    "",
  ];
}
