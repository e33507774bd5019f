import type { DesignSource } from "./design-source.js";

/** A word the house standard sets for a rule; undefined when it leaves the rule's own. */
export function settingWord(build: DesignSource, rule: string, key: string): string | undefined {
  const set = build.context.standard.requirements[rule]?.[key];
  return typeof set === "string" ? set : undefined;
}
