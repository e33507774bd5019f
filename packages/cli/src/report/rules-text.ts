import type { Rule } from "@plumbmark/core";
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

const shown = (value: unknown): string =>
  typeof value === "object" && value !== null
    ? Object.entries(value)
        .map(([key, each]) => `${key} ${shown(each)}`)
        .join(", ")
    : String(value);

const settingsOf = (rule: Rule): readonly (readonly [label: string, text: string])[] =>
  Object.entries((rule.settings ?? {}) as Readonly<Record<string, Readonly<Record<string, unknown>>>>).map(
    ([name, { describe, ...defaults }]) => [
      name,
      `${describe === undefined ? "" : `${String(describe)}; `}${shown(defaults)}`,
    ],
  );

/** One rule in full. */
export function ruleText(rule: Rule, { width, colour }: Page): string {
  const ink = palette(colour);
  const told: readonly (readonly [label: string, text: string])[] = [
    ["level", rule.level],
    ["why", rule.why ?? ""],
    ["judged", rule.judged ?? ""],
    ...(rule.sources ?? []).map((id, index) => [index === 0 ? "rests on" : "", showSourceById(id)] as const),
    ...settingsOf(rule).map(([name, text], index) => [index === 0 ? "settings" : "", `${name}: ${text}`] as const),
  ];
  const below = told.flatMap(([label, text]) => (text === "" ? [] : labelled(label, text, 2, 11, width)));
  return `${[ink.strong(plain(rule.id)), "", ...wrap(rule.states, width - 2).map((line) => `  ${line}`), "", ...below].join("\n")}\n`;
}
