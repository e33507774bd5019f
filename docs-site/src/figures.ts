import { sum, type Value } from "@plumbmark/calc";
import type { Build } from "@plumbmark/core";

export { worstOf } from "@plumbmark/core";

/** What hangs, stands or leans: the faces with what they carry. Missing when any of it is. */
export const weightOf = (build: Build): Value =>
  sum(
    build.faces.map(({ mass }) => mass),
    "mass",
  );

/** What the panels take at most. Missing when any of it is. */
export const powerOf = (build: Build): Value =>
  sum(
    build.faces.map(({ powerMaximum }) => powerMaximum),
    "power",
  );
