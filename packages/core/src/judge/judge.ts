import { type Gap, gapsOf, type Known, type Print, type SourceId, siUnit, sourceOf, workingOf } from "@plumbmark/calc";
import type { Build } from "../model/build.js";
import type { CheckEntry, QuantityEntry, WorkingEntry } from "./record.js";
import type { Level, RawCheck, Rule } from "./rule.js";

/** Floating-point noise must not fail a build that is exactly at its limit: 1.25 × 16 A is 20 A. */
const NOISE = 1e-9;

const entry = (value: Known): QuantityEntry => ({
  value: Number(value.value.toPrecision(9)),
  unit: siUnit(value.kind),
});

function holds(measured: number, allowed: number, sense: RawCheck["sense"]): boolean {
  const slip = NOISE * Math.max(Math.abs(measured), Math.abs(allowed));
  if (sense === "at least") return measured >= allowed - slip;
  if (sense === "exactly") return Math.abs(measured - allowed) <= slip;
  return measured <= allowed + slip;
}

/** The sentence about what is not written down. */
const gapSays = (gap: Gap): string => gap.because ?? `${gap.of ?? "The document"} has no ${gap.what} written down.`;
const gapMend = (gap: Gap): string =>
  gap.path === ""
    ? `State the ${gap.what}.`
    : `Write the ${gap.what} under \`${gap.path}\`${gap.file === undefined ? "" : ` in ${gap.file}`}.`;

export const workingEntries = (values: readonly Known[], print: Print): readonly WorkingEntry[] => {
  const lines = new Map<string, WorkingEntry>();
  for (const { step, result } of values.flatMap(workingOf)) {
    const shown = `${step.show(print)} = ${print(result.value, result.kind)}`;
    // The same line once: sixteen panels that are alike are worked out alike.
    lines.set(`${step.formula} | ${shown}`, {
      formula: step.formula,
      with: shown,
      result: entry(result),
      source: step.source,
    });
  }
  return [...lines.values()];
};

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

/** Compares what a rule measured with what it allows and makes the entry of the record. */
export function judge(
  rule: Rule,
  level: Exclude<Level, "none">,
  raw: RawCheck,
  build: Build,
  print: Print,
): CheckEntry {
  const place = raw.place ?? build.reader.place(raw.at);
  const base = {
    rule: rule.id,
    level,
    at: { path: raw.at, ...place },
    sources: sourceEntries(rule.sources, build.practice),
  };
  const values = [raw.measured, raw.allowed].filter((each) => each !== undefined);
  const gaps = gapsOf(values);
  if (raw.form === "open" || gaps.length > 0) {
    const says = gaps.length > 0 ? gaps.map(gapSays).join(" ") : raw.says({ measured: "", allowed: "" });
    const mend = gaps.length > 0 ? [...new Set(gaps.map(gapMend))].join(" ") : raw.mend;
    const names = gaps.length > 0 ? gaps.map((gap) => gap.path || gap.what) : (raw.gaps ?? []);
    return { ...base, outcome: "open", says, ...(mend ? { mend } : {}), missing: [...new Set(names)] };
  }
  const [measured, allowed] = [raw.measured as Known | undefined, raw.allowed as Known | undefined];
  const shown = (value: Known | undefined): string => (value ? print(value.value, value.kind) : "");
  const good =
    raw.form === "plain"
      ? raw.holds === true
      : measured !== undefined && allowed !== undefined && holds(measured.value, allowed.value, raw.sense);
  const says = raw.says({ measured: shown(measured), allowed: shown(allowed) });
  return {
    ...base,
    outcome: good ? "holds" : "fails",
    says,
    ...(measured ? { measured: entry(measured) } : {}),
    ...(allowed ? { allowed: { ...entry(allowed), sense: raw.sense ?? "at most" } } : {}),
    ...(measured && allowed && measured.value !== 0 && allowed.value !== 0
      ? {
          share: Number(
            (raw.sense === "at least" ? allowed.value / measured.value : measured.value / allowed.value).toPrecision(6),
          ),
        }
      : {}),
    ...(!good && raw.mend ? { mend: raw.mend } : {}),
    working: workingEntries(
      [measured, allowed].filter((each) => each !== undefined),
      print,
    ),
  };
}
