import type { DesignSource } from "../reading/design-source.js";

/** A plain number the house standard sets for a rule; undefined when it leaves the rule's own. */
export function settingNumber(build: DesignSource, rule: string, key: string): number | undefined {
  const set = build.context.standard.requirements[rule]?.[key];
  return typeof set === "number" ? set : undefined;
}
