import { contractProblems, type Rule, type StatedRule } from "@plumbmark/core";
import { KIT } from "@plumbmark/kit";

const FORM = "its module has to `export default plugin({ kit: 1, rules: [ … ] })`";

type Unknown = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Unknown =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function refuseOtherKit({ kit }: Unknown): void {
  if (kit === KIT) return;
  if (typeof kit !== "number") throw new Error(`it does not say which version of the kit it is written for: ${FORM}`);
  throw new Error(
    `it is written for version ${kit} of the kit, and this Plumbmark has version ${KIT}. Take an edition of the plugin for version ${KIT}, or a Plumbmark with version ${kit}`,
  );
}

/** The rules a plugin's module brings. @throws Error that says what is wrong with it */
export function rulesOf(loaded: Unknown, plugin: string): readonly Rule[] {
  const given = loaded.default;
  if (!isObject(given)) throw new Error(FORM);
  refuseOtherKit(given);
  const { rules } = given;
  if (!Array.isArray(rules) || rules.length === 0) throw new Error(`it brings no rules: ${FORM}`);
  const ids = rules.map((rule: unknown) => (isObject(rule) ? String(rule.id) : ""));
  for (const [index, rule] of rules.entries()) {
    const [problem] = contractProblems(rule);
    if (problem !== undefined)
      throw new Error(`its rule ${ids[index] || index + 1} does not keep its contract: ${problem}`);
  }
  const twin = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twin !== undefined) throw new Error(`it has two rules of the name ${twin}`);
  return rules.map((rule: Rule) => ({ ...rule, plugin }));
}

/** What a rule states, as plain data. */
export const statedOf = ({ checks: _, result: __, ...stated }: Rule): StatedRule =>
  JSON.parse(JSON.stringify(stated)) as StatedRule;
