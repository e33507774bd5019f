import type { Thing } from "../inspection/judging/rule.js";
import type { Build } from "../model/build.js";
import { buildShape } from "./computed-shape.js";
import { type SchemaShape, schemaShape, shapeAt } from "./shape.js";

/** What a rule without code may look at, one by one. */
export type Each = "build" | "faces" | "circuits" | "runs" | "chains" | "bars" | "hangs";

const PATHS: Readonly<Record<Each, readonly string[]>> = {
  build: [],
  faces: ["faces", "*"],
  circuits: ["power", "circuits", "*"],
  runs: ["power", "runs", "*"],
  chains: ["data", "chains", "*"],
  bars: ["rigging", "bars", "*"],
  hangs: ["rigging", "bars", "*", "hangs", "*"],
};

/** One of them, in words. */
export const ONE: Readonly<Record<Each, string>> = {
  build: "the build",
  faces: "a face",
  circuits: "a circuit",
  runs: "a run",
  chains: "a chain",
  bars: "a bar",
  hangs: "a hang",
};

export const thingsOf = (build: Build, each: Each): readonly Thing[] =>
  each === "build" ? [build] : each === "hangs" ? build.bars.flatMap((bar) => bar.hangs) : build[each];

export const shapeOf = (each: Each): SchemaShape => shapeAt(buildShape(), PATHS[each]) ?? schemaShape(["object"]);
