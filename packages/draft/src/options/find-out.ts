import { type CheckEntry, foundIn } from "@plumbmark/core";
import type { ToFindOut } from "../write/document.js";

/** Who is asked for what is found there. */
const ASKED: Readonly<Record<string, string>> = {
  "data sheet": "the maker's data sheet",
  marking: "whoever reads the marking on the thing itself",
  letter: "a licensed engineer, in a letter",
  tape: "whoever is on site with a tape",
  "panel schedule": "the hall's licensed electrician",
  law: "the law or standard that gives it",
  plan: "whoever plans the build",
};

/** A label as it stands within a sentence: `Hang H1 of bar header` → `hang H1 of bar header`. Names keep their letters. */
const inSentence = (label: string): string => label.replace(/^[A-Z](?=[a-z]+ )/u, (first) => first.toLowerCase());

const PLANNER = "whoever plans the build";

/** Who is asked, where that is not whoever plans it. */
const BY_RULE: Readonly<Record<string, string>> = { "stock.inspected": "a qualified person who inspects it" };

const sentence = (text: string): string => text.replace(/\.$/u, "");

/** What a draft leaves open, each thing once, with whom to ask: what is not written down, and what is only guessed. */
export function toFindOut(checks: readonly CheckEntry[]): readonly ToFindOut[] {
  const { gaps, guesses, rest } = foundIn(checks);
  const asked = (found: string | undefined): string => (found === undefined ? PLANNER : (ASKED[found] ?? found));
  // What has no name of its own is told by what waits for it: a path says nothing to a client.
  const named = (path: string, waiting: readonly CheckEntry[]): string => sentence(waiting[0]?.says ?? `\`${path}\``);
  const missing = gaps.map(({ path, what, of, found, file, waiting }) => ({
    what: `${what ?? named(path, waiting)}${of === undefined ? "" : ` of ${inSentence(of)}`}${file === undefined ? "" : ` (${file})`}`,
    by: asked(found),
  }));
  const guessed = guesses.map(({ path, what, found }) => ({
    what: `\`${path}\` is a guess${what === undefined ? "" : `, ${what}`}`,
    by: asked(found),
  }));
  const open = rest
    .filter(({ outcome, rule }) => outcome === "open" && !rule.startsWith("document.sections"))
    .map(({ says, rule }) => ({ what: sentence(says), by: BY_RULE[rule] ?? PLANNER }));
  const told = new Set<string>();
  return [...missing, ...guessed, ...open].filter(({ what }) => !told.has(what) && told.add(what));
}
