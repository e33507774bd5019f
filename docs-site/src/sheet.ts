import type { CheckEntry, Counts } from "@plumbmark/core";
import { h } from "hastscript";
import { cautions } from "./cautions.js";
import { checkList, type RuleLink } from "./check.js";
import type { Published } from "./documents.js";
import type { Content, Page } from "./page.js";
import { prose, type Resolve } from "./prose.js";

const GRAVITY = ["shall", "should", "note"];
const STATE = ["fails", "open", "waived", "holds"];

/** What stops the build comes first. */
const byGravity = (one: CheckEntry, other: CheckEntry): number =>
  STATE.indexOf(one.outcome) - STATE.indexOf(other.outcome) ||
  GRAVITY.indexOf(one.level) - GRAVITY.indexOf(other.level);

export const countsText = ({ checks, holds, fails, open, waived }: Counts): string =>
  `${checks} checks: ${holds} hold, ${fails} ${fails === 1 ? "fails" : "fail"}, ${open} open, ${waived} waived.`;

export const verdict = (words: "ready" | "not ready"): Content =>
  h("strong", { class: ["verdict", words === "ready" ? "holds" : "fails"] }, words === "ready" ? "Ready" : "Not ready");

const section = (id: string, title: string, content: Content): Content => [h("h2", { id }, title), content];

const about = ({ entry }: Published): string =>
  [entry.file, entry.revision === undefined ? undefined : `revision ${entry.revision}`, entry.status]
    .filter((each) => each !== undefined)
    .join(", ");

/** The sheet of a build: verdict and what does not hold first, then everything, then what the author wrote. */
export function sheet(document: Published, ruleLink: RuleLink, resolve: Resolve): Page {
  const { entry, page, title, text, system } = document;
  const frame = { system, ruleLink };
  const worse = entry.checks.filter(({ outcome }) => outcome !== "holds").sort(byGravity);
  const content: Content = [
    h("p", { class: "about" }, about(document)),
    h("p", [verdict(entry.verdict) as ReturnType<typeof h>, ` ${countsText(entry.counts)}`]),
    entry.status === "draft"
      ? h("p", "This is a draft: open checks do not count yet. Do not build from it.")
      : undefined,
    cautions(document),
    worse.length > 0 ? section("Open", "What does not hold", checkList(worse, frame)) : undefined,
    entry.checks.length > 0 ? section("Checks", "Every check", checkList(entry.checks, frame)) : undefined,
    text === undefined
      ? undefined
      : section("Document", "The document", h("div", { class: "prose" }, [...prose(text, title, resolve)])),
  ];
  return { path: page, title, content };
}
