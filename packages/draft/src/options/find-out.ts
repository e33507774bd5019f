import { type CheckEntry, foundIn } from "@plumbmark/core";
import { PLANNER, type Scheme, type ToFindOut } from "../decide/decision.js";

/** Who is asked for what is found there. */
const ASKED: Readonly<Record<string, string>> = {
  "data sheet": "the maker's data sheet",
  marking: "whoever reads the marking on the thing itself",
  letter: "a licensed engineer, in a letter",
  tape: "whoever is on site with a tape",
  "panel schedule": "the hall's licensed electrician",
  law: "the law or standard that gives it",
  plan: PLANNER,
};

/** A label as it stands within a sentence: `Hang H1 of bar header` → `hang H1 of bar header`. Names keep their letters. */
const inSentence = (label: string): string => label.replace(/^[A-Z](?=[a-z]+ )/u, (first) => first.toLowerCase());

/** Who is asked, where that is not whoever plans it. */
const BY_RULE: Readonly<Record<string, string>> = { "stock.inspected": "a qualified person who inspects it" };

const sentence = (text: string): string => text.replace(/\.$/u, "");

/**
 * What a draft leaves open, each thing once, with whom to ask: what is not written down, what is only guessed, and what
 * no rule asks for but was found out while it was laid out.
 */
export function toFindOut(checks: readonly CheckEntry[], { toFindOut: asked = [] }: Scheme): readonly ToFindOut[] {
  const { gaps, guesses, rest } = foundIn(checks);
  const whoFor = (found: string | undefined): string => (found === undefined ? PLANNER : (ASKED[found] ?? found));
  // What has no name of its own is told by what waits for it: a path says nothing to a client.
  const named = (path: string, waiting: readonly CheckEntry[]): string => sentence(waiting[0]?.says ?? `\`${path}\``);
  const missing = gaps.map(({ path, what, of, found, file, waiting }) => ({
    what: `${what ?? named(path, waiting)}${of === undefined ? "" : ` of ${inSentence(of)}`}${file === undefined ? "" : ` (${file})`}`,
    by: whoFor(found),
  }));
  const guessed = guesses.map(({ path, what, found }) => ({
    what: `\`${path}\` is a guess${what === undefined ? "" : `, ${what}`}`,
    by: whoFor(found),
  }));
  const open = rest
    .filter(({ outcome, rule }) => outcome === "open" && !rule.startsWith("document.sections"))
    .map(({ says, rule }) => ({ what: sentence(says), by: BY_RULE[rule] ?? PLANNER }));
  const told = new Set<string>();
  return [...missing, ...guessed, ...open, ...asked].filter(({ what }) => !told.has(what) && told.add(what));
}
