import { readQuantity } from "@plumbmark/calc";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import type { Level, Rule, Setting } from "./rule.js";

/** A house standard that sets a rule wrongly cannot be inspected against: the caller has to mend it first. */
export class StandardError extends Error {}

const LEVELS: readonly string[] = ["shall", "should", "note", "none"];

export function levelOf(rule: Rule, standard: HouseStandardSettings): Level {
  const level = standard.rules[rule.id]?.level;
  return typeof level === "string" && LEVELS.includes(level) ? (level as Level) : rule.level;
}

/** Settings in force: the practice's defaults with the house standard's own on top. */
export function settingsOf(
  rule: Rule,
  standard: HouseStandardSettings,
  practice: "us" | "iec",
): Readonly<Record<string, Setting>> {
  const own = standard.rules[rule.id] ?? {};
  for (const key of Object.keys(own))
    if (key !== "level" && !(key in (rule.settings ?? {})))
      throw new StandardError(
        `rules.${rule.id}: there is no setting \`${key}\`; it has ${
          Object.keys(rule.settings ?? {})
            .map((each) => `\`${each}\``)
            .join(", ") || "none"
        }.`,
      );
  return Object.fromEntries(
    Object.entries(rule.settings ?? {}).map(([key, definition]) => {
      const written = own[key];
      if (written === undefined || written === null) return [key, definition[practice]];
      if (!definition.kind) return [key, written as Setting];
      const reading = readQuantity(written as string, [definition.kind]);
      if (!reading.ok)
        throw new StandardError(`rules.${rule.id}.${key} is ${reading.found}; write ${reading.allowed}.`);
      return [key, reading.quantity.value];
    }),
  );
}
