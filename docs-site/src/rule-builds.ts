import { type Judged, judgedBy } from "./checks-by-rule.js";
import { type Content, h } from "./html.js";
import type { Counts } from "./listed.js";
import { linkTo } from "./page.js";
import type { Whole } from "./site.js";
import { countState } from "./state.js";
import { table } from "./table.js";

/** Of builds that meet a rule, no more are listed: a register of thousands would make every rule's page as long. */
const MOST = 100;

const OUTCOMES = ["fails", "open", "waived", "holds"] as const;

const countStates = (counts: Counts): Content =>
  OUTCOMES.map((outcome) => {
    const count = counts[outcome];
    return count === undefined ? undefined : [countState(outcome, count), " "];
  });

const meets = ({ counts: { fails, open, waived } }: Judged): boolean => !fails && !open && !waived;

/** Which builds of the repository meet the rule and which do not; those that do not come first. */
export function ruleBuilds(id: string, path: string, site: Whole): Content {
  const judged = judgedBy(id, site);
  if (judged.length === 0) return h("p", "It has nothing to say about any build of this repository.");
  const [good, bad] = [judged.filter(meets), judged.filter((each) => !meets(each))];
  const more = good.length - MOST;
  return [
    h("p", `${good.length} meet it, ${bad.length} ${bad.length === 1 ? "does" : "do"} not.`),
    table(
      "Builds of this repository",
      ["Build", "Meets it", "Checks"],
      [...bad, ...good.slice(0, MOST)].map((each) => [
        h("a", { href: linkTo(path, each.document.page) }, each.document.title),
        meets(each) ? "yes" : "no",
        countStates(each.counts),
      ]),
    ),
    more > 0 ? h("p", `${more} more meet it.`) : undefined,
  ];
}
