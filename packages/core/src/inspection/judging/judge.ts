import {
  assumedIn,
  type Gap,
  gapsOf,
  guessesIn,
  guessMark,
  type Known,
  kinds,
  type Print,
  type SourceId,
  type StatedIn,
  type Step,
  siUnit,
  sourceOf,
  statedIn,
  type Value,
  workingOf,
} from "@plumbmark/calc";
import { START } from "../../document/place.js";
import { TURNS } from "../../findings/turns.js";
import { type WhereFound, whereFound, whereFoundWords } from "../../findings/where-found.js";
import { placedMends } from "../../mends/mend.js";
import type { Build } from "../../model/build.js";
import { isLooserLevel } from "../../standard/levels.js";
import type { Level } from "../../standard/setting.js";
import type { CheckEntry, QuantityEntry, WorkingEntry } from "../record.js";
import type { RawCheck, Rule } from "./rule.js";

/** Floating-point noise must not fail a build that is exactly at its limit: 1.25 × 16 A is 20 A. */
const NOISE = 1e-9;

const entry = (value: Known): QuantityEntry => ({
  value: Number(value.value.toPrecision(9)),
  unit: siUnit(value.kind),
});

/** Whether a value is to a limit as asked, floating-point noise apart. */
export function holdsTo(measured: number, allowed: number, sense: RawCheck["sense"]): boolean {
  const slip = NOISE * Math.max(Math.abs(measured), Math.abs(allowed));
  if (sense === "at least") return measured >= allowed - slip;
  if (sense === "exactly") return Math.abs(measured - allowed) <= slip;
  return measured <= allowed + slip;
}

const within = (measured: number, least: number, most: number): boolean =>
  holdsTo(measured, least, "at least") && holdsTo(measured, most, "at most");

/** How far what is measured is towards the limit: above 1 fails. Undefined where a limit of nought leaves nothing to divide by. */
function shareOf(measured: number, [allowed, most]: readonly number[], sense: RawCheck["sense"]): number | undefined {
  if (measured === 0 || allowed === undefined || allowed === 0 || most === 0) return undefined;
  const towards = sense === "at least" || most !== undefined ? allowed / measured : measured / allowed;
  const share = most === undefined ? towards : Math.max(towards, measured / most);
  // One is so much greater than the other that no number says how much.
  return Number.isFinite(share) ? share : undefined;
}

const allowedEntry = (allowed: Known, most: Known | undefined, sense: RawCheck["sense"]): CheckEntry["allowed"] =>
  most
    ? { least: entry(allowed).value, most: entry(most).value, unit: siUnit(allowed.kind), sense: "within" }
    : { ...entry(allowed), sense: sense === "within" ? "exactly" : (sense ?? "at most") };

/** Kinds that are compared have to be the same: a rule that compares metres with kilograms is wrong, whatever comes out. */
function refuseMixed(values: readonly Value[]): void {
  const [first, ...others] = values;
  const other = others.find(({ kind }) => siUnit(kind) !== siUnit((first as Value).kind));
  if (first && other) throw new TypeError(`it compares ${kinds[first.kind].name} with ${kinds[other.kind].name}`);
}

/** The sentence about what is not written down. */
const gapSays = (gap: Gap): string => gap.because ?? `${gap.of ?? "The document"} has no ${gap.what} written down.`;
function foundEntry(path: string, file: string | undefined): { readonly found?: WhereFound } {
  const found = whereFound(path, file);
  return found === undefined ? {} : { found };
}
const gapMend = (gap: Gap): string =>
  gap.path === ""
    ? `State the ${gap.what}.`
    : [
        `Write the ${gap.what} under \`${gap.path}\`${gap.file === undefined ? "" : ` in ${gap.file}`}.`,
        whereFoundWords(whereFound(gap.path, gap.file)),
      ]
        .filter((part) => part !== "")
        .join(" ");

/** A line of a working, and what tells it from others. */
interface Line {
  readonly result: Known;
  readonly key: string;
  readonly entry: WorkingEntry;
}

