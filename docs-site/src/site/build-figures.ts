import { missing, type Value } from "@plumbmark/calc";
import type { Build } from "@plumbmark/core";

export { worstOf } from "@plumbmark/core";

/** All that the house bears: the value that is quoted as `totals.weight`. Missing when any of it is. */
export const weightOf = (build: Build): Value =>
  build.valueAt("totals.weight") ?? missing("mass", { path: "faces", what: "faces", of: build.label });

/** What the panels take at most, whether their parts say it in W or in VA. Missing when any of it is. */
export const powerOf = (build: Build): Value =>
  build.valueAt("totals.power-maximum") ?? missing("power", { path: "faces", what: "faces", of: build.label });
