import { readPatterns } from "../source/patterns.js";
import type { HouseStandardFile } from "./house-standard.js";

/** A pattern may have a thousand characters. */
const LONGEST = 60;

/** Files that were found by the patterns of a house standard. */
export type Matched = Readonly<Record<"documents" | "parts", readonly string[]>>;

/**
 * Patterns a house standard writes that match none of the files found by them, each in a line with its place. A slip in
 * one would otherwise show as hundreds of parts that are not in the catalogue.
 */
export function unmatchedIn({ file, settings, at }: HouseStandardFile, found: Matched): readonly string[] {
  return (["documents", "parts"] as const).flatMap((key) =>
    settings[key].flatMap((pattern, index) => {
      const place = at(`${key}.${index + 1}`);
      // What is left out need not be there, and what goes without saying is written nowhere.
      if (!file || !place || pattern.startsWith("!") || found[key].some(readPatterns([pattern]).fits)) return [];
      return [
        `${file.path}:${place.line}:${place.column}: No file matches \`${pattern.slice(0, LONGEST)}\`, one of its \`${key}\`.`,
      ];
    }),
  );
}