/** The lines of one document, by the printer it has of its own: rules measure the same values over and over. */
const linesBy = new WeakMap<Print, Map<Step, Line>>();

/** Inputs of a step that another file states, or that are assumed, in words: `120 V: the survey of 2026-10-02 by R. Tallow`. */
function statedInputs({ inputs }: Step, print: Print): readonly string[] {
  return inputs.flatMap(({ value, kind, origin, sure }) => {
    if (sure === "assumed" && origin.from === "assumed")
      return [`${print(value, kind)}: ${origin.why}, ${sourceOf(origin.source).document}`];
    return origin.from === "written" && origin.stated
      ? [`${print(value, kind)}: ${origin.stated.by}, ${origin.stated.file}, line ${origin.stated.line}`]
      : [];
  });
}

function madeLine(step: Step, result: Known, print: Print): Line {
  const stated = [...new Set(statedInputs(step, print))];
  const shown = `${step.show(print)} = ${print(result.value, result.kind)}${guessMark(result)}`;
  return {
    result,
    key: `${step.formula} | ${shown}`,
    entry: {
      ...{ formula: step.formula, with: shown, result: entry(result), source: step.source },
      ...(stated.length > 0 ? { from: stated } : {}),
    },
  };
}

/** The working that leads to values, line by line, printed in the units of the document. */
export function workingEntries(values: readonly Known[], print: Print): readonly WorkingEntry[] {
  const made = linesBy.get(print) ?? new Map<Step, Line>();
  linesBy.set(print, made);
  const lines = new Map<string, WorkingEntry>();
  for (const value of values)
    for (const { step, result } of workingOf(value)) {
      let line = made.get(step);
      // A mass may be read as a force: the same step, and another result.
      if (line?.result.kind !== result.kind || line.result.value !== result.value) {
        line = madeLine(step, result, print);
        made.set(step, line);
      }
      // The same line once: sixteen panels that are alike are worked out alike.
      lines.set(line.key, line.entry);
    }
  return [...lines.values()];
}

/** Sources of the build's own practice: a build in `iec` practice does not rest on the NEC. */
const sourceEntries = (ids: readonly SourceId[], practice: "us" | "iec"): CheckEntry["sources"] =>
  ids
    .filter((id) => (sourceOf(id).practice ?? practice) === practice)
    .map((id) => {
      const { document, title, edition, clause, says, basis } = sourceOf(id);
      return {
        id,
        document,
        ...(title ? { title } : {}),
        ...(edition ? { edition } : {}),
        ...(clause ? { clause } : {}),
        says,
        basis,
      };
    });

const isGood = (raw: RawCheck, [measured, allowed, most]: readonly (Known | undefined)[]): boolean => {
  if (raw.form !== "compare") return raw.form === "plain" && raw.holds === true;
  if (measured === undefined || allowed === undefined) return false;
  if (most) return within(measured.value, allowed.value, most.value);
  return holdsTo(measured.value, allowed.value, raw.sense);
};

/** What a survey states of what a check is about: where it stands itself, and what it was measured and held against with. */
function statedBehind(raw: RawCheck, build: Build, values: readonly Value[]): readonly StatedIn[] {
  const { venue } = build.reader;
  if (!venue) return [];
  const own = venue.statedAt(raw.at);
  const found = new Map([...(own ? [own] : []), ...values.flatMap(statedIn)].map((each) => [each.path, each]));
  return [...found.values()];
}

const statedEntry = (stated: readonly StatedIn[]): Pick<CheckEntry, "stated-in"> =>
  stated.length === 0 ? {} : { "stated-in": stated };

