import { choices, type Rule } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { json } from "../report/form.js";
import { rulesText, ruleText } from "../report/rules-text.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";

export interface RulesOptions {
  readonly as: "text" | "json";
}

/** What is stated about a rule, without the code that judges it. */
const stated = ({ id, states, level, why, judged, sources, settings }: Rule) => ({
  id,
  states,
  level,
  why,
  judged,
  sources,
  settings,
});

/** Lists the built-in rules, or states one in full; gives the exit status. */
export function rulesCommand(id: string | undefined, options: RulesOptions, around: Surroundings): number {
  if (id === undefined) {
    const sorted = [...rules].sort((one, other) => (one.id < other.id ? -1 : 1));
    around.print(options.as === "json" ? json(sorted.map(stated)) : rulesText(sorted, around));
    return 0;
  }
  const rule = rules.find((each) => each.id === id);
  if (!rule) {
    const known = rules.map((each) => each.id);
    throw new Trouble(`There is no rule \`${id}\`.`, `${choices(known, id)} \`plumbmark rules\` lists them all.`);
  }
  around.print(options.as === "json" ? json(stated(rule)) : ruleText(rule, around));
  return 0;
}
