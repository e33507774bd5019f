import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { openRepository, type RepositoryFiles, readMarkdown, readYaml } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { approvedAsTheyAre, changed, PAPER, starter, TODAY } from "../documents/repository.js";
import { caseFiles } from "../rules/repository.js";
import { general, pointersIn } from "./deletions.js";
import { gist } from "./judged.js";

const RULES = new URL("../../rules/", import.meta.url).pathname;

const foldersIn = (at: string): readonly string[] =>
  readdirSync(at)
    .map((name) => join(at, name))
    .filter((path) => statSync(path).isDirectory());

/** Cases of every rule, each a file or a small repository. */
const cases = (): readonly string[] =>
  foldersIn(RULES)
    .flatMap(foldersIn)
    .map((rule) => join(rule, "cases"))
    .filter((path) => existsSync(path))
    .flatMap((path) => readdirSync(path).map((name) => join(path, name)));

/** A build whose overloaded circuit and whose missing breaker are waived, with everything a waiver may say. */
function waived(): RepositoryFiles {
  const paper = `licensed: {by: N. Amser, licence: EL 4821, on: 2026-11-02, file: ${PAPER}}`;
  const signed = `because: the season ends in May, by: M. Finch, until: 2027-06-30, ${paper}`;
  const overloaded = changed("other-load: none", "other-load: 1500 VA");
  const open = changed("rides-through: 200 A\n", "rides-through: 200 A\n", changed("      breaker: 20 A\n", ""));
  const texts = {
    "builds/over.md": changed(
      "practice: us",
      `practice: us\nwaivers: [{rule: power.circuit-load, where: power.circuits.c1, accepts: 19 A, ${signed}}]`,
      overloaded,
    ),
    "builds/open.md": changed(
      "practice: us",
      `practice: us\nwaivers: [{rule: power.circuit-load, of: open, ${signed}}]`,
      open,
    ).replace("build: small-header", "build: other-header"),
  };
  return approvedAsTheyAre({
    ...starter(),
    documents: Object.entries(texts).map(([path, text]) => ({ path, text })),
  });
}

/** Repositories in which a field may decide something: the starter, and the cases of every rule. */
export const corpus = (): readonly (() => RepositoryFiles)[] => [
  starter,
  waived,
  ...cases().map((path) => () => caseFiles(path)),
];

/** The front matter of a document as it is read; no model of the build is made for it. */
function frontIn(text: string): unknown {
  const { frontMatter } = readMarkdown(text);
  return frontMatter && readYaml(text.slice(frontMatter.from, frontMatter.to)).data;
}

/** Where each field of a build document is written, by its general place. */
export function written(): ReadonlyMap<string, readonly Written[]> {
  const found = new Map<string, Written[]>();
  for (const files of corpus()) {
    for (const { path: document, text } of files().documents)
      for (const pointer of pointersIn(frontIn(text))) {
        const place = general(pointer);
        const list = found.get(place) ?? [];
        found.set(place, list);
        list.push({ files, document, pointer });
      }
  }
  return found;
}

export interface Written {
  readonly files: () => RepositoryFiles;
  readonly document: string;
  readonly pointer: string;
}

/** What each rule's checks came to, with a field and without it. */
function bothWays({ files, document, pointer }: Written): readonly (readonly [rule: string, same: boolean])[] {
  const repository = openRepository(files(), rules, { today: TODAY, every: true, turns: false });
  const checks = repository.one(document).entry.checks;
  const without = repository.with([{ op: "remove", document, path: pointer }]).one(document).entry.checks;
  const of = (all: typeof checks, id: string) => gist(all.filter(({ rule }) => rule === id));
  const ids = [...new Set([...checks, ...without].map(({ rule }) => rule))];
  return ids.map((id) => [id, of(checks, id) === of(without, id)]);
}

/** Rules of which a check comes out otherwise when a field is left out. */
export const rulesChanged = (where: Written): readonly string[] =>
  bothWays(where).flatMap(([rule, same]) => (same ? [] : [rule]));

/** Whether leaving a field out changes a check. */
export const decides = (where: Written): boolean => rulesChanged(where).length > 0;
