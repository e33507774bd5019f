import type { Data } from "../document/yaml/yaml.js";
import { once } from "../model/reading/once.js";
import type { Approvable } from "./approvable.js";
import { codeOf } from "./code.js";
import { documentText } from "./document-text.js";
import { entriesOfContent } from "./entries.js";

/** Data as text, the same for every order of keys. */
export function canonical(data: Data | undefined): string {
  if (Array.isArray(data)) return `[${data.map(canonical).join(",")}]`;
  if (typeof data !== "object" || data === null) return JSON.stringify(data ?? null);
  const entries = Object.entries(data as Readonly<Record<string, Data>>).sort(([one], [other]) =>
    one < other ? -1 : 1,
  );
  return `{${entries.map(([key, value]) => `${JSON.stringify(key)}:${canonical(value)}`).join(",")}}`;
}

/** What an approval is of. */
export interface ApprovedContent {
  /** The document without its approval. */
  readonly text: string;
  /** What it rests on besides itself, by what it is called. */
  readonly entries: ReadonlyMap<string, Data>;
}

export const contentOf = (build: Approvable): ApprovedContent => ({
  text: documentText(build.markdown.text, build.reader.placed),
  entries: once(build, "entries of its content", () => entriesOfContent(build)),
});

const texts = new WeakMap<object, string>();

/** Data as a text, once: parts and surveys are the same for every document and after every edit of one. */
function textOf(data: Data): string {
  if (typeof data !== "object" || data === null) return canonical(data);
  const text = texts.get(data) ?? canonical(data);
  texts.set(data, text);
  return text;
}

/** Entries as they go into a code, in the order of their names. */
const namedIn = (entries: ApprovedContent["entries"]): readonly (readonly [string, string])[] =>
  once(entries, "named", () =>
    [...entries].sort(([one], [other]) => (one < other ? -1 : 1)).map(([name, data]) => [name, textOf(data)] as const),
  );

/** The code of a content. The first word changes when what goes into it does. */
export const codeOfContent = ({ text, entries }: ApprovedContent): string =>
  codeOf(JSON.stringify(["content 1", text, ...namedIn(entries)]));
