import { dirname, resolve } from "node:path";
import { readHouseStandard, type SourceFile } from "@plumbmark/core";
import { Trouble } from "../trouble.js";
import { fromRoot } from "./find-files.js";
import type { Origin } from "./tree.js";

/** A house standard on the disk with the path it is shown by. */
export interface Edition extends SourceFile {
  readonly absolute: string;
}

async function read(origin: Origin, root: string | undefined, absolute: string, shown: string): Promise<Edition> {
  const found = await origin.text(absolute, root);
  if ("problem" in found)
    throw new Trouble(`The house standard ${shown} cannot be read. ${found.problem.says}`, found.problem.mend);
  return { absolute, path: shown, text: found.text };
}

/**
 * The edition of a house standard that is in force on a day: the file itself or, until its first day, the one it
 * replaces. Trouble when an edition cannot be read, lies outside the root if one is given, or two replace one another.
 */
export async function editionOn(
  origin: Origin,
  root: string | undefined,
  absolute: string,
  shown: string,
  today: string,
  seen: readonly string[] = [],
): Promise<Edition> {
  const edition = await read(origin, root, absolute, shown);
  const { standard, mistakes } = readHouseStandard(edition);
  const { replaces, "in-force": first } = standard;
  if (mistakes.length > 0 || replaces === undefined || first === undefined || first <= today) return edition;
  const before = resolve(dirname(absolute), replaces);
  if ([...seen, absolute].includes(before))
    throw new Trouble(
      `The house standard ${shown} replaces ${replaces}, which leads back to it.`,
      "Let each edition name the one before it.",
    );
  const below = fromRoot(dirname(absolute), before);
  return editionOn(origin, root, before, shown.replace(/[^/]*$/u, below), today, [...seen, absolute]);
}
