import {
  fromText,
  type ListedRule,
  type ListedValue,
  type ListedValues,
  type SettingDefinition,
  settingText,
  topicOf,
} from "@plumbmark/core";
import type { Colour } from "../terminal/context.js";
import { labelled, pad, plain, wrap } from "./lines.js";
import { palette } from "./palette.js";
import { showSourceById } from "./source.js";

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

/** Where a value comes from, in brackets; the default goes without saying. */
const from = ({ from }: ListedValue<unknown>): string => ` (${fromText(from)})`;

const levelText = ({ level }: ListedValues): string => `level ${level.text}${from(level)}`;

const settingTexts = ({ settings }: ListedValues): readonly string[] =>
  Object.entries(settings).map(([key, each]) => `${key} ${each.text}${from(each)}`);

/** What is in force of a rule and where it comes from; a level that is the default is told by its word alone. */
function inForceTexts(rule: ListedRule): readonly string[] {
  const level = rule.level.from.from === "default" ? [] : [levelText(rule)];
  const held = Object.entries(rule.supports).map(
    ([support, values]) => `${support}: ${[levelText(values), ...settingTexts(values)].join(", ")}`,
  );
  const all = [...level, ...settingTexts(rule)].join("; ");
  return [...(all === "" ? [] : [all]), ...held];
}

/** Every rule with its level, its statement and what is in force, topic by topic. */
export function rulesText(name: string, rules: readonly ListedRule[], { width, colour }: Page): string {
  const ink = palette(colour);
  const widest = Math.max(0, ...rules.map(({ rule }) => rule.id.length)) + 3;
  const topic = (listed: ListedRule | undefined): string => topicOf(listed?.rule.id ?? "");
  const lines = rules.flatMap((listed, index) => {
    const { rule, level } = listed;
    const first = topic(listed) !== topic(rules[index - 1]);
    const head = `${pad(level.text.toUpperCase(), 8)}${plain(rule.id)}`;
    return [
      ...(first && index > 0 ? [""] : []),
      ...labelled(head, rule.states, 2, widest + 8, width),
      ...inForceTexts(listed).flatMap((text) =>
        labelled("", text, 2, widest + 8, width).map((line) => ink.quiet(line)),
      ),
    ];
  });
  const foot = `In force by ${plain(name)}; in brackets: where a value comes from. A level without a place is the default. \`plumbmark rules ID\` states a rule in full.`;
  return `${[...lines, "", ...wrap(foot, width).map((line) => ink.quiet(line))].join("\n")}\n`;
}

/** `share: continuous share of the breaker's rating; us 80 %, iec 100 %`. */
function showSetting(name: string, definition: SettingDefinition): string {
  const [us, iec] = [settingText(definition.us, definition, "us"), settingText(definition.iec, definition, "iec")];
  return `${name}: ${definition.describe}; ${us === iec ? us : `us ${us}, iec ${iec}`}`;
}

const under = (label: string, texts: readonly string[]): readonly (readonly [string, string])[] =>
  texts.map((text, index) => [index === 0 ? label : "", text]);

/** One rule in full. */
export function ruleText(listed: ListedRule, { width, colour }: Page): string {
  const ink = palette(colour);
  const { rule } = listed;
  const told: readonly (readonly [label: string, text: string])[] = [
    ["level", `${listed.level.text}${from(listed.level)}`],
    ["why", rule.why],
    ["judged", rule.judged],
    ...under("rests on", rule.sources.map(showSourceById)),
    ...under(
      "settings",
      Object.entries(rule.settings ?? {}).map(([name, setting]) => showSetting(name, setting)),
    ),
    ...under("in force", settingTexts(listed)),
    ...Object.entries(listed.supports).map(
      ([support, values]) => [support, [levelText(values), ...settingTexts(values)].join(", ")] as const,
    ),
    ["plugin", rule.plugin ?? ""],
  ];
  const below = told.flatMap(([label, text]) => (text === "" ? [] : labelled(label, text, 2, 11, width)));
  return `${[ink.strong(plain(rule.id)), "", ...wrap(rule.states, width - 2).map((line) => `  ${line}`), "", ...below].join("\n")}\n`;
}
