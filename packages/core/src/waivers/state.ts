import type { CheckEntry } from "../inspection/record.js";
import { isAbout, type Waiver } from "./waiver.js";

/** `unused`: in its time, and there is nothing it excuses. `incomplete`: it waives nothing until it says everything. */
export type WaiverState = "in force" | "expired" | "unused" | "incomplete";

/** What rules found on a document before waivers, by rule; a rule that is not there was not asked. */
export type Findings = ReadonlyMap<string, readonly CheckEntry[]>;

/** Checks that a waiver excuses or would excuse, were it in force. */
export const excused = (waiver: Waiver, findings: Findings): readonly CheckEntry[] =>
  (findings.get(waiver.rule ?? "") ?? []).filter((check) => check.outcome !== "holds" && isAbout(waiver, check));

export function stateOf(waiver: Waiver, today: string, findings: Findings): WaiverState {
  if (waiver.absent.length > 0 || waiver.until === undefined) return "incomplete";
  if (waiver.until < today) return "expired";
  const asked = findings.has(waiver.rule ?? "");
  return asked && excused(waiver, findings).length === 0 ? "unused" : "in force";
}
