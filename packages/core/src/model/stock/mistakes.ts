import type { Mistake } from "../../document/mistake.js";
import type { Stock } from "../../repository/stock.js";
import { placeNaming } from "../reading/parts-used.js";
import type { Reader } from "../reading/reader.js";

/** Mistakes of one file of the holdings. */
export interface StockMistakes {
  readonly file: string;
  readonly mistakes: readonly Mistake[];
}

/** Names an entry of the holdings may have by the path of a mistake in it: a name may have points in it. */
function namesAt(path: string): readonly string[] {
  const [, entry = ""] = /^(?:lots|items)\.(.+)$/u.exec(path) ?? [];
  const steps = entry.split(".");
  return entry === "" ? [] : steps.map((_, index) => steps.slice(0, index + 1).join("."));
}

/**
 * Mistakes of the holdings in the lots and items a document names, and in what is of no entry, such as the days out and
 * back; none where it names no lot and no item.
 */
export function stockMistakesIn(reader: Reader, { items, mistakes }: Stock): readonly StockMistakes[] {
  if (mistakes.size === 0) return [];
  const isNamed = (name: string): boolean => placeNaming(reader, name) !== "";
  const hasLot = reader.keys("faces").some((face) => reader.data(`faces.${face}.lot`) !== undefined);
  const takes = hasLot || [...items.keys()].some(isNamed);
  return [...mistakes].flatMap(([file, all]) => {
    const own = all.filter(({ path }) => {
      const names = namesAt(path);
      return names.length === 0 ? takes : names.some(isNamed);
    });
    return own.length === 0 ? [] : [{ file, mistakes: own }];
  });
}
