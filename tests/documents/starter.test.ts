import { readdirSync, readFileSync } from "node:fs";
import { openRepository, type RepositoryFiles, type SourceFile } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { describe, expect, inject, test } from "vitest";
import { parse } from "yaml";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { starter, TODAY } from "./repository.js";

const read = (path: string): SourceFile => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const all = (folder: string, end: string): readonly SourceFile[] =>
  readdirSync(`${starterRepository}/${folder}`)
    .filter((name) => name.endsWith(end))
    .sort()
    .map((name) => read(`${folder}/${name}`));

const files: RepositoryFiles = {
  houseStandard: read("house-standard.yaml"),
  parts: all("parts", ".yaml"),
  stock: read("stock.yaml"),
  papers: all("letters", "").map(({ path }) => path),
  documents: all("builds", ".md"),
  surveys: all("venues", ".md"),
};
const options = { today: "2027-01-01", turns: false };
const record = openRepository(files, rules, options).all();
const document = (file: string) => record.documents.find((each) => each.file === `builds/${file}.md`);

describe("the starter's documents", () => {
  // An approval is of a content: parts, stock and house standard included.
  test("are approved as they are; after a change, `node packages/build-tools/src/approve-starter.mjs`", () => {
    const stale = record.documents.filter(({ approval }) => approval && approval.state !== "approved");
    expect(stale.map(({ file }) => file)).toEqual([]);
  });

  test.each([
    "over-stage-banner",
    "riser-fascias",
    "side-strips",
    "small-screen",
    "harbour-header",
    "lobby-ribbon",
    "summer-stage",
  ])("%s is ready and nothing is named in it", (name) => {
    expect(document(name)?.checks.map(({ rule, says }) => `${rule}: ${says}`)).toEqual([]);
    expect(document(name)?.verdict).toBe("ready");
  });

  test("the draft is a draft and never ready, with open checks and none that fails", () => {
    expect(document("gallery-header")?.verdict).toBe("draft");
    expect(document("gallery-header")).not.toHaveProperty("approval");
    expect(document("gallery-header")?.counts.open).toBeGreaterThan(0);
    expect(document("gallery-header")?.counts.fails).toBe(0);
  });

  // The faults are planted in the document: an overloaded circuit, a friction plug overhead, two batches, a port.
  test("each planted fault is named, and the document is not ready", () => {
    const failed = new Set(
      document("gala-wall")
        ?.checks.filter(({ level, outcome }) => level === "shall" && outcome === "fails")
        .map(({ rule }) => rule),
    );
    expect([...failed].sort()).toEqual([
      "connectors.locking-overhead",
      "data.port-load",
      "panels.batch",
      "power.circuit-load",
    ]);
    expect(document("gala-wall")?.verdict).toBe("not ready");
  });

  // For its sheet the whole body is read, for the record only as much as rules look at.
  // All in a deep run; else two of them, others in each run.
  const { deep, seed } = inject("effort");
  test("a document comes to the same whether its prose is to be shown or not", () => {
    const repository = openRepository(files, rules, { ...options, prose: true });
    const paths = deep ? repository.documents : some(repository.documents, 2, seed);
    const modelled = notEmpty(paths.map((path) => repository.one(path)));
    const expected = paths.map((path) => record.documents.find(({ file }) => file === path));
    expect(modelled.map(({ entry }) => entry)).toEqual(expected);
    if (deep) expect(modelled.flatMap(({ build }) => build.quotes).length).toBeGreaterThan(50);
  });

  // The values of their front matters when each still said everything of its house, without the fields that came since.
  const BEFORE = {
    "gala-wall": 173,
    "gallery-header": 55,
    "harbour-header": 172,
    "over-stage-banner": 150,
    "riser-fascias": 142,
    "side-strips": 187,
    "small-screen": 111,
  };
  const leavesOf = (data: unknown): number =>
    typeof data === "object" && data !== null
      ? Object.values(data).reduce((count: number, each) => count + leavesOf(each), 0)
      : 1;
  const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);
  test("leave to surveys, holdings and assemblies more than a quarter of what they said themselves", () => {
    const now = Object.keys(BEFORE).map((name) => {
      const text = files.documents.find(({ path }) => path === `builds/${name}.md`)?.text ?? "";
      return leavesOf(parse(text.slice(4, text.indexOf("\n---\n"))));
    });
    expect(Math.min(...now)).toBeGreaterThan(30);
    expect(sum(now)).toBeLessThanOrEqual(0.72 * sum(Object.values(BEFORE)));
  });

  test("are as ready in the form that says everything itself", () => {
    const old = openRepository(starter(), rules, { today: TODAY, turns: false });
    const paths = notEmpty(deep ? old.documents : some(old.documents, 3, seed));
    expect(old.documents).toEqual(files.documents.map(({ path }) => path));
    expect(paths.map((path) => `${path}: ${old.one(path).entry.verdict}`)).toEqual(
      paths.map((path) => `${path}: ${record.documents.find(({ file }) => file === path)?.verdict}`),
    );
  });
});
