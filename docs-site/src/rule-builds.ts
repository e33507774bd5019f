import type { CheckEntry } from "@plumbmark/core";
import { h } from "hastscript";
import { type Content, linkTo } from "./page.js";
import type { Site } from "./site.js";
import { countState } from "./state.js";
import { table } from "./table.js";

const OUTCOMES = ["fails", "open", "waived", "holds"] as const;

const counts = (checks: readonly CheckEntry[]): Content =>
  OUTCOMES.flatMap((outcome) => {
    const count = checks.filter((check) => check.outcome === outcome).length;
    return count === 0 ? [] : [countState(outcome, count), " "];
  });

/** Which builds of the repository meet the rule and which do not. */
export function ruleBuilds(id: string, path: string, { documents }: Site): Content {
  const judged = documents
    .map((document) => ({ document, checks: document.entry.checks.filter(({ rule }) => rule === id) }))
    .filter(({ checks }) => checks.length > 0);
  if (judged.length === 0) return h("p", "It has nothing to say about any build of this repository.");
  const meets = (checks: readonly CheckEntry[]) => checks.every(({ outcome }) => outcome === "holds");
  return table(
    "Builds of this repository",
    [{ title: "Build" }, { title: "Meets it" }, { title: "Checks" }],
    judged.map(({ document, checks }) => [
      h("a", { href: linkTo(path, document.page) }, document.title),
      meets(checks) ? "yes" : "no",
      counts(checks),
    ]),
  );
}
