import { choices, currentRule } from "@plumbmark/core";
import { json } from "../report/form.js";
import { ruleData, rulesData } from "../report/rules-data.js";
import { rulesMarkdown } from "../report/rules-markdown.js";
import { rulesText, ruleText } from "../report/rules-text.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import { type RulesInForce, rulesInForce } from "./rules-in-force.js";

export interface RulesOptions {
  readonly as: "text" | "json" | "markdown";
  readonly standard?: string;
}

function every({ chain, practice, rules }: RulesInForce, as: RulesOptions["as"], context: CommandContext): string {
  const name = chain.map(({ settings }) => settings.name).join(" with ");
  if (as === "json") return json(rulesData(chain, practice, rules));
  return as === "markdown" ? rulesMarkdown(name, rules) : rulesText(name, rules, context);
}

function one({ chain, rules }: RulesInForce, id: string, as: RulesOptions["as"], context: CommandContext): string {
  const now = currentRule(id);
  if (now !== id) context.warn(`plumbmark: The rule ${id} is now called ${now}.\n`);
  const listed = rules.find(({ rule }) => rule.id === now);
  if (!listed) {
    const known = rules.map(({ rule }) => rule.id);
    throw new Trouble(`There is no rule \`${id}\`.`, `${choices(known, id)} \`plumbmark rules\` lists them all.`);
  }
  if (as === "json") return json(ruleData(listed));
  return as === "markdown" ? rulesMarkdown(chain[0].settings.name, [listed]) : ruleText(listed, context);
}

/** Lists the rules in force where the command is given, or states one in full; gives the exit status. */
export async function rulesCommand(
  id: string | undefined,
  { as, standard }: RulesOptions,
  context: CommandContext,
): Promise<number> {
  const found = await rulesInForce(standard, context);
  const text = id === undefined ? every(found, as, context) : one(found, id, as, context);
  context.print(text, as === "text" ? "report" : as === "json" ? "json" : "text");
  return 0;
}
