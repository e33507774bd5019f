import { choices } from "@plumbmark/core";
import { json } from "../report/form.js";
import { ruleData, rulesData } from "../report/rules-data.js";
import { rulesMarkdown } from "../report/rules-markdown.js";
import { rulesText, ruleText } from "../report/rules-text.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { type RulesInForce, rulesInForce } from "./rules-in-force.js";

export interface RulesOptions {
  readonly as: "text" | "json" | "markdown";
  readonly standard?: string;
}

function every({ chain, practice, rules }: RulesInForce, as: RulesOptions["as"], around: Surroundings): string {
  const name = chain.map(({ settings }) => settings.name).join(" with ");
  if (as === "json") return json(rulesData(chain, practice, rules));
  return as === "markdown" ? rulesMarkdown(name, rules) : rulesText(name, rules, around);
}

function one({ chain, rules }: RulesInForce, id: string, as: RulesOptions["as"], around: Surroundings): string {
  const listed = rules.find(({ rule }) => rule.id === id);
  if (!listed) {
    const known = rules.map(({ rule }) => rule.id);
    throw new Trouble(`There is no rule \`${id}\`.`, `${choices(known, id)} \`plumbmark rules\` lists them all.`);
  }
  if (as === "json") return json(ruleData(listed));
  return as === "markdown" ? rulesMarkdown(chain[0].settings.name, [listed]) : ruleText(listed, around);
}

/** Lists the rules in force where the command is given, or states one in full; gives the exit status. */
export async function rulesCommand(
  id: string | undefined,
  { as, standard }: RulesOptions,
  around: Surroundings,
): Promise<number> {
  const found = await rulesInForce(standard, around);
  around.print(id === undefined ? every(found, as, around) : one(found, id, as, around));
  return 0;
}