/** What of a comparison nobody wrote down, behind its sentence. */
const assumedWords = (paths: readonly string[]): string =>
  ` Assumed: ${paths.map((path) => `\`${path}\``).join(", ")}.`;

const NOWHERE: CheckEntry["at"] = { path: "", ...START };

/**
 * Compares what a rule measured with what it allows and makes the entry of the record. A check that holds and is not
 * going to be listed is only counted: its place, its sentence and its working take longer than the comparison.
 */
export function judge(
  rule: Rule,
  level: Exclude<Level, "none">,
  raw: RawCheck,
  build: Build,
  print: Print,
  listHolding = true,
): CheckEntry {
  const values = [raw.measured, raw.allowed, raw.most].filter((each) => each !== undefined);
  refuseMixed(values.filter(({ known }) => known));
  const gaps = values.every(({ known }) => known) ? [] : gapsOf(values);
  const compared = [raw.measured, raw.allowed, raw.most] as readonly (Known | undefined)[];
  const good = gaps.length === 0 && isGood(raw, compared);
  if (good && !listHolding) return { rule: rule.id, level, outcome: "holds", at: NOWHERE, says: "", sources: [] };
  const place = raw.place ?? build.reader.place(raw.at);
  const mends = good ? [] : placedMends(raw.mends, build);
  const base = {
    rule: rule.id,
    ...(rule.plugin === undefined ? {} : { from: rule.plugin }),
    level: raw.level === undefined || isLooserLevel(level, raw.level) ? level : raw.level,
    at: { path: raw.at, ...place },
    sources: sourceEntries(raw.sources ?? rule.sources, build.practice),
    ...(raw.turns ? { [TURNS]: raw.turns } : {}),
    ...(mends.length > 0 ? { mends } : {}),
  };
  const stated = good ? {} : statedEntry(statedBehind(raw, build, values));
  if (raw.form === "open" || gaps.length > 0) {
    const says = gaps.length > 0 ? gaps.map(gapSays).join(" ") : raw.says({ measured: "", allowed: "" });
    const mend = gaps.length > 0 ? [...new Set(gaps.map(gapMend))].join(" ") : raw.mend;
    const names = gaps.length > 0 ? gaps.map((gap) => gap.path || gap.what) : (raw.gaps ?? []);
    const waits = gaps
      .filter(({ path }) => path !== "")
      .map(({ path, file, place: standing, what, of }) => ({
        path,
        ...(file === undefined ? {} : { file }),
        ...(standing === undefined ? {} : { place: standing }),
        what,
        ...(of === undefined ? {} : { of }),
        ...foundEntry(path, file),
      }));
    return {
      ...base,
      outcome: "open",
      says,
      ...(mend ? { mend } : {}),
      missing: [...new Set(names)],
      ...(waits.length > 0 ? { "waits-for": waits } : {}),
      ...stated,
    };
  }
  const [measured, allowed, most] = compared;
  const shown = (value: Known | undefined): string =>
    value ? `${print(value.value, value.kind)}${guessMark(value)}` : "";
  const guesses = [...new Set(values.flatMap((value) => [...guessesIn(value)]))].filter((path) => path !== "");
  const assumed = [...new Set(values.flatMap((value) => [...assumedIn(value)]))].filter((path) => path !== "");
  const limit = most ? `${shown(allowed)} to ${shown(most)}` : shown(allowed);
  const share =
    measured && allowed
      ? shareOf(measured.value, [allowed.value, ...(most ? [most.value] : [])], raw.sense)
      : undefined;
  const told = raw.says({ measured: shown(measured), allowed: limit });
  return {
    ...base,
    outcome: good ? "holds" : "fails",
    // What is no text is refused by whoever takes the check, and is not to become one here.
    says: assumed.length > 0 && typeof told === "string" ? `${told}${assumedWords(assumed)}` : told,
    ...(measured ? { measured: entry(measured) } : {}),
    ...(allowed ? { allowed: allowedEntry(allowed, most, raw.sense) as NonNullable<CheckEntry["allowed"]> } : {}),
    ...(share === undefined ? {} : { share: Number(share.toPrecision(6)) }),
    ...(!good && raw.mend ? { mend: raw.mend } : {}),
    working: workingEntries(values as readonly Known[], print),
    ...(guesses.length > 0 ? { "rests-on-guesses": guesses } : {}),
    ...(assumed.length > 0 ? { "rests-on-assumed": assumed } : {}),
    ...stated,
  };
}
