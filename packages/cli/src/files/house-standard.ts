import { dirname } from "node:path";
import { type HouseStandardSettings, readHouseStandard, type SourceFile } from "@plumbmark/core";
import { Trouble } from "../trouble.js";
import type { Origin } from "./tree.js";

export interface HouseStandardFile {
  readonly file?: SourceFile;
  readonly settings: HouseStandardSettings;
  /** The folder its plugins are named from. */
  readonly folder?: string;
}

/**
 * Reads a house standard, or gives the defaults when there is none.
 * A house standard with a mistake is trouble: nobody can tell what it would have asked for.
 */
export async function openStandard(
  origin: Origin,
  path: string | undefined,
  shown: string,
): Promise<HouseStandardFile> {
  if (path === undefined) return { settings: readHouseStandard(undefined).standard };
  const read = await origin.text(path);
  if ("problem" in read)
    throw new Trouble(`The house standard ${shown} cannot be read. ${read.problem.says}`, read.problem.mend);
  const file = { path: shown, text: read.text };
  const { standard, mistakes } = readHouseStandard(file);
  if (mistakes.length > 0) {
    const lines = mistakes.map(
      ({ place, says, mend }) => `  line ${place.line}, column ${place.column}: ${says} ${mend}`,
    );
    throw new Trouble(
      `The house standard ${shown} cannot be used.\n${lines.join("\n")}`,
      "Mend it, then inspect again.",
    );
  }
  return { file, settings: standard, folder: dirname(path) };
}
