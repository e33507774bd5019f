import { type ListedRule, type ListedValue, type ListedValues, type StandardChain, topicOf } from "@plumbmark/core";

const value = ({ value, text, from }: ListedValue<unknown>) => ({ value, text, from });

const values = ({ level, settings }: ListedValues) => ({
  level: value(level),
  settings: Object.fromEntries(Object.entries(settings).map(([key, each]) => [key, value(each)])),
});

/** A rule in force as data: what it states, and every value with where it comes from. */
export const ruleData = (listed: ListedRule) => {
  const { id, states, why, judged, sources, settings, plugin } = listed.rule;
  const { level, settings: set } = values(listed);
  return {
    id,
    topic: topicOf(id),
    states,
    why,
    judged,
    sources,
    ...(plugin === undefined ? {} : { plugin }),
    level,
    settings: Object.fromEntries(
      Object.entries(set).map(([key, each]) => {
        const { describe, us, iec } = settings?.[key] ?? { describe: "", us: each.value, iec: each.value };
        return [key, { ...each, describe, default: { us, iec } }];
      }),
    ),
    supports: Object.fromEntries(Object.entries(listed.supports).map(([key, each]) => [key, values(each)])),
  };
};

/** House standards and every rule in force by them. */
export const rulesData = (chain: StandardChain, practice: "us" | "iec", rules: readonly ListedRule[]) => ({
  rules: 1,
  standards: chain.map(({ file, settings }) => ({ name: settings.name, ...(file === undefined ? {} : { file }) })),
  practice,
  "in-force": rules.map(ruleData),
});
