import type { System } from "@plumbmark/calc";
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

const step = ({ formula, with: numbers, source }: WorkingEntry): Content =>
  h("li", [
    h("span", { class: "formula" }, formula),
    h("br"),
    numbers,
    ...(source ? [h("br"), h("small", source)] : []),
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

const facts = (check: CheckEntry, system: System): readonly Content[] => {
  const { measured, allowed, share, sources } = check;
  const part = share === undefined ? "" : ` (${quantityText({ value: share, unit: "1" }, system)} of what is allowed)`;
  return [
    row("mend", check.mend),
    row("measured", measured && `${quantityText(measured, system)}${part}`),
    row("allowed", allowed && allowedText(allowed, system)),
    row("waived", waived(check)),
    row("rests on", sources.length > 0 ? sources.map(sourceText).join("; ") : undefined),
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
