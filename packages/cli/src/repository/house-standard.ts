import { dirname } from "node:path";
import { type HouseStandardSettings, type Place, readHouseStandard, type SourceFile } from "@plumbmark/core";
import type { FileSource } from "../source/source.js";
import { Trouble } from "../terminal/trouble.js";
import { editionOn } from "./editions.js";

export interface HouseStandardFile {
  readonly file?: SourceFile;
  readonly settings: HouseStandardSettings;
  /** Where it says something, by path (`parts.2`); undefined for what goes without saying. */
  readonly at: (path: string) => Pick<Place, "line" | "column"> | undefined;
  /** The folder its plugins are named from. */
  readonly folder?: string;
}

/**
 * Reads a house standard, or gives the defaults when there is none.
 * @param root what its editions may not lie outside of; undefined for one that was named on the command line
 * A house standard with a mistake is trouble: nobody can tell what it would have asked for.
 */
export async function openStandard(
  source: FileSource,
  root: string | undefined,
  path: string | undefined,
  shown: string,
  today: string,
): Promise<HouseStandardFile> {
  if (path === undefined) return { settings: readHouseStandard(undefined).standard, at: () => undefined };
  const { absolute, text, path: found } = await editionOn(source, root, path, shown, today);
  const file = { path: found, text };
  const { standard, mistakes, placed } = readHouseStandard(file);
  if (mistakes.length > 0) {
    const lines = mistakes.map(
      ({ place, says, mend }) => `  line ${place.line}, column ${place.column}: ${says} ${mend}`,
    );
    throw new Trouble(
      `The house standard ${found} cannot be used.\n${lines.join("\n")}`,
      "Mend it, then inspect again.",
    );
  }
  return { file, settings: standard, at: (path) => placed.places.get(path), folder: dirname(absolute) };
}
