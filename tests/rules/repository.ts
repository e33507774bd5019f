import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { RepositoryFiles, SourceFile } from "@plumbmark/core";

export const root = fileURLToPath(new URL("../..", import.meta.url));
const starter = join(root, "packages/starter/repository");

const known = new Map<string, SourceFile>();

/** A file, the same thing each time: what is made of the starter's parts and stock is then made once. */
function read(from: string, path: string): SourceFile {
  const place = join(from, path);
  const file = known.get(place) ?? { path, text: readFileSync(place, "utf8") };
  known.set(place, file);
  return file;
}

/** Files of one ending in a folder, by name; none when there is no such folder. */
const folder = (from: string, name: string, ending: string): readonly SourceFile[] => {
  const at = join(from, name);
  const names = existsSync(at) ? readdirSync(at).sort() : [];
  return names.filter((file) => file.endsWith(ending)).map((file) => read(from, `${name}/${file}`));
};

const optional = (from: string, name: string): SourceFile | undefined =>
  existsSync(join(from, name)) ? read(from, name) : undefined;

/** Papers of a repository, which nobody reads. */
const papers = (from: string): readonly string[] =>
  existsSync(join(from, "letters")) ? readdirSync(join(from, "letters")).map((name) => `letters/${name}`) : [];

/** A document on its own, with the starter's catalogue and stock and the defaults of the product. */
export const alone = (document: SourceFile): RepositoryFiles => ({
  parts: folder(starter, "parts", ".yaml"),
  stock: read(starter, "stock.yaml"),
  papers: papers(starter),
  documents: [document],
});

/** A case of a rule: one Markdown file, or a folder that has what it needs of a repository of its own. */
export function caseFiles(path: string): RepositoryFiles {
  if (!statSync(path).isDirectory()) return alone(read(join(path, ".."), path.slice(path.lastIndexOf("/") + 1)));
  const parts = folder(path, "parts", ".yaml");
  const houseStandard = optional(path, "house-standard.yaml");
  return {
    parts: parts.length > 0 ? parts : folder(starter, "parts", ".yaml"),
    stock: optional(path, "stock.yaml") ?? read(starter, "stock.yaml"),
    papers: [...papers(path), ...papers(starter)],
    surveys: folder(path, "venues", ".md"),
    documents: folder(path, "builds", ".md"),
    ...(houseStandard ? { houseStandard } : {}),
  };
}
