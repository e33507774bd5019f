import { publish } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { starter, TODAY } from "../documents/repository.js";
import { onceARun } from "../run/once-a-run.js";

export { TODAY } from "../documents/repository.js";

/** The files of the starter, as the command line reads them. */
export const starterFiles = starter();

let pages: ReturnType<typeof publish> | undefined;

/** The site of the starter, made once in a run for all tests that only look at it. */
export function starterPages(): ReturnType<typeof publish> {
  pages ??= onceARun("site", () => publish({ files: starterFiles, rules, today: TODAY }));
  return pages;
}
