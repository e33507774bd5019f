import { isAlias, isMap, isScalar, isSeq, type Node, parseDocument } from "yaml";
import type { Mistake } from "../mistake.js";
import { type Place, placer, START } from "../place.js";
import { mergeKeys } from "./merge-keys.js";
import { DEEPEST, parserWords, TOO_DEEP } from "./parser-words.js";
import { joinedOf } from "./split-value.js";
import { slipIn } from "./yaml-slips.js";

/** Plain data read from YAML: objects have no prototype, so no key of a file can reach one. */
export type Data = null | boolean | number | string | readonly Data[] | { readonly [key: string]: Data };

export interface Placed {
  readonly data: Data;
  /** Place of the value at a dotted path; list items count from 1. */
  readonly places: ReadonlyMap<string, Place>;
  /** Place of the key at a dotted path. */
  readonly keys: ReadonlyMap<string, Place>;
  readonly mistakes: readonly Mistake[];
  /** Paths of what an entry copies from another: what is wrong there is told where it is written. */
  readonly copied?: ReadonlySet<string>;
  /** Paths of groups that others copy by a merge key. */
  readonly models?: ReadonlySet<string>;
  /** Whether values are laid over what is written that an approval of it is not of. */
  readonly laidOver?: boolean;
}

export const join = (path: string, key: string | number): string => (path === "" ? String(key) : `${path}.${key}`);

/** Files above this size are not build paperwork; parsing them would only keep the author waiting. */
export const LARGEST_YAML = 1_000_000;

/** So many aliases of a text are told with what they stand for. */
const MOST_RESOLVED = 20;

/** Tags of what is data anyway: YAML 1.2.2, 10.1 and 10.2. */
const PLAIN = /^tag:yaml\.org,2002:(?:str|int|float|bool|null|map|seq)$/u;

