import type { CheckEntry } from "../inspection/record.js";
import type { DesignSource } from "../model/reading/design-source.js";
import { topicOf } from "../standard/levels.js";
import { coverProblems } from "./cover.js";
import type { WaiverProblem } from "./problem.js";
import { standingProblems } from "./standing.js";
import { excused, stateOf, type WaiverState } from "./state.js";
import { UNWAIVABLE, type Waiver, waiversOf } from "./waiver.js";

/** A waiver with its result in the document. */
export interface BuildWaiver extends Waiver {
  readonly state: WaiverState;
  /** What its rule is: there, a whole topic, one that cannot be waived, or none there is. */
  readonly names: "rule" | "topic" | "unwaivable" | "unknown";
  /** Places it excuses or would excuse; undefined when its rule was not asked. */
  readonly excuses: readonly string[] | undefined;
  /** Why it waives nothing at all; none when it stands. */
  readonly problems: readonly WaiverProblem[];
  /** Why it does not cover checks it is about, each once. */
  readonly uncovered: readonly WaiverProblem[];
  /** Places of a requirement it excuses without naming any of them. */
  readonly atLarge: readonly string[];
}

/** Groups of things: a waiver for one of them is for whatever stands in it. */
const GROUP =
  /^(?:faces|power|power\.circuits|power\.runs|data|data\.chains|picture|picture\.(?:at|path)|rigging|rigging\.bars|rigging\.bars\.[^.]+\.hangs)$/u;

const placesOf = (checks: readonly CheckEntry[]): readonly string[] => [...new Set(checks.map(({ at }) => at.path))];

function namesOf({ rule = "" }: Waiver, known: readonly string[]): BuildWaiver["names"] {
  if (UNWAIVABLE.includes(rule)) return "unwaivable";
  // Where no rule is known by name, none can be called unknown.
  if (known.length === 0 || known.includes(rule)) return "rule";
  const topic = topicOf(rule);
  return (rule === topic || /[*,\s]/u.test(rule)) && known.some((id) => topicOf(id) === topic) ? "topic" : "unknown";
}

/** Waivers of a document; what they excuse is told once the other rules have been asked. */
export function waiversIn(build: DesignSource): readonly BuildWaiver[] {
  const { context } = build;
  return waiversOf(build).map((waiver) => {
    const found = excused(waiver, context.findings);
    const problems = standingProblems(build, waiver);
    const uncovered = found.flatMap((check) => coverProblems(waiver, check));
    const asked = context.findings.has(waiver.rule ?? "");
    const large = waiver.where === undefined || GROUP.test(waiver.where);
    return {
      ...waiver,
      state: stateOf(waiver, [...problems, ...uncovered], context.findings),
      problems,
      uncovered: [...new Map(uncovered.map((each) => [each.says, each])).values()],
      names: namesOf(waiver, context.rules),
      excuses: asked ? placesOf(found) : undefined,
      atLarge: large ? placesOf(found.filter(({ level }) => level === "shall")) : [],
    };
  });
}
