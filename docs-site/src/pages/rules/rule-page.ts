import { sourceOf } from "@plumbmark/calc";
import { sourceText } from "../../html/figure-text.js";
import { type Content, h } from "../../html/html.js";
import { inlineCode } from "../../html/inline-code.js";
import { levelInForce, ruleLinks, type SiteWithDocuments } from "../../site/site.js";
import { type PublishedRule, ruleTopic, topicName } from "../../site/stated-rule.js";
import { linkTo, type SitePage } from "../page.js";
import { setByStandards } from "../set-values.js";
import { sourceAnchor } from "../sources/sources-page.js";
import { examples } from "./examples.js";
import { ruleBuilds } from "./rule-builds.js";
import { ruleExamples } from "./rule-examples.js";
import { ruleFormulas } from "./rule-formulas.js";
import { ruleMentions } from "./rule-mentions.js";
import { settingsTable } from "./rule-settings.js";
import { ruleTables } from "./rule-tables.js";

const heading = (text: string) => h("h2", text);

/** A path such as the rule's own checks have, from its examples. */
const wherePath = (id: string): string | undefined => {
  const checks = (examples().rules[id] ?? []).flatMap((each) => each.checks);
  const found =
    checks.find(({ outcome, at }) => outcome === "fails" && at.path !== "") ?? checks.find(({ at }) => at.path !== "");
  return found?.at.path;
};

const waive = (id: string, where: string | undefined) => `waivers:
  - rule: ${id}
${where === undefined ? "" : `    where: ${where}\n`}    because: why it may be so here, in a sentence
    by: who signs for it
    until: 2027-06-30`;

const levelText = (inForce: string, byDefault: string): string =>
  inForce === byDefault
    ? `${inForce.toUpperCase()}, as by default.`
    : `${inForce.toUpperCase()} in this house standard; by default ${byDefault.toUpperCase()}.`;

/** The page of one rule. */
export function rulePage(rule: PublishedRule, number: string, site: SiteWithDocuments): SitePage {
  const path = site.rulePaths.get(rule.id) ?? "";
  const { standard } = site.repository;
  const own = standard.requirements[rule.id];
  const inForce = levelInForce(site, rule);
  const content: Content = [
    h("p", { class: "states" }, inlineCode(rule.states)),
    heading("Why"),
    h("p", ruleMentions(rule.why, path, site)),
    heading("How it is judged"),
    h("p", ruleMentions(rule.judged, path, site)),
    h(
      "p",
      "What is not written down cannot be judged: such a check is open. Open is no pass, and where the rule is a SHALL the build is not ready.",
    ),
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
    ruleTables(rule, path),
    heading("Builds that meet it and builds that do not"),
    ruleBuilds(rule.id, path, site),
    ruleExamples(rule.id, ruleLinks(site, path)),
    heading("How to waive it"),
    h(
      "p",
      inlineCode(
        "In the front matter of the build, signed and dated. The check is then shown as waived until the day has passed. `where` is the path that is printed beside the check; without it the waiver is for every check of this rule in the document.",
      ),
    ),
    h("pre", { class: "wide", tabindex: 0 }, h("code", waive(rule.id, wherePath(rule.id)))),
  ];
  return {
    path,
    title: rule.id,
    number,
    cells: [
      ["Topic", topicName(ruleTopic(rule.id))],
      ["Level in force", inForce.toUpperCase()],
      ["From", rule.own ? "the house standard" : (rule.plugin ?? "Plumbmark")],
    ],
    content,
  };
}
