import { type Kind, kinds, readQuantity, siUnit } from "@plumbmark/calc";
import type { CaseOutcome, Expectation } from "./case.js";
import type { FoundCheck } from "./run-case.js";

/** `17.2 A` agrees with what rounds to it: half of the last digit that is written. */
function agrees(written: string, found: { readonly value: number; readonly unit: string } | undefined): boolean {
  if (!found) return false;
  const fitting = (Object.keys(kinds) as Kind[]).filter((kind) => siUnit(kind) === found.unit);
  const reading = readQuantity(written.replaceAll(",", ""), fitting);
  if (!reading.ok) return false;
  const decimals = /\.(\d+)/u.exec(written)?.[1]?.length ?? 0;
  const half = 0.5 * 10 ** -decimals * reading.quantity.unit.factor;
  return Math.abs(reading.quantity.value - found.value) <= half * (1 + 1e-9);
}

function agreesAllowed(written: string, allowed: FoundCheck["allowed"]): boolean {
  if (allowed?.sense !== "within") return agrees(written, allowed);
  const [least = "", most = ""] = written.split(" to ");
  return (
    agrees(least, { value: allowed.least, unit: allowed.unit }) &&
    agrees(most, { value: allowed.most, unit: allowed.unit })
  );
}

const meets = (wanted: Expectation, found: FoundCheck): boolean =>
  wanted.outcome === found.outcome &&
  (wanted.at === undefined || wanted.at === found.at.path) &&
  (wanted.file === undefined || wanted.file === found.file) &&
  (wanted.measured === undefined || agrees(wanted.measured, found.measured)) &&
  (wanted.allowed === undefined || agreesAllowed(wanted.allowed, found.allowed)) &&
  (wanted.says === undefined || found.says.includes(wanted.says)) &&
  (wanted.missing === undefined || wanted.missing.every((path) => found.missing?.includes(path)));

const shownWanted = ({ outcome, ...rest }: Expectation): string =>
  [outcome, ...Object.entries(rest).map(([key, value]) => `${key} ${[value].flat().join(", ")}`)].join("; ");

const quantityText = (value: { readonly value: number; readonly unit: string }): string =>
  `${Number(value.value.toPrecision(6))} ${value.unit}`;

const allowedText = (allowed: NonNullable<FoundCheck["allowed"]>): string =>
  allowed.sense === "within" ? `${allowed.least} to ${allowed.most} ${allowed.unit}` : quantityText(allowed);

const shownFound = ({ outcome, at, measured, allowed, missing, says }: FoundCheck): string =>
  [
    outcome,
    `at ${at.path}`,
    ...(measured ? [`measured ${quantityText(measured)}`] : []),
    ...(allowed ? [`allowed ${allowedText(allowed)}`] : []),
    ...(missing ? [`missing ${missing.join(", ")}`] : []),
    `says ${says}`,
  ].join("; ");

const listed = (label: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : [`  ${label}`, ...lines.map((line) => `    ${line}`)];

/** Lines that tell what was expected and what was found; none when they agree. */
function compareList(wanted: readonly Expectation[], found: readonly FoundCheck[]): readonly string[] {
  const left = [...found];
  const unmet = wanted.filter((each) => {
    const index = left.findIndex((check) => meets(each, check));
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
  const besides = left.filter(({ outcome }) => outcome !== "holds");
  if (unmet.length === 0 && besides.length === 0) return [];
  return [
    ...listed("expected, and not found", unmet.map(shownWanted)),
    ...listed(unmet.length > 0 ? "found besides" : "found, and not expected", left.map(shownFound)),
  ];
}

const PLAIN: Readonly<
  Record<CaseOutcome, { readonly is: string; readonly met: (found: readonly FoundCheck[]) => boolean }>
> = {
  holds: { is: "every check holds", met: (found) => found.every(({ outcome }) => outcome === "holds") },
  fails: { is: "at least one check fails", met: (found) => found.some(({ outcome }) => outcome === "fails") },
  open: {
    is: "at least one check is open and none fails",
    met: (found) =>
      found.some(({ outcome }) => outcome === "open") && found.every(({ outcome }) => outcome !== "fails"),
  },
};

/** What a case expects against what was found, as lines of text; none when they agree. */
export function compare(
  expects: CaseOutcome | readonly Expectation[],
  found: readonly FoundCheck[],
): readonly string[] {
  if (typeof expects !== "string") return compareList(expects, found);
  const { is, met } = PLAIN[expects];
  if (found.length === 0) return [`  expected that ${is}; the rule has nothing to say`];
  if (!met(found)) return [`  expected that ${is}`, ...listed("found", found.map(shownFound))];
  const mute = found.filter(({ outcome, mend }) => outcome === "fails" && !mend);
  return listed("fails without saying what would put it right (`mend`)", mute.map(shownFound));
}
