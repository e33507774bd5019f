import { GRAVITY, type Known, type Missing, missing, samePlace, spanLimits, tabled } from "@plumbmark/calc";
import type { Bar } from "./bar.js";

/** The moment and shear a load table lets a span carry. */
export type TableLimits =
  | { readonly known: true; readonly moment: Known<"moment">; readonly shear: Known<"mass"> }
  | Missing;

/** Reads the maker's table for the bar as it hangs; missing, with the reason, where the case is none of the table's. */
export function tableLimitsOf(bar: Bar): TableLimits {
  const { hanging, section } = bar;
  if (!hanging.known) return hanging;
  const because = (path: string, text: string): Missing =>
    missing("moment", { path, what: "what its maker states", because: `${bar.label}: ${text}` });
  const { supports, length } = hanging.beam;
  if (supports.length !== 2)
    return because(`${bar.path}.hangs`, `its maker's load table is for two hangs, and it has ${supports.length}.`);
  const [first, last] = supports as [number, number];
  const rows = section.loadTable;
  const limits = spanLimits(rows, last - first);
  if (rows.length === 0 || !limits)
    return because(`${bar.path}.section`, "its span is longer than any row of its maker's load table.");
  const beyond = Math.max(first, length - last);
  const lets = section.overhang?.value ?? 0;
  if (beyond > lets && !samePlace(beyond, lets))
    return because(
      `${bar.path}.hangs`,
      section.overhang
        ? "it goes farther beyond its hangs than its maker's table lets."
        : "it goes beyond its hangs, and its maker does not say what overhang the table lets.",
    );
  const what = "by the row of the next longer span";
  return {
    known: true,
    moment: tabled(limits.moment * GRAVITY, "moment", "part", `allowable moment ${what}`),
    shear: tabled(limits.shear, "mass", "part", `allowable shear ${what}`),
  };
}
