import type { InspectionRecord } from "@plumbmark/core";
import type { Colour } from "../surroundings.js";
import { alike, showChecks } from "./check.js";
import { type Check, type DocumentEntry, SAFETY } from "./form.js";
import { plain, wrap } from "./lines.js";
import { type Palette, palette } from "./palette.js";

const LEVELS = ["shall", "should", "note"] as const;
const OUTCOMES = ["fails", "open", "waived", "holds"] as const;

/** What matters most first: a file that cannot be read, since the rest may follow from it; then what stands against the build, by level; then what was waived; then what holds. */
const rank = ({ rule, outcome, level, at }: Check): readonly number[] => [
  rule === "document.front-matter" && outcome === "fails" ? 0 : 1,
  Math.max(0, OUTCOMES.indexOf(outcome) - 1),
  LEVELS.indexOf(level),
  at.line,
];

const inOrder = (one: Check, other: Check): number => {
  const left = rank(one);
  const right = rank(other);
  const index = left.findIndex((value, at) => value !== right[at]);
  return index < 0 ? 0 : (left[index] as number) - (right[index] as number);
};

const WORDS = {
  holds: ["holds", "hold"],
  fails: ["fails", "fail"],
  open: ["open", "open"],
  waived: ["waived", "waived"],
} as const;

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

/** `61 checks: 57 hold, 1 fails, 1 open, 2 waived.` */
function tally(counts: DocumentEntry["counts"]): string {
  const parts = (["holds", "fails", "open", "waived"] as const)
    .filter((outcome) => counts[outcome] > 0)
    .map((outcome) => count(counts[outcome], WORDS[outcome][0], WORDS[outcome][1]));
  const checks = count(counts.checks, "check", "checks");
  return parts.length === 0 ? `${checks}.` : `${checks}: ${parts.join(", ")}.`;
}

function verdict({ verdict, counts }: DocumentEntry, ink: Palette): string {
  if (verdict !== "draft") return ink.verdict(verdict)(verdict === "ready" ? "Ready." : "Not ready.");
  return ink.verdict(verdict)(
    `Draft${counts.open > 0 ? ", in which open checks do not count" : ""}. Do not build from it.`,
  );
}

function headingOf({ file, title, build, revision, status }: DocumentEntry, ink: Palette): string {
  const about = [
    title ?? build,
    revision === undefined ? undefined : `revision ${revision}`,
    status?.replaceAll("-", " "),
  ];
  const known = about.filter((part) => part !== undefined).map((part) => plain(String(part)));
  return [ink.strong(plain(file)), known.join(", ")].filter((part) => part !== "").join("   ");
}

const showDocument = (entry: DocumentEntry, width: number, ink: Palette): readonly string[] => [
  headingOf(entry, ink),
  "",
  ...alike(entry.checks.toSorted(inOrder)).flatMap((checks) => [...showChecks(checks, width, ink), ""]),
  `  ${tally(entry.counts)} ${verdict(entry, ink)}`,
  "",
];

/** The record as text for people, `width` columns wide, a piece for each document and one for all. */
export function* textPieces(
  { documents, totals }: InspectionRecord,
  { width, colour }: { readonly width: number; readonly colour: Colour },
): Iterable<string> {
  const ink = palette(colour);
  for (const entry of documents) yield `${showDocument(entry, width, ink).join("\n")}\n`;
  const verdicts = [
    totals.ready > 0 ? `${totals.ready} ready` : "",
    totals.draft > 0 ? count(totals.draft, "draft", "drafts") : "",
    totals["not-ready"] > 0 ? `${totals["not-ready"]} not ready` : "",
  ];
  const lines = [
    `${count(totals.documents, "document", "documents")}: ${verdicts.filter((part) => part !== "").join(", ")}.`,
    ...wrap(SAFETY, width).map((line) => ink.quiet(line)),
  ];
  yield `${lines.join("\n")}\n`;
}

/** The whole of it in one. */
export const textReport = (...of: Parameters<typeof textPieces>): string => [...textPieces(...of)].join("");
