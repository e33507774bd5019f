import { type Content, h } from "../../html/html.js";
import { state } from "../../html/state.js";
import type { RuleLink } from "../../sheet/check.js";
import { checkList } from "../../sheet/check.js";
import { type Example, examples } from "./examples.js";

const LOOKS: Readonly<Record<string, readonly string[]>> = {
  holds: ["holds"],
  fails: ["fails", "shall"],
  open: ["open"],
};
const ORDER = Object.keys(LOOKS);

const outcomeOf = ({ name }: Example): string => name.split("-")[0] ?? name;

/** What the name says beside the outcome, in words. */
const about = ({ name }: Example): string => name.split("-").slice(1).join(" ");

const shown = (files: Example["files"]): Content =>
  files.flatMap(({ path, text }): Content[] => [
    ...(files.length > 1 ? [h("p", h("code", path))] : []),
    h("pre", { class: "wide", tabindex: 0 }, h("code", text.trim())),
  ]);

const writes = ({ files }: Example): boolean => files.some(({ text }) => /^practice:/mu.test(text));

function item(example: Example, ruleLink: RuleLink, open: boolean): Content {
  const { files, checks, system, practice } = example;
  const outcome = outcomeOf(example);
  return h("details", { class: "example", ...(open ? { open: true } : {}) }, [
    h("summary", [state(LOOKS[outcome] ?? [], outcome), about(example) ? ` ${about(example)}` : ""]),
    practice === undefined
      ? undefined
      : h("p", `Practice ${practice}${writes(example) ? "" : ", the default: the document writes none"}.`),
    checkList(checks, { system, ruleLink, open }),
    shown(files),
  ]);
}

/** Documents that hold, fail and are open, with the checks that came out of them. */
export function ruleExamples(id: string, ruleLink: RuleLink): Content {
  const { day, rules } = examples();
  const all = [...(rules[id] ?? [])].sort(
    (one, other) => ORDER.indexOf(outcomeOf(one)) - ORDER.indexOf(outcomeOf(other)) || (one.name < other.name ? -1 : 1),
  );
  if (all.length === 0) return undefined;
  const first = all.find((each) => outcomeOf(each) === "fails");
  return [
    h("h2", "Examples"),
    h("p", `Documents and what came out when they were judged by this rule alone, with the defaults, for ${day}.`),
    ...all.map((each) => item(each, ruleLink, each === first)),
  ];
}
