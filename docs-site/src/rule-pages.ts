import { printQuantity, sourceOf } from "@plumbmark/calc";
import type { HouseStandardSettings, Level, Rule, Setting, SettingDefinition } from "@plumbmark/core";
import { h } from "hastscript";
import { Names } from "./names.js";
import { type Content, flat, linkTo, type Page } from "./page.js";
import { sourceText } from "./words.js";

/** What a rule states, without the code that judges it. */
export type Stated = Omit<Rule, "checks">;

const words = (data: unknown, otherwise: string): string => (typeof data === "string" ? data : otherwise);

/** The rules without code that the house standard itself states. */
export const houseRules = (standard: HouseStandardSettings): readonly Stated[] =>
  Object.entries(standard["own-rules"] ?? {}).map(([id, data]) => {
    const own = data as Readonly<Record<string, unknown>>;
    return {
      id,
      states: words(own.states, id),
      level: words(own.level, "shall") as Level,
      why: words(own.why, "A rule of the house."),
      judged: `What the house standard requires is looked up in what is written and computed: each of the ${words(own.each, "things")}, one by one.`,
      sources: ["house"],
    };
  });

/** Path of every rule's page by the rule's id. */
export function rulePaths(rules: readonly Stated[]): ReadonlyMap<string, string> {
  const names = new Names("index");
  return new Map(rules.map(({ id }) => [id, `rules/${names.take(id)}.html`]));
}

const settingText = (value: Setting, { kind }: SettingDefinition): string =>
  kind && typeof value === "number"
    ? printQuantity(value, kind, "metric")
    : Array.isArray(value)
      ? value.join(", ")
      : String(value);

type Own = HouseStandardSettings["rules"][string] | undefined;

const settingRow = ([key, setting]: [string, SettingDefinition], own: Own): Content =>
  h("tr", [
    h("th", { scope: "row" }, h("code", key)),
    h("td", setting.describe),
    h("td", settingText(setting.us, setting)),
    h("td", settingText(setting.iec, setting)),
    h("td", own?.[key] === undefined || own[key] === null ? "the default" : String(own[key])),
  ]);

function settings({ settings: defined }: Stated, own: Own): Content {
  if (!defined || Object.keys(defined).length === 0) return h("p", "It has no settings but its level.");
  const head = ["Setting", "Meaning", "Default, us", "Default, iec", "In this house standard"];
  return h(
    "section",
    { class: "wide", tabIndex: 0, ariaLabel: "Settings" },
    h("table", [
      h("caption", "Settings of the rule"),
      h(
        "thead",
        h(
          "tr",
          head.map((each) => h("th", { scope: "col" }, each)),
        ),
      ),
      h("tbody", flat(Object.entries(defined).map((each) => settingRow(each, own)))),
    ]),
  );
}

const levelText = (rule: Stated, own: Own): string =>
  own?.level === undefined || own.level === rule.level
    ? `${rule.level.toUpperCase()}.`
    : `${String(own.level).toUpperCase()} in this house standard; by default ${rule.level.toUpperCase()}.`;

/** The page of one rule. */
export function rulePage(rule: Stated, path: string, own: Own): Page {
  const content: Content = [
    h("p", { class: "states" }, rule.states),
    h("h2", "Level"),
    h("p", levelText(rule, own)),
    h("h2", "Why"),
    h("p", rule.why),
    h("h2", "How it is judged"),
    h("p", rule.judged),
    h("h2", "Settings"),
    settings(rule, own),
    h("h2", "Sources"),
    h(
      "ul",
      rule.sources.map((id) => h("li", sourceText(sourceOf(id)))),
    ),
  ];
  return { path, title: rule.id, content };
}

const topicOf = ({ id }: Stated): string => id.split(".")[0] ?? id;

/** Every rule by topic. */
export function rulesIndex(rules: readonly Stated[], paths: ReadonlyMap<string, string>): Page {
  const path = "rules/index.html";
  const topics = [...new Set(rules.map(topicOf))];
  const item = (rule: Stated) =>
    h("li", [
      h("a", { href: linkTo(path, paths.get(rule.id) ?? "") }, h("code", rule.id)),
      ` ${rule.level.toUpperCase()}. ${rule.states}`,
    ]);
  const content = topics.map(
    (topic): Content => [h("h2", topic), h("ul", rules.filter((each) => topicOf(each) === topic).map(item))],
  );
  return { path, title: "Rules", content };
}
