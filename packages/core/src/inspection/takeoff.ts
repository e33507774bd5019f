import type { System } from "@plumbmark/calc";
import type { Mistake } from "../document/mistake.js";
import type { Build } from "../model/build.js";
import { systemOf } from "../model/reading/system.js";
import type { RepositoryFiles } from "../repository/files.js";
import { contextOf } from "./context.js";
import { buildOf } from "./models.js";

/** A document opened to be counted; with mistakes in it, what is counted may not be everything. */
export interface TakenOff {
  readonly build: Build;
  readonly system: System;
  readonly mistakes: readonly Mistake[];
}

/** Opens one document of the repository. @throws RangeError when it is not among the documents. */
export function takeoff(files: RepositoryFiles, path: string, today: string): TakenOff {
  const context = contextOf(files, today);
  const opened = context.opened.find((each) => each.file.path === path);
  if (!opened) throw new RangeError(`There is no build document ${path}.`);
  const { build, mistakes } = buildOf(opened, context);
  return { build, system: systemOf(build.reader, build.practice), mistakes };
}