/** A tag at the end of what stands before its value. */
const TAG_BEFORE = /(?<![^\s,[{])!\S*\s*$/u;

/** A lone carriage return ends a line (YAML 1.2.2, 5.4); the parser takes only the other ends for one. */
const withLineFeeds = (text: string): string => text.replace(/\r(?!\n)/gu, "\n");

/**
 * Reads YAML 1.2 and keeps the place of every key and value.
 * `text` is the whole file; the YAML stands from `from` to `to` in it.
 * @param at turns offsets of the text into places
 */
export function readYaml(text: string, from = 0, to = text.length, at = placer(text)): Placed {
  const places = new Map<string, Place>();
  const keys = new Map<string, Place>();
  const mistakes: Mistake[] = [];
  const complain = (
    place: Place,
    says: string,
    mend: string,
    path = "",
    edit?: Mistake["edit"],
    standIn?: Mistake["standIn"],
  ): void => {
    // One slip can break two rules of the grammar at once; it is told once.
    if (mistakes.some((told) => told.says === says && told.place.line === place.line)) return;
    const meant = { ...(edit ? { edit } : {}), ...(standIn ? { standIn } : {}) };
    mistakes.push({ rule: "document.front-matter", path, place, says, mend, ...meant });
  };
  if (to - from > LARGEST_YAML) {
    complain(
      START,
      `The YAML is ${to - from} characters long; at most ${LARGEST_YAML} are read.`,
      "Split the file, or take out what is not data.",
    );
    return { data: null, places, keys, mistakes };
  }
  const parsed = parseDocument(withLineFeeds(text.slice(from, to)), {
    version: "1.2",
    uniqueKeys: true,
    prettyErrors: false,
    stringKeys: true,
  });
  // What is left open beyond the depth where reading was given up is no mistake of its own, and neither is what the
  // parser stumbles over behind the first slip. A key that stands twice leaves the rest as it is.
  const deep = parsed.errors.filter(({ code }) => code === "RESOURCE_EXHAUSTION");
  const fatal = parsed.errors.filter(({ code }) => code !== "DUPLICATE_KEY");
  const [first] = deep.length > 0 ? deep : fatal;
  const slip = first && !deep.includes(first) ? slipIn(text, from, to) : undefined;
  if (slip) {
    const { edit: change, sure = false } = slip;
    const edit = change && { place: at(change.from, change.to), text: change.text, sure };
    complain(at(slip.from, slip.to), slip.says, slip.mend, "", edit);
  }
  // A tag that nobody knows is told with the value it stands before.
  else
    for (const error of first ? [first] : parsed.warnings.filter(({ code }) => code !== "TAG_RESOLVE_FAILED")) {
      const [says, mend] = parserWords(error.code);
      complain(at(from + error.pos[0], from + error.pos[1]), says, mend);
    }
  const place = (node: Node): Place => at(from + (node.range?.[0] ?? 0), from + (node.range?.[1] ?? 0));
  const merged = mergeKeys(parsed);
  for (const { key, value, path, mend, written, isFlow } of first ? [] : merged.found) {
    const [start, end] = [from + (key.range?.[0] ?? 0), from + (value.range?.[1] ?? 0)];
    const here = at(start, end);
    const between = isFlow ? ", " : `\n${" ".repeat(here.column - 1)}`;
    const says = `\`${text.slice(start, end).slice(0, 60)}\` copies the keys of another group; here a group has its keys itself.`;
    complain(here, says, mend, path, written && { place: here, text: written.join(between) });
  }
  const copies: string[] = [];
  const models = new Set<string>();
  const walk = (node: unknown, path: string, depth: number): Data => {
    if (node === null || node === undefined) return null;
    places.set(path, place(node as Node));
    if (isAlias(node)) {
      // To find what it stands for the text is gone through: not for thousands of them.
      const of = mistakes.length < MOST_RESOLVED ? node.resolve(parsed) : undefined;
      const value = isScalar(of) ? String(of.value) : undefined;
      const mend = value === undefined ? "Write the value out." : `Write the value out: \`${value.slice(0, 60)}\`.`;
      const [here, says] = [place(node), "An alias (`*name`) stands here."];
      if (value === undefined) complain(here, says, mend, path, undefined, { place: here, text: "1" });
      else complain(here, says, mend, path, { place: here, text: value });
      return null;
    }
    if (depth > DEEPEST) {
      complain(place(node as Node), TOO_DEEP, "Write the value out.", path);
      return null;
    }
    const { tag } = node as Node & { readonly tag?: string };
    if (tag !== undefined && !PLAIN.test(tag)) {
      const name = tag.replace(/^tag:yaml\.org,2002:/u, "!!");
      const [start = 0, end = 0] = (node as Node).range ?? [];
      const before = TAG_BEFORE.exec(text.slice(from, from + start))?.index;
      const value = text.slice(from + start, from + end).trim();
      const whole = at(from + (before ?? start), from + end);
      const edit = before === undefined || value === "" ? undefined : { place: whole, text: value };
      complain(
        whole,
        `The tag \`${name}\` stands here.`,
        value === "" || value.includes("\n")
          ? "Write a text, a number, a list or a group of keys, without a tag."
          : `Write \`${value.slice(0, 60)}\`, without a tag.`,
        path,
        edit,
      );
      return null;
    }
    if (isMap(node) && merged.models.has(node)) models.add(path);
    if (isMap(node)) return walkMap(node.items as never, path, depth);
    if (isSeq(node)) return node.items.map((item, index) => walk(item, join(path, index + 1), depth + 1));
    if (isScalar(node)) {
      const cut = cutOff(text.slice(from + (node.range?.[1] ?? 0), to));
      if (cut !== undefined)
        complain(
          place(node),
          `After \`${String(node.value)}\` stands \`${cut}\`, which YAML takes for a comment: it is not read.`,
          "Put the whole text in quotes, or a blank after the # of a comment.",
          path,
        );
      return scalar(node.value);
    }
    return null;
  };
  const walkMap = (items: readonly { key: Node; value: unknown }[], path: string, depth: number): Data => {
    const made: Record<string, Data> = Object.create(null) as Record<string, Data>;
    const joined = joinedOf(items, text.slice(from, to));
    const copied = merged.copied.get(items);
    for (const { key, value } of items) {
      const name = isScalar(key) ? String(key.value) : String(key);
      const inner = join(path, name);
      const split = joined.get(key);
      if (split === "rest") continue;
      if (split) {
        keys.set(inner, place(key));
        const here = at(from + split.from, from + split.to);
        places.set(inner, here);
        complain(here, split.says, split.mend, inner, { place: here, text: split.better, sure: split.sure });
        made[name] = null;
        continue;
      }
      if (Object.hasOwn(made, name)) {
        const first = keys.get(inner);
        const before = first ? ` in line ${first.line}` : "";
        complain(place(key), `The key \`${name}\` stands twice: here and${before}.`, "Keep one of them.", inner);
        continue;
      }
      keys.set(inner, place(key));
      if (copied?.has(key)) copies.push(inner);
      made[name] = walk(value, inner, depth + 1);
      if (!places.has(inner)) places.set(inner, place(key));
      const cut = made[name] === null ? cutBehind(text.slice(from + (key.range?.[1] ?? 0), to)) : undefined;
      if (cut !== undefined)
        complain(
          place(key),
          `Behind \`${name}:\` stands \`${cut}\`, which YAML takes for a comment: it is not read.`,
          `Write the value without the sign; a text stands in quotes: \`"${cut}"\`.`,
          inner,
        );
    }
    return made;
  };
  const data = first ? null : walk(parsed.contents, "", 0);
  if (copies.length === 0) return { data, places, keys, mistakes };
  const isCopied = (path: string): boolean => copies.some((each) => path === each || path.startsWith(`${each}.`));
  return { data, places, keys, mistakes, models, copied: new Set([...places.keys()].filter(isCopied)) };
}

/** `#8 screws` of `12 #8 screws`: a number sign that was meant to be read. A comment has a blank after its #. */
const cutOff = (behind: string): string | undefined =>
  /^[ \t]+(#[^\s#][^\r\n]*)/u.exec(behind)?.[1]?.trim().slice(0, 60);

/** `#20` of `breaker: #20`, seen from the end of the key. */
const cutBehind = (behind: string): string | undefined =>
  /^["']?[ \t]*:[ \t]+(#[^\s#][^\r\n]*)/u.exec(behind)?.[1]?.trim().slice(0, 60);

function scalar(value: unknown): Data {
  if (typeof value === "bigint") return String(value);
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean" ? value : null;
}
