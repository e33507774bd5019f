import { shareOf } from "@plumbmark/calc";
import type { Design } from "../design.js";
import { under, type ValueEntry } from "./entries.js";

/** Of every lot what is promised on the fullest day of the build, and what there is. */
export const stockValues = (build: Design): readonly ValueEntry[] =>
  build.lotUses.flatMap(({ name, promised, inStock }) =>
    under(`stock.${name}`, {
      promised: () => promised,
      "in-stock": () => inStock,
      share: () => shareOf(promised, inStock),
    }),
  );
