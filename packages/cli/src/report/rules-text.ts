import { printQuantity } from "@plumbmark/calc";
import type { Rule, Setting, SettingDefinition } from "@plumbmark/core";
import type { Colour } from "../surroundings.js";
import { labelled, pad, plain, wrap } from "./lines.js";
import { palette } from "./palette.js";
import { showSourceById } from "./source.js";

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const topicOf = (rule: Rule): string => rule.id.split(".")[0] as string;

/** Every rule with its level and statement, topic by topic. */
export function rulesText(rules: readonly Rule[], { width, colour }: Page): string {
  const ink = palette(colour);
  const widest = Math.max(0, ...rules.map(({ id }) => id.length)) + 3;
  const lines = rules.flatMap((rule, index) => {
    const first = index === 0 || topicOf(rule) !== topicOf(rules[index - 1] as Rule);
    const level = pad(rule.level.toUpperCase(), 8);
    return [...(first && index > 0 ? [""] : []), ...labelled(`${level}${rule.id}`, rule.states, 2, widest + 8, width)];
  });
  return `${lines.join("\n")}\n\n${ink.quiet("`plumbmark rules ID` states one in full.")}\n`;
}

/** A setting as people write it: `80 %`, `0.3 m`. */
const written = (setting: Setting, kind: SettingDefinition["kind"]): string =>
  typeof setting === "number" && kind ? printQuantity(setting, kind, "metric") : [setting].flat().join(", ");

/** `share: continuous share of the breaker's rating; us 80 %, iec 100 %`. */
function showSetting(name: string, { us, iec, describe, kind }: SettingDefinition): string {
  const [one, other] = [written(us, kind), written(iec, kind)];
  return `${name}: ${describe}; ${one === other ? one : `us ${one}, iec ${other}`}`;
}

/** One rule in full. */
export function ruleText(rule: Rule, { width, colour }: Page): string {
  const ink = palette(colour);
  const told: readonly (readonly [label: string, text: string])[] = [
    ["level", rule.level],
    ["why", rule.why],
    ["judged", rule.judged],
    ...rule.sources.map((id, index) => [index === 0 ? "rests on" : "", showSourceById(id)] as const),
    ...Object.entries(rule.settings ?? {}).map(
      ([name, setting], index) => [index === 0 ? "settings" : "", showSetting(name, setting)] as const,
    ),
  ];
  const below = told.flatMap(([label, text]) => (text === "" ? [] : labelled(label, text, 2, 11, width)));
  return `${[ink.strong(plain(rule.id)), "", ...wrap(rule.states, width - 2).map((line) => `  ${line}`), "", ...below].join("\n")}\n`;
}
