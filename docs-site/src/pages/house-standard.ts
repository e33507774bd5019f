import { chainFor, type StandardChain, type StandardFile } from "@plumbmark/core";
import { type Content, h } from "../html/html.js";
import { table } from "../html/table.js";
import { levelInForce, ruleLinks, type Site } from "../site/site.js";
import type { PublishedRule } from "../site/stated-rule.js";
import type { SitePage } from "./page.js";
import { setOf } from "./set-values.js";

const PATH = "house-standard.html";

const link = (site: Site, id: string) => h("a", { href: ruleLinks(site, PATH)(id) ?? "" }, h("code", id));

const list = (items: readonly Content[], none: string): Content =>
  items.length === 0
    ? h("p", none)
    : h(
        "ul",
        items.map((item) => h("li", item as string)),
      );

const DIFFERENCES = ["Rule", "What", "In force", "Set in"];

/** What house standards set of a rule in one place of the tree. */
const differences = (rule: PublishedRule, site: Site, chain: StandardChain): readonly (readonly Content[])[] =>
  setOf(rule, chain).map((each) => [link(site, rule.id), ...each]);

/** What the house standard of a folder asks beyond those above it. */
const ofFolder = (site: Site, { folder, file, settings }: StandardFile): Content => {
  const chain = chainFor(site.repository.standards, folder);
  const rows = site.rules.flatMap((rule) => differences(rule, site, chain));
  return [
    h("h3", [h("code", folder), ` ${settings.name}`]),
    rows.length > 0 ? table(`Set for ${folder}`, DIFFERENCES, rows) : h("p", `${file} sets no level and no setting.`),
  ];
};

const inForceRow = (site: Site) => (rule: PublishedRule) => [
  link(site, rule.id),
  levelInForce(site, rule).toUpperCase(),
  rule.states,
];

/** What is in force in this house: what differs from the product, which plugins and rules of its own, and every rule. */
export function houseStandardPage(site: Site): SitePage {
  const { standard, standards } = site.repository;
  const differing = site.rules.flatMap((rule) => differences(rule, site, [standards.root]));
  const ownRules = site.rules.filter(({ own }) => own);
  const content: Content = [
    h(
      "p",
      `Builds are judged by ${standard.name}. Where a build says nothing else, the electrical practice is ${standard.practice}.`,
    ),
    h("h2", "What differs from the defaults"),
    differing.length > 0
      ? table("Differences", DIFFERENCES, differing)
      : h("p", "Nothing: every level and setting is the product's own."),
    ...(standards.folders.length > 0 ? [h("h2", "House standards of folders")] : []),
    ...standards.folders.map((each) => ofFolder(site, each)),
    h("h2", "Rules of the house"),
    ownRules.length > 0
      ? table("Rules of the house", ["Rule", "Level", "It states"], ownRules.map(inForceRow(site)))
      : h("p", "None."),
    h("h2", "Plugins"),
    list(
      standard["rules-from"].map((each) => h("code", each)),
      "None is loaded.",
    ),
    h("h2", "Sections every build document has"),
    list(standard.sections, "None is asked for."),
    h("h2", "Every rule and its level"),
    table("Rules in force", ["Rule", "Level", "It states"], site.rules.map(inForceRow(site))),
  ];
  return { path: PATH, title: "House standard", number: "0.3", cells: [["Practice", standard.practice]], content };
}
