import type { Tree } from "../source/source.js";
import { Trouble } from "../terminal/trouble.js";
import { isMeantAsBuild } from "./build-document.js";
import type { NamedFile } from "./outlines.js";
import { type ReadFiles, readFiles, type Unreadable } from "./read-files.js";

/** More documents than this are not all held in memory. */
const MOST_HELD = 200;
/** How many are read before those that are not held are let go. */
const AT_A_TIME = 50;

/** A document whose text is read again each time it is looked at. What was said of it must be of one and the same text. */
const lazyText = (path: string, id: string, again: NonNullable<Tree["again"]>): NamedFile => ({
  path,
  id,
  get text() {
    const text = again(path, id);
    if (text !== undefined) return text;
    throw new Trouble(`${path} was changed during the inspection.`, "Inspect again when nothing writes to it.");
  },
});

/** Documents among files, in their order; of many, the texts are not held. */
export async function readMany(tree: Tree, paths: readonly string[]): Promise<ReadFiles> {
  const { again } = tree;
  const files: NamedFile[] = [];
  const unreadable: Unreadable[] = [];
  for (let from = 0; from < paths.length; from += AT_A_TIME) {
    const read = await readFiles(tree, paths.slice(from, from + AT_A_TIME));
    unreadable.push(...read.unreadable);
    for (const file of read.files.filter(({ text }) => isMeantAsBuild(text)))
      files.push(again && file.id && paths.length > MOST_HELD ? lazyText(file.path, file.id, again) : file);
  }
  return { files, unreadable };
}
