import type { CheckEntry } from "@plumbmark/core";
import { type Content, h } from "../html/html.js";
import type { PublishedDocument } from "../site/published-document.js";
import { ruleLinks, type Site } from "../site/site.js";
import { ruleTopic, topicName } from "../site/stated-rule.js";
import { checkLines, checkList } from "./check.js";

const GRAVITY = ["shall", "should", "note"];
const STATE = ["fails", "open", "waived", "holds"];

/** What stops the build comes first. */
const byGravity = (one: CheckEntry, other: CheckEntry): number =>
  STATE.indexOf(one.outcome) - STATE.indexOf(other.outcome) ||
  GRAVITY.indexOf(one.level) - GRAVITY.indexOf(other.level);

/** Checks that fail, are open or are waived, with their workings open. */
export function openChecks({ entry, page, system }: PublishedDocument, site: Site): Content {
  const worse = entry.checks.filter(({ outcome }) => outcome !== "holds").sort(byGravity);
  return worse.length > 0 ? checkList(worse, { system, ruleLink: ruleLinks(site, page), open: true }) : undefined;
}

const tally = (checks: readonly CheckEntry[]): string => {
  const worse = checks.filter(({ outcome }) => outcome !== "holds").length;
  const rest = worse === 0 ? (checks.length === 1 ? "holds" : "all hold") : `${worse} of them not holding`;
  return `${checks.length} ${checks.length === 1 ? "check" : "checks"}, ${rest}`;
};

/** A topic whose checks all hold is told in a line: the crew scrolls past it to the lift plan. */
const topicChecks = (topic: string, checks: readonly CheckEntry[], content: Content): Content =>
  h("details", { class: "topic", ...(checks.every(({ outcome }) => outcome === "holds") ? {} : { open: true }) }, [
    h("summary", [h("h3", topicName(topic)), ` ${tally(checks)}`]),
    content,
  ]);

/** Every check by topic. */
export function allChecks({ entry, page, system }: PublishedDocument, site: Site): Content {
  const topics = new Map<string, CheckEntry[]>();
  for (const check of entry.checks) {
    const topic = ruleTopic(check.rule);
    const list = topics.get(topic);
    if (list) list.push(check);
    else topics.set(topic, [check]);
  }
  const context = { system, ruleLink: ruleLinks(site, page) };
  const parts = [...topics].sort(([one], [other]) => (one < other ? -1 : 1));
  return parts.length > 0
    ? parts.map(([topic, checks]): Content => topicChecks(topic, checks, checkLines(checks, context)))
    : undefined;
}
