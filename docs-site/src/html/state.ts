import type { CheckEntry, DocumentEntry, Outcome } from "@plumbmark/core";
import { h } from "./html.js";

/** Classes of a check: a failed check looks as grave as the level of its rule. */
export const lookOf = ({ outcome, level }: Pick<CheckEntry, "outcome" | "level">): readonly string[] =>
  outcome === "fails" ? ["fails", level] : [outcome];

/** An outcome as its word with a mark of its own shape and hatch beside it; colour alone carries nothing. */
export const state = (look: readonly string[], word: string) => h("span", { class: ["state", ...look] }, word);

export const outcomeState = ({ outcome, level }: Pick<CheckEntry, "outcome" | "level">) =>
  state(lookOf({ outcome, level }), `${level.toUpperCase()} ${outcome}`);

const WORDS: Readonly<Record<Outcome, string>> = { holds: "hold", fails: "fail", open: "open", waived: "waived" };

/** How many checks came out this way: `3 fail`. */
export const countState = (outcome: Outcome, count: number) =>
  state(
    outcome === "fails" ? ["fails", "shall"] : [outcome],
    `${count} ${count === 1 && outcome === "fails" ? "fails" : count === 1 && outcome === "holds" ? "holds" : WORDS[outcome]}`,
  );

/** A draft has checks nobody counted: it must not look like one that may be built. */
export function verdictState({ verdict }: Pick<DocumentEntry, "verdict">) {
  if (verdict === "not ready") return state(["fails", "shall", "verdict"], "Not ready");
  return verdict === "draft" ? state(["open", "verdict"], "Draft") : state(["holds", "verdict"], "Ready");
}
