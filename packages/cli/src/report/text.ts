import { foundIn, type InspectionRecord } from "@plumbmark/core";
import type { Colour } from "../terminal/context.js";
import { alike, showChecks } from "./check.js";
import { type Check, type DocumentEntry, SAFETY } from "./form.js";
import { count, showElsewhere, showGaps, showGuesses, showWaiting } from "./found.js";
import { plain, wrap } from "./lines.js";
import { mendable } from "./mendable.js";
import { type Palette, palette } from "./palette.js";

const LEVELS = ["shall", "should", "note"] as const;
const OUTCOMES = ["fails", "open", "waived", "holds"] as const;

/** What matters most first: a file that cannot be read, since the rest may follow from it; then what stands against the build, by level; then what was waived; then what holds. */
const rank = ({ rule, outcome, level, at }: Check): readonly number[] => [
  // What was approved is looked at again once everything else is right.
  rule === "document.front-matter" && outcome === "fails" ? 0 : rule === "document.sign-off" ? 2 : 1,
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

function aboutOf({ title, build, revision, status }: DocumentEntry): readonly string[] {
  const about = [
    title ?? build,
    revision === undefined ? undefined : `revision ${revision}`,
    status?.replaceAll("-", " "),
  ];
  return about.filter((part) => part !== undefined).map((part) => plain(String(part)));
}

const headingOf = (entry: DocumentEntry, ink: Palette): string =>
  [ink.strong(plain(entry.file)), aboutOf(entry).join(", ")].filter((part) => part !== "").join("   ");

const isReady = ({ verdict, checks }: DocumentEntry): boolean => verdict === "ready" && checks.length === 0;

/** A document nothing is to be said about, on one line: `builds/a.md   Header, revision 2, for build   134 checks hold. Ready.` */
function readyLine(entry: DocumentEntry, width: number, ink: Palette): string {
  const ending = `${tally(entry.counts)} ${verdict(entry, palette(0))}`;
  const file = plain(entry.file);
  const room = width - file.length - ending.length - 6;
  const about = aboutOf(entry).join(", ");
  const middle = about.length <= room ? about : room > 12 ? `${about.slice(0, room - 1)}…` : "";
  const text = [ink.strong(file), middle].filter((part) => part !== "").join("   ");
  return `${text}   ${tally(entry.counts)} ${verdict(entry, ink)}`;
}

/** Everything in the record, a check after another. */
const inFull = (entry: DocumentEntry, width: number, ink: Palette): readonly string[] =>
  alike(entry.checks.toSorted(inOrder)).flatMap((checks) => [...showChecks(checks, width, ink), ""]);

function showDocument(entry: DocumentEntry, { width, every }: Form, ink: Palette): readonly string[] {
  return [
    headingOf(entry, ink),
    "",
    ...(every ? inFull(entry, width, ink) : inShort(entry, width, ink)),
    ...(isNoDocument(entry) ? [] : [`  ${tally(entry.counts)} ${verdict(entry, ink)}`, ""]),
  ];
}

/**
 * Mistakes with what waits for them on one line; then what is not written down, by what it is; then the rest, briefly
 * where there are mistakes: it may follow from them.
 */
function inShort({ checks }: DocumentEntry, width: number, ink: Palette): readonly string[] {
  const found = foundIn(checks);
  const mistakes = found.mistakes.toSorted((one, other) => inOrder(one.check, other.check));
  const behind = new Map(mistakes.map((each) => [each.check, each.behind.length]));
  const waiting = (group: readonly Check[]): number => group.reduce((sum, check) => sum + (behind.get(check) ?? 0), 0);
  return [
    ...alike(mistakes.map(({ check }) => check)).flatMap((group) => [
      ...showChecks(group, width, ink),
      ...showWaiting(waiting(group), width),
      "",
    ]),
    ...found.elsewhere.flatMap((each) => [...showElsewhere(each, width), ""]),
    ...showGaps(found, width, ink),
    ...showGuesses(found, width, ink),
    ...alike(found.rest.toSorted(inOrder)).flatMap((group) => [
      ...showChecks(group, width, ink, mistakes.length > 0),
      "",
    ]),
  ];
}

interface Form {
  readonly width: number;
  readonly colour: Colour;
  /** Every check of the record is listed, and nothing is told together. */
  readonly every?: boolean;
  /** Of documents that are all ready only their number is told. */
  readonly brief?: boolean;
}

/** What stands in other files, such as the catalogue, comes before the documents that rest on them. */
const isNoDocument = ({ file }: DocumentEntry): boolean => /\.ya?ml$/u.test(file);

function* documentPieces(documents: readonly DocumentEntry[], form: Form, ink: Palette): Iterable<string> {
  if (form.brief && documents.length > 1 && documents.every(isReady)) return;
  const causes = new Set(documents.flatMap(({ checks }) => checks.map((check) => check["follows-from"]?.file)));
  const isFirst = (entry: DocumentEntry): boolean => isNoDocument(entry) || causes.has(entry.file);
  const first = documents.filter(isFirst);
  let before: "nothing" | "line" | "block" = "nothing";
  for (const entry of [...first, ...documents.filter((each) => !isFirst(each))]) {
    const line = !form.every && isReady(entry);
    if (line) yield `${readyLine(entry, form.width, ink)}\n`;
    else yield `${before === "line" ? "\n" : ""}${showDocument(entry, form, ink).join("\n")}\n`;
    before = line ? "line" : "block";
  }
  if (before === "line" && documents.length > 1) yield "\n";
}

/** The record as text for people, `width` columns wide, a piece for each document and one for all. */
export function* textPieces({ documents, totals }: InspectionRecord, form: Form): Iterable<string> {
  const ink = palette(form.colour);
  yield* documentPieces(documents, form, ink);
  const verdicts = [
    totals.ready > 0 ? `${totals.ready} ready` : "",
    totals.draft > 0 ? count(totals.draft, "draft", "drafts") : "",
    totals["not-ready"] > 0 ? `${totals["not-ready"]} not ready` : "",
  ];
  const lines = [
    `${count(totals.documents, "document", "documents")}: ${verdicts.filter((part) => part !== "").join(", ")}.`,
    ...mendable(documents, (text) => wrap(text, form.width)),
    ...wrap(SAFETY, form.width).map((line) => ink.quiet(line)),
  ];
  yield `${lines.join("\n")}\n`;
}

/** The whole of it in one. */
export const textReport = (...of: Parameters<typeof textPieces>): string => [...textPieces(...of)].join("");
