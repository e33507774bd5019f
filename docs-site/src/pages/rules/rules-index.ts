import { type Content, h } from "../../html/html.js";
import { table } from "../../html/table.js";
import { levelInForce, type Site } from "../../site/site.js";
import { type PublishedRule, ruleTopic, topicName } from "../../site/stated-rule.js";
import { linkTo, type SitePage } from "../page.js";

const PATH = "rules/index.html";
const COLUMNS = ["Rule", "Level", "It states"];

const row = (site: Site) => (rule: PublishedRule) => [
  h("a", { href: linkTo(PATH, site.rulePaths.get(rule.id) ?? "") }, h("code", rule.id)),
  levelInForce(site, rule).toUpperCase(),
  rule.states,
];

/** Every rule by topic. */
export function rulesIndex(site: Site): SitePage {
  const topics = [...new Set(site.rules.map(({ id }) => ruleTopic(id)))].sort();
  const content: Content = [
    h("nav", { class: "contents", ariaLabel: "Topics" }, [
      h(
        "ul",
        topics.map((topic) => h("li", h("a", { href: `#Topic-${topic}` }, topicName(topic)))),
      ),
    ]),
    ...topics.map(
      (topic): Content => [
        h("h2", { id: `Topic-${topic}` }, topicName(topic)),
        table(
          `Rules about ${topicName(topic).toLowerCase()}`,
          COLUMNS,
          site.rules.filter(({ id }) => ruleTopic(id) === topic).map(row(site)),
        ),
      ],
    ),
  ];
  return { path: PATH, title: "Rules", number: "0.2", content };
}
