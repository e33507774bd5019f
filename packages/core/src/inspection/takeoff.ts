import type { System } from "@plumbmark/calc";
import type { Mistake } from "../document/mistake.js";
import type { Build } from "../model/build.js";
import type { RepositoryFiles } from "../repository/files.js";
import { openRepository } from "./open-repository.js";

/** A document opened to be counted; with mistakes in it, what is counted may not be everything. */
export interface TakenOff {
  readonly build: Build;
  readonly system: System;
  readonly mistakes: readonly Mistake[];
}

/** Opens one document of the repository. @throws RangeError when it is not among the documents. */
export const takeoff = (files: RepositoryFiles, path: string, today: string): TakenOff =>
  openRepository(files, [], { today }).model(path);
