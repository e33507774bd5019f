import type { Data } from "../document/yaml.js";
import type { Build } from "../model/build.js";
import type { CheckEntry } from "./record.js";

interface Waiver {
  readonly rule: string;
  readonly where?: string;
  readonly because: string;
  readonly by: string;
  readonly until: string;
}

/** Days compare as texts only when they are written as days. */
const DAY = /^\d{4}-\d{2}-\d{2}$/u;

/** Waivers that say everything they have to and have not run out; the others waive nothing. */
export function waiversInForce(build: Build, today: string): readonly Waiver[] {
  const written = build.reader.data("waivers");
  if (!Array.isArray(written)) return [];
  return (written as readonly Data[]).filter((each): each is never => {
    if (each === null || typeof each !== "object" || Array.isArray(each)) return false;
    const { rule, because, by, until } = each as Record<string, Data>;
    return (
      [rule, because, by, until].every((field) => typeof field === "string" && field.trim() !== "") &&
      DAY.test(String(until)) &&
      String(until) >= today
    );
  });
}

const covers = (waiver: Waiver, check: CheckEntry): boolean =>
  waiver.rule === check.rule &&
  (waiver.where === undefined || check.at.path === waiver.where || check.at.path.startsWith(`${waiver.where}.`));

/** What a document says of itself cannot be waived: a waiver is not allowed to hide that it cannot be read. */
const UNWAIVABLE = ["document.front-matter", "document.waivers", "plugin.failed"];

/** Marks failed and open checks that a waiver in force covers. */
export function applyWaivers(checks: readonly CheckEntry[], build: Build, today: string): readonly CheckEntry[] {
  const waivers = waiversInForce(build, today);
  return checks.map((check) => {
    if (check.outcome === "holds" || UNWAIVABLE.includes(check.rule)) return check;
    const waiver = waivers.find((each) => covers(each, check));
    return waiver
      ? { ...check, outcome: "waived", waiver: { because: waiver.because, by: waiver.by, until: waiver.until } }
      : check;
  });
}
