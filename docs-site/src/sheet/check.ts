import { type SourceId, type System, sources } from "@plumbmark/calc";
import type { CheckEntry, WorkingEntry } from "@plumbmark/core";
import { marginBar } from "../drawings/margin-bar.js";
import { allowedText, quantityText, sourceName } from "../html/figure-text.js";
import { type Content, h } from "../html/html.js";
import { inlineCode } from "../html/inline-code.js";
import { lookOf, outcomeState } from "../html/state.js";
import { subscripts } from "../html/subscripts.js";
import { onceFor } from "../site/once-for.js";

/** Where a rule's page is, seen from the page that asks; undefined for what the engine itself checks. */
export type RuleLink = (id: string) => string | undefined;

export interface CheckContext {
  readonly system: System;
  readonly ruleLink: RuleLink;
  /** Whether workings stand open. */
  readonly open?: boolean;
}

const ruleName = (id: string, ruleLink: RuleLink) => {
  const href = ruleLink(id);
  return href ? h("a", { href }, id) : h("span", id);
};

/** The line and the path of what a check is about: a waiver names it by this path. */
const placeOf = ({ at }: CheckEntry): Content => [
  ` line ${at.line}`,
  at.path === "" ? undefined : [", ", h("code", at.path)],
];

const whatOf = (check: CheckEntry, ruleLink: RuleLink) =>
  h("p", { class: "what" }, [outcomeState(check), " ", ruleName(check.rule, ruleLink), placeOf(check)]);

const fact = (term: string, content: Content): Content =>
  content === undefined ? undefined : h("div", [h("dt", term), h("dd", content)]);

/** The name of a step's source; what a plugin calls its own source stands as it is. */
const stepSource = (id: string): string => (id in sources ? sourceName(sources[id as SourceId]) : id);

/**
 * A step as lines of one text: the formula, the numbers put in, and what it rests on. Many checks of a document rest on
 * the same steps.
 */
const step = onceFor(({ formula, with: numbers, source, from = [] }: WorkingEntry) =>
  h(
    "li",
    subscripts(
      [formula, numbers, ...from.map((each) => `from ${each}`), ...(source ? [stepSource(source)] : [])].join("\n"),
    ),
  ),
);

/** The working behind a check, folded away. */
export const workingDetails = (working: readonly WorkingEntry[] | undefined, open = false): Content =>
  working && working.length > 0
    ? h("details", { class: "working", ...(open ? { open: true } : {}) }, [
        h("summary", "Working"),
        h("ol", working.map(step)),
      ])
    : undefined;

const waived = ({ waiver }: CheckEntry): string | undefined =>
  waiver && `${waiver.because} Signed ${waiver.by}, until ${waiver.until}.`;

/** With which figure it would hold; what a licensed person states is asked for, not proposed. */
function turnText({ "turns-at": turns }: CheckEntry): Content {
  if (!turns) return undefined;
  const { path, sense, text, asks } = turns;
  return asks
    ? [`ask the ${asks} for ${sense} ${text} at `, h("code", path)]
    : ["holds with ", h("code", path), ` ${sense} ${text}`];
}

/** What the survey of the venue states of it: where, and who states it. */
const statedText = ({ "stated-in": stated }: CheckEntry): Content =>
  stated?.map(({ file, line, path, by }, index) => [
    index === 0 ? "" : "; ",
    h("code", path),
    ` in ${file}, line ${line}, ${by}`,
  ]);

const facts = (check: CheckEntry, system: System): readonly Content[] => {
  const { measured, allowed } = check;
  return [
    fact("measured", measured && quantityText(measured, system)),
    fact("allowed", allowed && allowedText(allowed, system)),
    fact("margin", marginBar(check)),
    fact("turns at", turnText(check)),
    fact("stated in", statedText(check)),
    fact("mend", check.mend === undefined ? undefined : inlineCode(check.mend)),
    fact("waived", waived(check)),
    fact("plugin", check.from && h("code", check.from)),
  ];
};

/** One check: what was found, measured and allowed, how much is in hand, and the working on demand. */
export function checkItem(check: CheckEntry, { system, ruleLink, open }: CheckContext): Content {
  const known = facts(check, system).filter((each) => each !== undefined);
  return h("li", { class: ["check", ...lookOf(check)] }, [
    whatOf(check, ruleLink),
    h("p", inlineCode(check.says)),
    ...(known.length > 0 ? [h("dl", { class: "facts" }, known)] : []),
    ...(check.sources.length > 0
      ? [h("p", { class: "rests" }, `Rests on ${check.sources.map(sourceName).join("; ")}`)]
      : []),
    workingDetails(check.working, open),
  ]);
}

/** What there has to be is asked for; what there may be at most is allowed. */
const isAsked = ({ sense }: NonNullable<CheckEntry["allowed"]>): boolean => sense === "at least" || sense === "exactly";

/** A check in short, as one line of the list of all: what was found, measured, allowed and in hand. */
function checkLine(check: CheckEntry, { system, ruleLink }: CheckContext): Content {
  const { measured, allowed, share } = check;
  const found = [
    measured && `${quantityText(measured, system)} measured`,
    allowed && `${allowedText(allowed, system)} ${isAsked(allowed) ? "asked for" : "allowed"}`,
  ];
  const known = [...found.filter((each) => each !== undefined)].join(", ");
  return h("li", { class: ["check", ...lookOf(check)] }, [
    whatOf(check, ruleLink),
    h("p", inlineCode(check.says)),
    ...(known === ""
      ? []
      : [h("p", { class: "short" }, [known, " ", share === undefined ? undefined : marginBar(check)])]),
    workingDetails(check.working),
  ]);
}

export const checkLines = (checks: readonly CheckEntry[], context: CheckContext): Content =>
  h(
    "ul",
    { class: "checks" },
    checks.map((check) => checkLine(check, context)),
  );

/** Checks in full. */
export const checkList = (checks: readonly CheckEntry[], context: CheckContext): Content =>
  h(
    "ul",
    { class: "checks" },
    checks.map((check) => checkItem(check, context)),
  );
