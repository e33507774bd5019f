import type { Place } from "../document/place.js";
import { frontMatterOf } from "../document/yaml/front-matter.js";
import { type Placed, readYaml } from "../document/yaml/yaml.js";

/** What is written of an approval. */
export interface ApprovalText {
  readonly by: string;
  /** A day, `2027-02-10`. */
  readonly on: string;
  readonly code: string;
}

/** A name that YAML reads as the text it is, without quotes. */
const PLAIN = /^\p{L}[\p{L}\p{M}.'’ -]*$/u;

const yamlText = (text: string): string => (PLAIN.test(text) ? text : JSON.stringify(text));

const inBraces = ({ by, on, code }: ApprovalText): string => `{by: ${yamlText(by)}, on: ${on}, code: ${code}}`;

interface Lines {
  /** Offset of a place; lines and columns from 1. */
  readonly at: (line: number, column: number) => number;
}

function linesOf(text: string): Lines {
  const starts = [0];
  for (const { index, 0: end } of text.matchAll(/\r\n|\n|\r/gu)) starts.push(index + end.length);
  return { at: (line, column) => (starts[line - 1] ?? text.length) + column - 1 };
}

const put = (text: string, from: number, to: number, by: string): string => text.slice(0, from) + by + text.slice(to);

/** The keys that are there already get other values; from the last, so that places stay true. */
function replaced(text: string, places: Placed["places"], approval: ApprovalText): string | undefined {
  const { at } = linesOf(text);
  const found = (["by", "on", "code"] as const).flatMap((key) => {
    const place = places.get(`approved.${key}`);
    return place ? [{ place, value: key === "by" ? yamlText(approval.by) : approval[key] }] : [];
  });
  if (found.length < 3) return undefined;
  const from = ({ place }: { place: Place }): number => at(place.line, place.column);
  return found
    .sort((one, other) => from(other) - from(one))
    .reduce(
      (made, { place, value }) => put(made, at(place.line, place.column), at(place.endLine, place.endColumn), value),
      text,
    );
}

/** The end of the line an offset is in, with what ends it. */
function endOfLine(text: string, offset: number): { readonly at: number; readonly mark: string } {
  const found = /\r\n|\n|\r/gu;
  found.lastIndex = offset;
  const end = found.exec(text);
  return end ? { at: end.index + end[0].length, mark: end[0] } : { at: text.length, mark: "\n" };
}

/** A new entry below the one that says who prepared it, or what there is. */
function inserted(text: string, { keys, places, data }: Placed, approval: ApprovalText): string | undefined {
  const { at } = linesOf(text);
  const all = Object.keys((data ?? {}) as object);
  const after =
    ["approved-by", "prepared-by", "practice", "status", "title"].find((key) => keys.has(key)) ?? all.at(-1);
  const key = after === undefined ? undefined : keys.get(after);
  const value = after === undefined ? undefined : places.get(after);
  if (!key || !value) return undefined;
  const end = at(value.endLine, value.endColumn);
  if (key.column !== 1) return put(text, end, end, `, approved: ${inBraces(approval)}`);
  // The text of a block scalar ends where the next line begins.
  const line = endOfLine(text, value.endColumn === 1 ? end - 1 : end);
  return put(text, line.at, line.at, `approved: ${inBraces(approval)}${line.mark}`);
}

/** An approval that is there and lacks a key, or is no group of keys, is written anew. */
function rewritten(text: string, { keys, places }: Placed, approval: ApprovalText): string | undefined {
  const key = keys.get("approved");
  const value = places.get("approved");
  if (!key || !value) return undefined;
  const { at } = linesOf(text);
  const from = at(key.line, key.column);
  const until = at(value.endLine, value.endColumn);
  const kept = /\s*$/u.exec(text.slice(from, until))?.[0] ?? "";
  return put(text, from, until - kept.length, `approved: ${inBraces(approval)}`);
}

/**
 * The text of a document with an approval in it, every other byte as it was. Undefined where its front matter has no
 * place for one: it cannot be read, or has no keys.
 */
export function withApproval(text: string, approval: ApprovalText): string | undefined {
  const front = frontMatterOf(text);
  if (!front) return undefined;
  const placed = readYaml(text, front.from, front.to);
  if (placed.mistakes.length > 0) return undefined;
  if (!placed.keys.has("approved")) return inserted(text, placed, approval);
  return replaced(text, placed.places, approval) ?? rewritten(text, placed, approval);
}
