import { h } from "hastscript";
import type { Content, Page } from "./page.js";
import { ownText, settingText } from "./rule-settings.js";
import { levelInForce, rulesFrom, type Site } from "./site.js";
import type { Stated } from "./stated.js";
import { table } from "./table.js";

const PATH = "house-standard.html";
const columns = (...titles: readonly string[]) => titles.map((title) => ({ title }));

const link = (site: Site, id: string) => h("a", { href: rulesFrom(site, PATH)(id) ?? "" }, h("code", id));

const list = (items: readonly Content[], none: string): Content =>
  items.length === 0
    ? h("p", none)
    : h(
        "ul",
        items.map((item) => h("li", item as string)),
      );

/** Levels and settings that are not the product's own, one row each. */
function differences(rule: Stated, site: Site): readonly (readonly Content[])[] {
  const { practice, rules } = site.inspection.standard;
  const own = rules[rule.id];
  const inForce = levelInForce(site, rule);
  const level =
    inForce === rule.level ? [] : [[link(site, rule.id), "level", rule.level.toUpperCase(), inForce.toUpperCase()]];
  const settings = Object.entries(rule.settings ?? {}).flatMap(([key, setting]) => {
    const written = ownText(own, key);
    const byDefault = settingText(setting[practice], setting);
    return written === undefined || written === byDefault
      ? []
      : [[link(site, rule.id), h("code", key), byDefault, written]];
  });
  return [...level, ...settings];
}

const inForceRow = (site: Site) => (rule: Stated) => [
  link(site, rule.id),
  levelInForce(site, rule).toUpperCase(),
  rule.states,
];

/** What is in force in this house: what differs from the product, which plugins and rules of its own, and every rule. */
export function houseStandardPage(site: Site): Page {
  const { standard } = site.inspection;
  const differing = site.rules.flatMap((rule) => differences(rule, site));
  const ownRules = site.rules.filter(({ own }) => own);
  const content: Content = [
    h(
      "p",
      `Builds are judged by ${standard.name}. Where a build says nothing else, the electrical practice is ${standard.practice}.`,
    ),
    h("h2", "What differs from the defaults"),
    differing.length > 0
      ? table("Differences", columns("Rule", "What", "By default", "In force"), differing)
      : h("p", "Nothing: every level and setting is the product's own."),
    h("h2", "Rules of the house"),
    ownRules.length > 0
      ? table("Rules of the house", columns("Rule", "Level", "It states"), ownRules.map(inForceRow(site)))
      : h("p", "None."),
    h("h2", "Plugins"),
    list(
      standard.plugins.map((each) => h("code", each)),
      "None is loaded.",
    ),
    h("h2", "Sections every build document has"),
    list(standard.sections, "None is asked for."),
    h("h2", "Every rule and its level"),
    table("Rules in force", columns("Rule", "Level", "It states"), site.rules.map(inForceRow(site))),
  ];
  return { path: PATH, title: "House standard", number: "0.3", cells: [["Practice", standard.practice]], content };
}
