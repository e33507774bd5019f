import type { System } from "@plumbmark/calc";
import type { Reader } from "./reader.js";
import { aside } from "./reads.js";

/** Units the author writes in: the customary ones when most lengths and masses are, else metric. */
export function systemOf(reader: Reader, practice: "us" | "iec"): System {
  // Where the system is another, everything is printed otherwise, and nothing that was found before is kept.
  const written = aside(() => [...reader.quantities.values()]).filter(
    (each) => each.kind === "length" || each.kind === "mass",
  );
  const us = written.filter((each) => each.unit?.system === "us").length;
  if (written.length === 0) return practice === "us" ? "us" : "metric";
  return us * 2 >= written.length ? "us" : "metric";
}
