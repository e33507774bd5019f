import { isAlias, isMap, isScalar, isSeq, type Node, parseDocument } from "yaml";
import type { Mistake } from "./mistake.js";
import { type Place, placer, START } from "./place.js";

/** Plain data read from YAML: objects have no prototype, so no key of a file can reach one. */
export type Data = null | boolean | number | string | readonly Data[] | { readonly [key: string]: Data };

export interface Placed {
  readonly data: Data;
  /** Place of the value at a dotted path; list items count from 1. */
  readonly places: ReadonlyMap<string, Place>;
  /** Place of the key at a dotted path. */
  readonly keys: ReadonlyMap<string, Place>;
  readonly mistakes: readonly Mistake[];
}

export const join = (path: string, key: string | number): string => (path === "" ? String(key) : `${path}.${key}`);

/** Files above this size are not build paperwork; parsing them would only keep the author waiting. */
export const LARGEST_YAML = 1_000_000;

const DEEPEST = 40;
const TOO_DEEP = `The data is nested more than ${DEEPEST} deep.`;

/** What the parser says for programmers, for authors. */
const SAID: Readonly<Record<string, string>> = {
  RESOURCE_EXHAUSTION: TOO_DEEP,
  MULTIPLE_DOCS: "A second YAML document begins here, and one is read.",
};

/** Tags of what is data anyway: YAML 1.2.2, 10.1 and 10.2. */
const PLAIN = /^tag:yaml\.org,2002:(?:str|int|float|bool|null|map|seq)$/u;

/** A lone carriage return ends a line (YAML 1.2.2, 5.4); the parser takes only the other ends for one. */
const withLineFeeds = (text: string): string => text.replace(/\r(?!\n)/gu, "\n");

/**
 * Reads YAML 1.2 and keeps the place of every key and value.
 * `text` is the whole file; the YAML stands from `from` to `to` in it.
 */
export function readYaml(text: string, from = 0, to = text.length): Placed {
  const at = placer(text);
  const places = new Map<string, Place>();
  const keys = new Map<string, Place>();
  const mistakes: Mistake[] = [];
  const complain = (place: Place, says: string, mend: string, path = ""): void => {
    // One slip can break two rules of the grammar at once; it is told once.
    if (mistakes.some((told) => told.says === says && told.place.line === place.line)) return;
    mistakes.push({ rule: "document.front-matter", path, place, says, mend });
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
  // What is left open beyond the depth where reading was given up is no mistake of its own.
  const deep = parsed.errors.filter(({ code }) => code === "RESOURCE_EXHAUSTION");
  for (const error of deep.length > 0 ? deep : [...parsed.errors, ...parsed.warnings]) {
    complain(
      at(from + error.pos[0], from + error.pos[1]),
      SAID[error.code] ?? `The YAML cannot be read here: ${error.message.replace(/\s+/gu, " ")}.`.replace("..", "."),
      "Mend the YAML: keys end with a colon and a space, nested lines are indented by two spaces, texts with `: ` or `#` are quoted.",
    );
  }
  const place = (node: Node): Place => at(from + (node.range?.[0] ?? 0), from + (node.range?.[1] ?? 0));
  const walk = (node: unknown, path: string, depth: number): Data => {
    if (node === null || node === undefined) return null;
    places.set(path, place(node as Node));
    if (isAlias(node) || depth > DEEPEST) {
      complain(
        place(node as Node),
        isAlias(node) ? "An alias (`*name`) stands here." : TOO_DEEP,
        "Write the value out.",
        path,
      );
      return null;
    }
    const { tag } = node as Node & { readonly tag?: string };
    if (tag !== undefined && !PLAIN.test(tag)) {
      const mend = "Write a text, a number, a list or a group of keys, without a tag.";
      complain(
        place(node as Node),
        `The tag \`${tag.replace(/^tag:yaml\.org,2002:/u, "!!")}\` stands here.`,
        mend,
        path,
      );
      return null;
    }
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
    for (const { key, value } of items) {
      const name = isScalar(key) ? String(key.value) : String(key);
      const inner = join(path, name);
      keys.set(inner, place(key));
      made[name] = walk(value, inner, depth + 1);
      if (!places.has(inner)) places.set(inner, place(key));
    }
    return made;
  };
  return {
    data: mistakes.length > 0 && parsed.errors.length > 0 ? null : walk(parsed.contents, "", 0),
    places,
    keys,
    mistakes,
  };
}

/** `#8 screws` of `12 #8 screws`: a number sign that was meant to be read. A comment has a blank after its #. */
const cutOff = (behind: string): string | undefined =>
  /^[ \t]+(#[^\s#][^\r\n]*)/u.exec(behind)?.[1]?.trim().slice(0, 60);

function scalar(value: unknown): Data {
  if (typeof value === "bigint") return String(value);
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean" ? value : null;
}
