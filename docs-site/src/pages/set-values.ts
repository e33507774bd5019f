import {
  chainFor,
  fromText,
  type ListedValue,
  type ListedValues,
  listRule,
  mergedStandard,
  type StandardChain,
} from "@plumbmark/core";
import { type Content, h } from "../html/html.js";
import { table } from "../html/table.js";
import type { Site } from "../site/site.js";
import type { PublishedRule } from "../site/stated-rule.js";

const isSet = ({ from }: ListedValue<unknown>): boolean => from.from === "standard";

/** What a house standard sets: the level or a setting, its value, and where it is written. */
type SetValue = readonly [what: string, value: string, from: string];

/** Values that a house standard sets. */
function setValues(values: ListedValues): readonly SetValue[] {
  const level = isSet(values.level) ? [["level", values.level.text.toUpperCase(), values.level] as const] : [];
  const settings = Object.entries(values.settings)
    .filter(([, each]) => isSet(each))
    .map(([key, each]) => [key, each.text, each] as const);
  return [...level, ...settings].map(([what, text, { from }]) => [what, text, fromText(from)]);
}

/** What house standards set of a rule in one place of the tree, for all faces and for those held one way. */
export function setOf(rule: PublishedRule, chain: StandardChain): readonly SetValue[] {
  const listed = listRule(rule, chain, mergedStandard(chain).practice);
  const all = setValues(listed);
  const known = new Set(all.map((each) => each.join()));
  // What is set for all faces is not told again for those held one way.
  const held = Object.entries(listed.supports).flatMap(([support, values]) =>
    setValues(values)
      .filter((each) => !known.has(each.join()))
      .map(([what, ...rest]): SetValue => [`${what}, ${support}`, ...rest]),
  );
  return [...all, ...held];
}

/** What is set of a rule by the house standard of the root and by those of folders, each where it sets something. */
export function setByStandards(rule: PublishedRule, { repository: { standards } }: Site): Content {
  const root = setOf(rule, [standards.root]).map((each) => ["everywhere", ...each]);
  const folders = standards.folders.flatMap(({ folder }) => {
    const inherited = new Set(root.map((each) => each.slice(1).join()));
    const own = setOf(rule, chainFor(standards, folder)).filter((each) => !inherited.has(each.join()));
    return own.map((each) => [h("code", folder), ...each]);
  });
  const rows = [...root, ...folders];
  return rows.length > 0 ? table("Set by house standards", ["For", "What", "In force", "Set in"], rows) : undefined;
}
