import { resolve } from "node:path";
import type { FileSource, Tree } from "../source/source.js";
import type { HouseStandardFile } from "./house-standard.js";
import { type ReadFiles, readFiles, type Unreadable } from "./read-files.js";

const USUAL = "stock.yaml";

/** A pattern may have a thousand characters. */
const LONGEST = 60;

/** A path is taken as it is written where there is a file of that name, whatever signs are in it. */
const isPattern = (written: string): boolean => /[*?[\]{}]|^!/u.test(written);

/** What one path or pattern of the house standard names. */
interface Named {
  readonly written: string;
  /** Where it stands there; undefined where it goes without saying. */
  readonly at: ReturnType<HouseStandardFile["at"]>;
  /** Whether it names a file itself. */
  readonly isFile: boolean;
}

/**
 * Paths that patterns find; a pattern that finds none is told: without its holdings nothing in them would be short.
 */
async function matched(
  tree: Tree,
  patterns: readonly Named[],
): Promise<{ readonly paths: readonly string[]; readonly empty: readonly Named[] }> {
  const without = patterns.filter(({ written }) => written.startsWith("!")).map(({ written }) => written);
  const wanted = patterns.filter(({ written }) => !written.startsWith("!"));
  const found = await Promise.all(wanted.map(({ written }) => tree.find([written, ...without])));
  return { paths: found.flat(), empty: wanted.filter((_, index) => found[index]?.length === 0) };
}

/**
 * The holdings, all files of them, by path; only the one that goes without saying may be missing. What is no file of the
 * repository is told where the house standard names it, for the file itself has no line to show.
 */
export async function readStockFiles(
  source: FileSource,
  root: string,
  { file, at, settings: { stock = [] } }: HouseStandardFile,
): Promise<ReadFiles> {
  const tree = source.treeAt(root);
  const named = await Promise.all(
    [stock].flat().map(async (written, index): Promise<Named & { readonly isThere: boolean }> => {
      const kind = written.startsWith("!") ? undefined : await source.kind(resolve(root, written));
      const place = at(typeof stock === "string" ? "stock" : `stock.${index + 1}`);
      return { written, at: place, isFile: kind === "file", isThere: kind !== undefined };
    }),
  );
  const asked = named.filter(({ written, isThere }) => isThere || written !== USUAL || Array.isArray(stock));
  const [patterns, plain] = [
    asked.filter(({ written, isThere }) => !isThere && isPattern(written)),
    asked.filter(({ written, isThere }) => isThere || !isPattern(written)),
  ];
  const { paths, empty } = await matched(tree, patterns);
  const all = [...new Set([...plain.map(({ written }) => written), ...paths])].sort();
  const read = await readFiles(tree, all);
  const told = (each: Unreadable): Unreadable => {
    const from = plain.find(({ written }) => written === each.path);
    if (!file || !from?.at || from.isFile) return each;
    return { path: file.path, says: `\`stock\` names \`${each.path}\`. ${each.says}`, mend: each.mend, at: from.at };
  };
  const unmatched = empty.map(
    ({ written, at: place }): Unreadable => ({
      path: file?.path ?? written,
      says: `No file matches \`${written.slice(0, LONGEST)}\`, one of its \`stock\`.`,
      mend: "Check its name, or leave it out.",
      ...(place ? { at: place } : {}),
    }),
  );
  return { files: read.files, unreadable: [...read.unreadable.map(told), ...unmatched] };
}
