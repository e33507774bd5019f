import { expect, test } from "vitest";
import { computedPaths } from "../generated/computed-paths.js";
import { emptyBuild } from "./empty-build.js";

test("the paths written down at the build are those the model computes", () => {
  expect(computedPaths).toEqual([...emptyBuild().values].map(([path, { kind }]) => [path, kind]));
});
