import { dirname, resolve } from "node:path";
import { type Place, readHouseStandard, type SourceFile } from "@plumbmark/core";
import { fromRoot } from "../source/paths.js";
import type { FileSource } from "../source/source.js";
import { Trouble } from "../terminal/trouble.js";

/** A house standard on the disk with the path it is shown by. */
export interface Edition extends SourceFile {
  readonly absolute: string;
}

/** Where an edition is named, and the words it is named by. */
interface Naming {
  readonly place: string;
  readonly words: string;
}

/** Editions that were looked at on the way, and where the next is named. */
interface Before {
  readonly seen: readonly string[];
  readonly naming: Naming;
}

async function read(
  source: FileSource,
  root: string | undefined,
  absolute: string,
  shown: string,
  naming: Naming | undefined,
): Promise<Edition> {
  const found = await source.text(absolute, root);
  if (!("problem" in found)) return { absolute, path: shown, text: found.text };
  const what = naming
    ? `${naming.place}: \`replaces\` names \`${naming.words}\`, which cannot be read.`
    : `The house standard ${shown} cannot be read.`;
  throw new Trouble(`${what} ${found.problem.says}`, found.problem.mend);
}

const namingIn = (shown: string, { line, column }: Pick<Place, "line" | "column">, words: string): Naming => ({
  place: `${shown}:${line}:${column}`,
  words,
});

/**
 * The edition of a house standard that is in force on a day: the file itself or, until its first day, the one it
 * replaces. Trouble when an edition cannot be read, lies outside the root if one is given, or two replace one another.
 */
export async function editionOn(
  source: FileSource,
  root: string | undefined,
  absolute: string,
  shown: string,
  today: string,
  from?: Before,
): Promise<Edition> {
  const edition = await read(source, root, absolute, shown, from?.naming);
  const { standard, mistakes, placed } = readHouseStandard(edition);
  const { replaces, "in-force": first } = standard;
  if (mistakes.length > 0 || replaces === undefined || first === undefined || first <= today) return edition;
  const before = resolve(dirname(absolute), replaces);
  const naming = namingIn(shown, placed.places.get("replaces") ?? { line: 1, column: 1 }, replaces);
  const seen = [...(from?.seen ?? []), absolute];
  if (seen.includes(before))
    throw new Trouble(
      `${naming.place}: the house standard ${shown} replaces ${replaces}, which leads back to it.`,
      "Let each edition name the one before it.",
    );
  const below = fromRoot(dirname(absolute), before);
  return editionOn(source, root, before, shown.replace(/[^/]*$/u, below), today, { seen, naming });
}
