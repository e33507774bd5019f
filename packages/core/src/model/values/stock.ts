import { shareOf } from "@plumbmark/calc";
import type { Design } from "../design.js";
import { under, type ValueEntry } from "./entries.js";

/** Of every lot what is promised on the fullest day of the build, and what there is. */
export const stockValues = (build: Design): readonly ValueEntry[] =>
  build.lotUses.flatMap((use) => {
    const { name, promised, inStock } = use;
    return under(`stock.${name}`, {
      promised: () => promised,
      wanted: () => (use.isWanted ? use.countOf(use.wanted) : undefined),
      "in-stock": () => inStock,
      share: () => shareOf(promised, inStock),
    });
  });
