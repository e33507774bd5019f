import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { SourceFile } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { approvalCodes } from "./approval-codes.js";
import { putOldForm } from "./old-form.js";

const NAMED = /^rules-from: .*\n/mu;

const files = (folder: string, from: string, ending: string): readonly SourceFile[] =>
  readdirSync(join(folder, from))
    .filter((name) => name.endsWith(ending))
    .map((name) => ({ path: `${from}/${name}`, text: readFileSync(join(folder, from, name), "utf8") }));

/** Has the builds of a copy of the starter approved as they are: an approval is of the house standard, too. */
export function approveCopy(folder: string): void {
  const one = (path: string): SourceFile => ({ path, text: readFileSync(join(folder, path), "utf8") });
  const codes = approvalCodes(
    {
      houseStandard: one("house-standard.yaml"),
      parts: files(folder, "parts", ".yaml"),
      stock: one("stock.yaml"),
      documents: files(folder, "builds", ".md"),
    },
    "2027-01-01",
  );
  for (const [path, code] of codes) {
    const { text } = one(path);
    writeFileSync(join(folder, path), text.replace(/(^approved: \{.*code: )[0-9A-Z-]+/mu, `$1${code}`));
  }
}

/**
 * Copies the starter's docs repository, its builds in the form that says everything itself. Its plugin stays behind, whose
 * process would take longer than all else a test does, and so do its wishes, which a publish drafts: that takes as long
 * as the rest of the site. Tests of plugins and of wishes copy `starterRepository` itself, or what they need of it.
 */
export function copyStarter(to: string): void {
  whole ??= madeOnce("starter", writeStarter);
  cpSync(whole, to, { recursive: true });
}

let whole: string | undefined;

/** A folder for all tests of a process to copy from. */
export function madeOnce(name: string, write: (to: string) => void): string {
  const place = mkdtempSync(join(tmpdir(), `plumbmark-${name}-`));
  process.once("exit", () => rmSync(place, { recursive: true, force: true }));
  write(place);
  return place;
}

function writeStarter(to: string): void {
  cpSync(starterRepository, to, { recursive: true });
  putOldForm(to);
  for (const folder of ["house-rules", "wishes"]) rmSync(join(to, folder), { recursive: true });
  const path = join(to, "house-standard.yaml");
  const standard = readFileSync(path, "utf8");
  if (!NAMED.test(standard)) throw new Error("the starter's house standard names no plugin");
  writeFileSync(path, standard.replace(NAMED, ""));
  approveCopy(to);
}
