import { fromText, type ListedRule, type ListedValue, type ListedValues, topicOf } from "@plumbmark/core";
import { plain } from "./lines.js";

/** A text inside a cell of a table. */
const cell = (text: string): string => plain(text).replace(/[\\|<>`*_[\]]/gu, (sign) => `\\${sign}`);

const from = ({ from }: ListedValue<unknown>): string => ` (${fromText(from)})`;

const settings = (values: ListedValues): readonly string[] =>
  Object.entries(values.settings).map(([key, each]) => cell(`${key} ${each.text}${from(each)}`));

const level = (each: ListedValues["level"]): string => cell(`${each.text.toUpperCase()}${from(each)}`);

const held = ([support, values]: readonly [string, ListedValues]): string =>
  `${support}: ${[level(values.level), ...settings(values)].join(", ")}`;

function row(listed: ListedRule): string {
  const { rule, supports } = listed;
  const all = [...settings(listed), ...Object.entries(supports).map(held)];
  return `| ${cell(rule.id)} | ${level(listed.level)} | ${all.join("; ")} | ${cell(rule.states)} |`;
}

/** The rules in force as tables of Markdown, one for each topic. */
export function rulesMarkdown(name: string, rules: readonly ListedRule[]): string {
  const topics = [...new Set(rules.map(({ rule }) => topicOf(rule.id)))];
  const table = (topic: string): readonly string[] => [
    "",
    `## ${topic}`,
    "",
    "| rule | level | settings | states |",
    "| --- | --- | --- | --- |",
    ...rules.filter(({ rule }) => topicOf(rule.id) === topic).map(row),
  ];
  const head = [`# Rules in force by ${cell(name)}`, "", "In brackets: where the value comes from."];
  return `${[...head, ...topics.flatMap(table)].join("\n")}\n`;
}
