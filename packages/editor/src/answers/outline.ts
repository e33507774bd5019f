import type { Place } from "@plumbmark/core";
import type { OpenedFile } from "./opened.js";
import { linesOf, zoneOf } from "./zone.js";

/** A thing of a file with what is in it. */
export interface OutlineEntry {
  readonly name: string;
  readonly about: string;
  readonly kind: "group" | "thing" | "section";
  /** All of it. */
  readonly whole: Place;
  /** Its name. */
  readonly place: Place;
  readonly inside: readonly OutlineEntry[];
}

interface Key {
  readonly name: string;
  readonly line: number;
  readonly indent: number;
  end: number;
  readonly inside: Key[];
}

const KEY = /^( *)((?:- +)*)([A-Za-z0-9][\w.-]*)[ \t]*:(?=\s|$)/u;

/** Keys of the YAML by their indentation, whatever else may be wrong in it. */
function keysIn(lines: readonly string[], from: number, to: number): readonly Key[] {
  const top: Key[] = [];
  const open: Key[] = [];
  for (let line = from; line < to; line += 1) {
    const text = lines[line - 1] ?? "";
    if (/^\s*(?:#|$)/u.test(text)) continue;
    const match = KEY.exec(text);
    const lead = /^ */u.exec(text)?.[0].length ?? 0;
    while (open.length > 0 && (open.at(-1) as Key).indent >= lead) open.pop();
    for (const each of open) each.end = line;
    if (!match) continue;
    const key: Key = { name: match[3] as string, line, indent: lead, end: line, inside: [] };
    (open.at(-1)?.inside ?? top).push(key);
    open.push(key);
  }
  return top;
}

const lineOf = (lines: readonly string[], line: number): number => (lines[line - 1] ?? "").length + 1;

const NAMED: Readonly<Record<string, string>> = {
  faces: "face",
  "power.circuits": "circuit",
  "power.runs": "run",
  "power.supplies": "supply",
  "data.chains": "chain",
  "rigging.bars": "bar",
};

function entryOf(lines: readonly string[], key: Key, path: string, kind: OpenedFile["kind"]): OutlineEntry {
  const own = path === "" ? key.name : `${path}.${key.name}`;
  const column = key.indent + 1 + (/^ *((?:- +)*)/u.exec(lines[key.line - 1] ?? "")?.[1]?.length ?? 0);
  const about =
    NAMED[path] ??
    (/^rigging\.bars\.[^.]+\.hangs$/u.test(path) ? "hang" : kind === "parts" && path === "" ? "part" : "");
  return {
    name: key.name,
    about,
    kind: about === "" ? "group" : "thing",
    whole: { line: key.line, column, endLine: key.end, endColumn: lineOf(lines, key.end) },
    place: { line: key.line, column, endLine: key.line, endColumn: column + key.name.length },
    inside: key.inside.map((each) => entryOf(lines, each, own, kind)),
  };
}

interface Heading {
  readonly depth: number;
  readonly title: string;
  readonly line: number;
}

function headingsIn(lines: readonly string[], from: number): readonly Heading[] {
  let fence = "";
  return lines.slice(from).flatMap((text, index) => {
    const mark = /^ {0,3}(`{3,}|~{3,})/u.exec(text)?.[1];
    if (mark !== undefined) fence = fence === "" ? mark : text.trim().startsWith(fence) ? "" : fence;
    const match = fence === "" ? /^(#{1,6}) +(.*?)(?: +#+)? *$/u.exec(text) : null;
    return match ? [{ depth: (match[1] as string).length, title: match[2] as string, line: from + index + 1 }] : [];
  });
}

function sectionsIn(lines: readonly string[], headings: readonly Heading[], last: number): readonly OutlineEntry[] {
  const made: OutlineEntry[] = [];
  for (let index = 0; index < headings.length; ) {
    const head = headings[index] as Heading;
    const next = headings.findIndex(({ depth }, at) => at > index && depth <= head.depth);
    const until = next < 0 ? headings.length : next;
    const end = Math.max(head.line, (next < 0 ? last + 1 : (headings[next] as Heading).line) - 1);
    made.push({
      name: head.title === "" ? "untitled" : head.title,
      about: "",
      kind: "section",
      whole: { line: head.line, column: 1, endLine: end, endColumn: lineOf(lines, end) },
      place: { line: head.line, column: 1, endLine: head.line, endColumn: lineOf(lines, head.line) },
      inside: sectionsIn(lines, headings.slice(index + 1, until), end),
    });
    index = until;
  }
  return made;
}

/** Faces, runs, chains, bars and whatever else is written, and the sections of the body. */
export function outlineOfFile({ text, kind }: OpenedFile): readonly OutlineEntry[] {
  const lines = linesOf(text);
  const zone = zoneOf(lines, kind);
  const keys = keysIn(lines, zone.from, zone.to).map((key) => entryOf(lines, key, "", kind));
  const isMarkdown = kind === "build" || kind === "survey";
  return isMarkdown ? [...keys, ...sectionsIn(lines, headingsIn(lines, zone.to), lines.length)] : keys;
}

/** What can be folded: from a line to another. */
export interface Fold {
  readonly from: number;
  readonly to: number;
}

export function foldsIn(file: OpenedFile): readonly Fold[] {
  const lines = linesOf(file.text);
  const zone = zoneOf(lines, file.kind);
  const of = ({ whole, inside }: OutlineEntry): readonly Fold[] => [
    ...(whole.endLine > whole.line ? [{ from: whole.line, to: whole.endLine }] : []),
    ...inside.flatMap(of),
  ];
  const matter = zone.from === 2 && zone.to <= lines.length ? [{ from: 1, to: zone.to }] : [];
  return [...matter, ...outlineOfFile(file).flatMap(of)];
}
