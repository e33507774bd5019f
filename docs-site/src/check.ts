import { type SourceId, type System, sources } from "@plumbmark/calc";
import type { CheckEntry, WorkingEntry } from "@plumbmark/core";
import { h } from "hastscript";
import { type Content, flat } from "./page.js";
import { allowedText, lookOf, outcomeText, quantityText, sourceText } from "./words.js";

/** Where a rule's page is, seen from the page that asks; undefined for what the engine itself checks. */
export type RuleLink = (id: string) => string | undefined;

export interface CheckFrame {
  readonly system: System;
  readonly ruleLink: RuleLink;
}

const ruleName = (id: string, ruleLink: RuleLink): Content => {
  const href = ruleLink(id);
  return href ? h("a", { href }, h("code", id)) : h("code", id);
};

const row = (term: string, content: Content): Content =>
  content === undefined ? undefined : h("div", [h("dt", term), h("dd", flat(content))]);

/** The name of a step's source; what a plugin calls its own source stands as it is. */
const stepSource = (id: string): string => (id in sources ? sourceText(sources[id as SourceId]) : id);

const step = ({ formula, with: numbers, source }: WorkingEntry): Content =>
  h("li", [
    h("span", { class: "formula" }, formula),
    h("br"),
    numbers,
    ...(source ? [h("br"), h("small", stepSource(source))] : []),
  ]);

const workings = ({ working }: CheckEntry): Content =>
  working && working.length > 0
    ? h("details", [
        h("summary", "Working"),
        h(
          "ol",
          working.flatMap((each) => flat(step(each))),
        ),
      ])
    : undefined;

const waived = ({ waiver }: CheckEntry): string | undefined =>
  waiver && `${waiver.because} Signed ${waiver.by}, until ${waiver.until}.`;

/** How near it is to its limit; the share is the limit's of the measured value where more is better. */
function shareText({ share, allowed }: CheckEntry, system: System): string {
  if (share === undefined) return "";
  const part = quantityText({ value: share, unit: "1" }, system);
  return allowed?.sense === "at least" ? ` (what is asked for is ${part} of it)` : ` (${part} of what is allowed)`;
}

const facts = (check: CheckEntry, system: System): readonly Content[] => {
  const { measured, allowed } = check;
  return [
    row("mend", check.mend),
    row("measured", measured && `${quantityText(measured, system)}${shareText(check, system)}`),
    row("allowed", allowed && allowedText(allowed, system)),
    row("waived", waived(check)),
    row("rests on", check.sources.length > 0 ? check.sources.map(sourceText).join("; ") : undefined),
  ];
};

/** One check in full. */
export function checkItem(check: CheckEntry, { system, ruleLink }: CheckFrame): Content {
  const known = flat(facts(check, system));
  const outcome = h("strong", { class: "outcome" }, outcomeText(check));
  return h("li", { class: ["check", ...lookOf(check).split(" ")] }, [
    h("p", [outcome, " ", ...flat(ruleName(check.rule, ruleLink)), ` line ${check.at.line}`]),
    h("p", check.says),
    ...(known.length > 0 ? [h("dl", known)] : []),
    ...flat(workings(check)),
  ]);
}

export const checkList = (checks: readonly CheckEntry[], frame: CheckFrame): Content =>
  h("ul", { class: "checks" }, flat(checks.map((check) => checkItem(check, frame))));
