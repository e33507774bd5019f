import type { CheckEntry } from "../inspection/record.js";
import type { WaiverProblem } from "./problem.js";
import { isAbout, type Waiver } from "./waiver.js";

/**
 * `unused`: in its time, and there is nothing it excuses. `incomplete`: it waives nothing until it says everything.
 * `refused`: it may not waive, as it is signed or dated. `exceeded`: what is found is worse than what it accepts.
 */
export type WaiverState = "in force" | "expired" | "unused" | "incomplete" | "refused" | "exceeded";

/** What rules found on a document before waivers, by rule; a rule that is not there was not asked. */
export type Findings = ReadonlyMap<string, readonly CheckEntry[]>;

/** Checks that a waiver excuses or would excuse, were it in force. */
export const excused = (waiver: Waiver, findings: Findings): readonly CheckEntry[] =>
  (findings.get(waiver.rule ?? "") ?? []).filter((check) => isAbout(waiver, check));

const STATES: Readonly<Record<WaiverProblem["kind"], WaiverState>> = {
  absent: "incomplete",
  expired: "expired",
  refused: "refused",
  exceeded: "exceeded",
};

/** @param found what keeps it from waiving, the first of which tells its state */
export function stateOf(waiver: Waiver, found: readonly WaiverProblem[], findings: Findings): WaiverState {
  const [first] = found;
  if (first) return STATES[first.kind];
  const asked = findings.has(waiver.rule ?? "");
  return asked && excused(waiver, findings).length === 0 ? "unused" : "in force";
}
