import type { System } from "@plumbmark/calc";
import { type Data, type DocumentEntry, type RepositoryFiles, readMarkdown, readYaml } from "@plumbmark/core";
import { Names } from "./names.js";

/** One document of the record with its page. */
export interface Published {
  readonly entry: DocumentEntry;
  readonly page: string;
  readonly title: string;
  /** Its Markdown; undefined for a catalogue or stock file. */
  readonly text?: string;
  readonly system: System;
  readonly lifts: boolean;
  readonly mains: boolean;
}

type Tree = Readonly<Record<string, Data>>;

const tree = (data: Data | undefined): Tree | undefined =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Tree) : undefined;

function frontMatter(text: string): Tree | undefined {
  const { frontMatter: place } = readMarkdown(text);
  return place && tree(readYaml(text, place.from, place.to).data);
}

const flown = (data: Tree): boolean =>
  Object.values(tree(data.faces) ?? {}).some((face) => tree(face)?.support === "flown");

/** A document that cannot be read is taken to lift and to use mains: the cautions are never lost by a slip of the pen. */
function dangers(data: Tree | undefined): { readonly lifts: boolean; readonly mains: boolean } {
  if (!data) return { lifts: true, mains: true };
  return {
    lifts: data.rigging !== undefined || flown(data),
    mains: data.power !== undefined || data.faces !== undefined,
  };
}

/** Every document of a record with its page, title and what it is about. */
export function published(
  files: RepositoryFiles,
  entries: readonly DocumentEntry[],
  practice: "us" | "iec",
): readonly Published[] {
  const names = new Names();
  const texts = new Map(files.documents.map(({ path, text }) => [path, text]));
  return entries.map((entry) => {
    const text = texts.get(entry.file);
    const data = text === undefined ? undefined : frontMatter(text);
    const system: System = (data?.practice ?? practice) === "us" ? "us" : "metric";
    const title = entry.title?.trim() || entry.build?.trim() || entry.file;
    const known = text === undefined ? { lifts: false, mains: false } : dangers(data);
    return {
      entry,
      page: `builds/${names.take(entry.build ?? entry.file)}.html`,
      title,
      ...(text === undefined ? {} : { text }),
      system,
      ...known,
    };
  });
}
