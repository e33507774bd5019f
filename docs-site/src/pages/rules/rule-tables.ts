import { type RegisterTable, register, type SourceId, sourceOf, sourcesOfTable } from "@plumbmark/calc";
import { anchor } from "../../html/anchor.js";
import { type Content, h } from "../../html/html.js";
import { type PublishedRule, ruleTopic } from "../../site/stated-rule.js";
import { linkTo } from "../page.js";
import { examples } from "./examples.js";

let known: readonly RegisterTable[] | undefined;

/** What everything rests on says nothing of a rule. */
const isParticular = (id: string): boolean => {
  const { basis } = sourceOf(id as SourceId);
  return basis === "published" || basis === "memory";
};

/** Sources a rule and the steps of its examples rest on. */
const restsOn = ({ id, sources }: PublishedRule): ReadonlySet<string> =>
  new Set(
    [
      ...sources,
      ...(examples().rules[id] ?? []).flatMap(({ checks }) =>
        checks.flatMap(({ working = [] }) => working.flatMap(({ source }) => (source === undefined ? [] : [source]))),
      ),
    ].filter(isParticular),
  );

/** The tables of figures a rule is judged by: those of its own topic's connectors, and those of its sources. */
export function ruleTables(rule: PublishedRule, path: string): Content {
  known ??= register([]).tables;
  const own = restsOn(rule);
  const topic = ruleTopic(rule.id);
  const found = known.filter(
    (each) =>
      (topic === "connectors" && each.id.startsWith("connectors.")) || sourcesOfTable(each).some((id) => own.has(id)),
  );
  if (found.length === 0) return undefined;
  return [
    h("h3", "Tables of these sources"),
    h(
      "ul",
      found.map(({ id, title }) =>
        h("li", h("a", { href: linkTo(path, `tables.html#${anchor("Table", id)}`) }, title)),
      ),
    ),
  ];
}
