import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { RepositoryFiles, SourceFile } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";

export const TODAY = "2026-11-25";

const read = (path: string): SourceFile => ({ path, text: readFileSync(join(starterRepository, path), "utf8") });

const folder = (name: string): readonly SourceFile[] =>
  readdirSync(join(starterRepository, name))
    .sort()
    .map((file) => read(`${name}/${file}`));

/** The files of the starter, as the command line reads them. */
export const starterFiles: RepositoryFiles = {
  houseStandard: read("house-standard.yaml"),
  stock: read("stock.yaml"),
  parts: folder("parts"),
  documents: folder("builds"),
};
