import { sourceOf } from "@plumbmark/calc";
import { type Content, h } from "./html.js";
import { inlineCode } from "./inline-code.js";
import { linkTo, type Page } from "./page.js";
import { ruleBuilds } from "./rule-builds.js";
import { ruleExamples } from "./rule-examples.js";
import { ruleFormulas } from "./rule-formulas.js";
import { settingsTable } from "./rule-settings.js";
import { setByStandards } from "./set-values.js";
import { levelInForce, rulesFrom, type Whole } from "./site.js";
import { sourceAnchor } from "./sources-page.js";
import { type Stated, topicName, topicOf } from "./stated.js";
import { sourceText } from "./words.js";

const heading = (text: string) => h("h2", text);

const waive = (id: string) => `waivers:
  - rule: ${id}
    where: faces.banner        # what it is about; left out for the whole document
    because: why it may be so here, in a sentence
    by: who signs for it
    until: 2027-06-30`;

const levelText = (inForce: string, byDefault: string): string =>
  inForce === byDefault
    ? `${inForce.toUpperCase()}, as by default.`
    : `${inForce.toUpperCase()} in this house standard; by default ${byDefault.toUpperCase()}.`;

/** The page of one rule. */
export function rulePage(rule: Stated, number: string, site: Whole): Page {
  const path = site.rulePaths.get(rule.id) ?? "";
  const { standard } = site.inspection;
  const own = standard.rules[rule.id];
  const inForce = levelInForce(site, rule);
  const content: Content = [
    h("p", { class: "states" }, inlineCode(rule.states)),
    heading("Why"),
    h("p", inlineCode(rule.why)),
    heading("How it is judged"),
    h("p", inlineCode(rule.judged)),
    ruleFormulas(rule.id),
    heading("Level and settings"),
    h("p", levelText(inForce, rule.level)),
    settingsTable(rule, own, standard.practice),
    setByStandards(rule, site),
    heading("Sources"),
    h(
      "ul",
      rule.sources.map((id) => h("li", h("a", { href: linkTo(path, sourceAnchor(id)) }, sourceText(sourceOf(id))))),
    ),
    heading("Builds that meet it and builds that do not"),
    ruleBuilds(rule.id, path, site),
    ruleExamples(rule.id, rulesFrom(site, path)),
    heading("How to waive it"),
    h(
      "p",
      "In the front matter of the build, signed and dated. The check is then shown as waived until the day has passed.",
    ),
    h("pre", { class: "wide", tabindex: 0 }, h("code", waive(rule.id))),
  ];
  return {
    path,
    title: rule.id,
    number,
    cells: [
      ["Topic", topicName(topicOf(rule.id))],
      ["Level in force", inForce.toUpperCase()],
      ["From", rule.own ? "the house standard" : (rule.plugin ?? "Plumbmark")],
    ],
    content,
  };
}
