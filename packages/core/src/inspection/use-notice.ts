import type { CheckEntry, DocumentEntry } from "./record.js";

/** What has to be known of a document wherever its figures stand. */
export type JudgedDocument = Pick<DocumentEntry, "verdict" | "status" | "checks">;

const REFUSED = "NOT READY. Do not lift. Do not energise.";
const DRAFT = "DRAFT. Do not build from it.";

/**
 * The words that go with every figure of a document that must not be built from, on whatever page or in whatever file;
 * undefined for one that is ready. Figures are copied and printed without the page that says how they were judged.
 */
export function useNotice({ verdict, status }: Pick<DocumentEntry, "verdict" | "status">): string | undefined {
  const draft = verdict === "draft" || status === "draft";
  const words = [...(verdict === "not ready" ? [REFUSED] : []), ...(draft ? [DRAFT] : [])];
  return words.length === 0 ? undefined : words.join(" ");
}

const OUTCOMES = new Set<CheckEntry["outcome"]>(["fails", "open"]);

/** Rules that do not hold for something, by its path: `power.circuit-load fails`. What lies below it counts as well. */
export function failuresAt({ checks }: Pick<JudgedDocument, "checks">): (path: string) => readonly string[] {
  const worse = checks.filter(({ outcome }) => OUTCOMES.has(outcome));
  return (path) => [
    ...new Set(
      worse
        .filter(({ at }) => at.path === path || at.path.startsWith(`${path}.`))
        .map(({ rule, outcome }) => `${rule} ${outcome === "fails" ? "fails" : "is open"}`),
    ),
  ];
}
