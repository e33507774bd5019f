import { missing, sum, type Value } from "@plumbmark/calc";
import type { Build } from "@plumbmark/core";

export { worstOf } from "@plumbmark/core";

/** What hangs, stands or leans: the faces with what they carry. Missing when any of it is. */
export const weightOf = (build: Build): Value =>
  sum(
    build.faces.map(({ mass }) => mass),
    "mass",
  );

/** What the panels take at most, whether their parts say it in W or in VA. Missing when any of it is. */
export const powerOf = (build: Build): Value =>
  build.valueAt("totals.power-maximum") ?? missing("power", { path: "faces", what: "faces", of: build.label });
