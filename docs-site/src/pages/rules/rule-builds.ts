import { type Content, h } from "../../html/html.js";
import { countState } from "../../html/state.js";
import { table } from "../../html/table.js";
import { judgedBy, type RuleInDocument } from "../../site/checks-by-rule.js";
import type { OutcomeCounts } from "../../site/document-summary.js";
import type { SiteWithDocuments } from "../../site/site.js";
import { linkTo } from "../page.js";

/** Of builds that meet a rule, no more are listed: a register of thousands would make every rule's page as long. */
const MOST = 100;

const OUTCOMES = ["fails", "open", "waived", "holds"] as const;

const countStates = (counts: OutcomeCounts): Content =>
  OUTCOMES.map((outcome) => {
    const count = counts[outcome];
    return count === undefined ? undefined : [countState(outcome, count), " "];
  });

type Met = "yes" | "no" | "cannot be told";

/** An open check passes nothing and accuses nobody. */
const meets = ({ counts: { fails, open, waived } }: RuleInDocument): Met =>
  fails || waived ? "no" : open ? "cannot be told" : "yes";

const tally = (judged: readonly RuleInDocument[]): string => {
  const count = (met: Met): number => judged.filter((each) => meets(each) === met).length;
  const [good, bad, open] = [count("yes"), count("no"), count("cannot be told")];
  const untold = open > 0 ? `; of ${open} it cannot be told, because something is not written down` : "";
  return `${good} ${good === 1 ? "meets" : "meet"} it, ${bad} ${bad === 1 ? "does" : "do"} not${untold}.`;
};

/** Which builds of the repository meet the rule and which do not; those that do not come first. */
export function ruleBuilds(id: string, path: string, site: SiteWithDocuments): Content {
  const judged = judgedBy(id, site);
  if (judged.length === 0) return h("p", "It has nothing to say about any build of this repository.");
  const good = judged.filter((each) => meets(each) === "yes");
  const bad = judged.filter((each) => meets(each) !== "yes");
  const more = good.length - MOST;
  return [
    h("p", tally(judged)),
    table(
      "Builds of this repository",
      ["Build", "Meets it", "Checks"],
      [...bad, ...good.slice(0, MOST)].map((each) => [
        h("a", { href: linkTo(path, each.document.page) }, each.document.title),
        meets(each),
        countStates(each.counts),
      ]),
    ),
    more > 0 ? h("p", `${more} more meet it.`) : undefined,
  ];
}
