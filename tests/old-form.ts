import { cpSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/**
 * The starter's builds as they were written before there were surveys: each says everything of its house itself. They
 * stay readable, and a test that changes one figure finds it in the document it is about.
 */
export const oldForm: string = fileURLToPath(new URL("old-form/", import.meta.url));

/** The text of one of them: `builds/small-screen.md`. */
export const oldFormText = (path: string): string => readFileSync(join(oldForm, path), "utf8");

/** Puts them in the place of the builds of a copy of the starter, which then has no surveys. */
export function putOldForm(to: string): void {
  for (const folder of ["builds", "venues"]) rmSync(join(to, folder), { recursive: true, force: true });
  cpSync(join(oldForm, "builds"), join(to, "builds"), { recursive: true });
}
