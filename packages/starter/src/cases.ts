import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { SourceFile } from "@plumbmark/core";
import type { Case, CaseContext, CaseOutcome } from "@plumbmark/kit/tryout";
import { starterRepository } from "./index.js";

const OUTCOMES: readonly CaseOutcome[] = ["holds", "fails", "open"];

const text = (path: string): string => readFileSync(path, "utf8");

const optional = (key: "stock" | "houseStandard", path: string): CaseContext =>
  existsSync(path) ? { [key]: text(path) } : {};

/** Files of one ending in a folder of a small repository, by name. */
const filesIn = (from: string, folder: string, ending: string): readonly SourceFile[] =>
  (existsSync(join(from, folder)) ? readdirSync(join(from, folder)).sort() : [])
    .filter((name) => name.endsWith(ending))
    .map((name) => ({ path: `${folder}/${name}`, text: text(join(from, folder, name)) }));

/** Papers of a small repository, which nobody reads. */
const papersIn = (from: string): readonly string[] =>
  existsSync(join(from, "letters")) ? readdirSync(join(from, "letters")).map((name) => `letters/${name}`) : [];

/** The starter's parts catalogue, stock list and papers, for cases that bring none of their own. */
export const starterParts = (): CaseContext => ({
  parts: filesIn(starterRepository, "parts", ".yaml"),
  stock: text(join(starterRepository, "stock.yaml")),
  papers: papersIn(starterRepository),
});

function readCase(path: string, expects: CaseOutcome): Case {
  const name = basename(path);
  if (!statSync(path).isDirectory()) return { name, expects, documents: { [name]: text(path) } };
  const parts = filesIn(path, "parts", ".yaml");
  const papers = papersIn(path);
  const surveys = filesIn(path, "venues", ".md");
  return {
    name,
    expects,
    documents: Object.fromEntries(filesIn(path, "builds", ".md").map((file) => [file.path, file.text])),
    ...(parts.length > 0 ? { parts } : {}),
    ...(surveys.length > 0 ? { surveys } : {}),
    ...(papers.length > 0 ? { papers } : {}),
    ...optional("stock", join(path, "stock.yaml")),
    ...optional("houseStandard", join(path, "house-standard.yaml")),
  };
}

/**
 * Reads the cases of a rule from a folder: Markdown files, or folders with `builds/`, `parts/`, `venues/`, `stock.yaml` and
 * `house-standard.yaml`. What is expected is what the name begins with: `holds-…`, `fails-…`, `open-…`.
 * @throws Error when a name begins with none of them
 */
export function readCases(folder: string | URL): readonly Case[] {
  const from = folder instanceof URL ? fileURLToPath(folder) : folder;
  return readdirSync(from)
    .sort()
    .map((name) => {
      const expects = OUTCOMES.find((each) => new RegExp(`^${each}(?![a-z])`, "u").test(name));
      if (!expects) throw new Error(`${join(from, name)}: the name of a case begins with holds, fails or open.`);
      return readCase(join(from, name), expects);
    });
}
