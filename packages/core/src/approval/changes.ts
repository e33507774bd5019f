import { shown } from "../document/shown.js";
import { type Data, join } from "../document/yaml/yaml.js";
import type { Approvable } from "./approvable.js";
import { canonical, contentOf } from "./content.js";
import { withoutTicks } from "./document-text.js";

/** Above this a list of changes is no help: the versions have to be read side by side. */
const MOST = 12;

const isGroup = (data: unknown): data is Readonly<Record<string, Data>> =>
  typeof data === "object" && data !== null && !Array.isArray(data);

/** Paths at which two pieces of data differ, as deep as they can be told. */
function* differing(was: Data | undefined, is: Data | undefined, path: string): Iterable<string> {
  if (canonical(was) === canonical(is)) return;
  if (isGroup(was) && isGroup(is)) {
    for (const key of new Set([...Object.keys(was), ...Object.keys(is)]))
      yield* differing(was[key], is[key], join(path, key));
    return;
  }
  if (Array.isArray(was) && Array.isArray(is) && was.length === is.length) {
    for (const [index, each] of was.entries()) yield* differing(each, is[index] as Data, join(path, index + 1));
    return;
  }
  yield `\`${path}\` was ${shown(was)} and is ${shown(is)}`;
}

/** The front matter as an approval is of it. */
function frontOf({ reader }: Approvable): Data {
  if (!isGroup(reader.placed.data)) return null;
  const { approved: _, status, ...rest } = reader.placed.data;
  return { ...rest, status: status === "as-built" ? "for-build" : (status ?? null) };
}

function* entryChanges(was: Approvable, is: Approvable): Iterable<string> {
  const [before, now] = [contentOf(was).entries, contentOf(is).entries];
  for (const name of new Set([...before.keys(), ...now.keys()])) {
    if (!before.has(name)) yield `${name} is new`;
    else if (!now.has(name)) yield `${name} is no longer there`;
    else
      for (const change of differing(before.get(name), now.get(name), ""))
        yield `${name}: ${change.replace("`` ", "")}`;
  }
}

/** What stands below each heading, up to the next one of any depth. */
function sectionTexts({ sections, markdown }: Approvable): ReadonlyMap<string, string> {
  const lines = withoutTicks(markdown.text);
  const texts = new Map<string, string>();
  for (const [index, { title, place }] of sections.entries()) {
    const own = lines.slice(place.endLine, (sections[index + 1]?.place.line ?? lines.length + 1) - 1).join("\n");
    texts.set(title, [texts.get(title), own].filter((text) => text !== undefined).join("\n"));
  }
  return texts;
}

function* sectionChanges(was: Approvable, is: Approvable): Iterable<string> {
  const [before, now] = [sectionTexts(was), sectionTexts(is)];
  for (const title of new Set([...before.keys(), ...now.keys()]))
    if (!before.has(title)) yield `the section “${title}” is new`;
    else if (!now.has(title)) yield `the section “${title}” is no longer there`;
    else if (before.get(title) !== now.get(title)) yield `the section “${title}” reads otherwise`;
}

/** What is another between two versions of a document, each as a phrase; the most telling first, and not more than help. */
export function changesBetween(was: Approvable, is: Approvable): readonly string[] {
  const found = [...differing(frontOf(was), frontOf(is), ""), ...entryChanges(was, is), ...sectionChanges(was, is)];
  if (found.length === 0 && contentOf(was).text !== contentOf(is).text)
    return ["the text reads otherwise, in a comment, a blank or above the first heading"];
  return found.length > MOST ? [...found.slice(0, MOST), `and ${found.length - MOST} more`] : found;
}
