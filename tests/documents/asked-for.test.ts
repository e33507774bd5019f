import { type CheckEntry, fieldsAt, openRepository, type RepositoryFiles, schemas, whereFound } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, inject, test } from "vitest";
import { isMap, isSeq, parseDocument } from "yaml";
import { some, someOfEach } from "../run/some.js";
import { starter, TODAY } from "./repository.js";

const BANNER = starter().documents.find(({ path }) => path.endsWith("over-stage-banner.md"))?.text ?? "";
const END = BANNER.indexOf("\n---\n");

type Path = readonly (string | number)[];

/** Paths of everything written in YAML: every value, and every group and list as a whole. */
function pathsOf(node: unknown, path: Path = []): readonly Path[] {
  const own = path.length > 0 ? [path] : [];
  if (isMap(node)) return [...own, ...node.items.flatMap(({ key, value }) => pathsOf(value, [...path, String(key)]))];
  if (isSeq(node)) return [...own, ...node.items.flatMap((item, index) => pathsOf(item, [...path, index]))];
  return own;
}

const front = (): ReturnType<typeof parseDocument> => parseDocument(BANNER.slice(4, END));

const checksOf = (files: RepositoryFiles): readonly CheckEntry[] =>
  openRepository(files, rules, { today: TODAY, turns: false }).all().documents[0]?.checks ?? [];

function withoutField(path: Path): readonly CheckEntry[] {
  const yaml = front();
  yaml.deleteIn(path);
  const text = `---\n${yaml.toString({ lineWidth: 0 })}---\n${BANNER.slice(END + 5)}`;
  return checksOf({ ...starter(), documents: [{ path: "builds/over-stage-banner.md", text }] });
}

/** The banner's catalogue without one field of one part. */
function withoutPartField(file: number, path: Path): readonly CheckEntry[] {
  const parts = starter().parts.map((each, index) => {
    if (index !== file) return each;
    const yaml = parseDocument(each.text);
    yaml.deleteIn(path);
    return { ...each, text: yaml.toString({ lineWidth: 0 }) };
  });
  return checksOf({ ...starter(), parts, documents: [{ path: "builds/over-stage-banner.md", text: BANNER }] });
}

const FIRST_KEYS = new Set([...Object.keys((schemas.buildSchema as { properties: object }).properties)]);

/** Paths of the document that a sentence tells to write something under. */
const proposed = ({ mend = "" }: CheckEntry): readonly string[] =>
  [...mend.matchAll(/`([\w-]+(?:\.[\w-]+)+)`(?! in )/gu)]
    .map(([, path]) => path as string)
    .filter((path) => FIRST_KEYS.has(path.split(".")[0] as string));

const proposedInParts = ({ mend = "" }: CheckEntry): readonly string[] =>
  [...mend.matchAll(/`([\w.-]+)` in parts\//gu)].map(([, path]) => path as string);

const paths = pathsOf(front().contents);
const dotted = (path: Path): string => path.map((key) => (typeof key === "number" ? key + 1 : key)).join(".");
/** What is asked for: both ratings of a point are one question. */
const questionOf = (path: Path): string => dotted(path).replace(/\.(?:structure|catch)$/u, "");
/** Who wrote the letter, when and until when is read off it. */
const isReadOff = (path: string): boolean => /\.(?:by|licence|on|file|until)$/u.test(path);
const isAsked = (path: Path): boolean => whereFound(dotted(path)) === "letter" && !isReadOff(dotted(path));

/** All are taken out in a deep run; else one for each question to an engineer, and so many others, other ones in each run. */
const { deep, seed } = inject("effort");
const MORE = deep ? Number.POSITIVE_INFINITY : 6;
const MORE_OF_PARTS = deep ? Number.POSITIVE_INFINITY : 3;

const tried = [
  ...someOfEach(paths.filter(isAsked), questionOf, deep ? Number.POSITIVE_INFINITY : 1, seed),
  ...some(
    paths.filter((path) => !isAsked(path)),
    MORE,
    seed,
  ),
];
const found = tried.map((path) => [path, withoutField(path)] as const);
const used = ["tile-500-p3.1", "cord-12-3", "cat6-solid", "wire-rope-1-4", "beam-clamp", "pipe-collar", "processor-6"];
const pathsOfParts = starter().parts.flatMap(({ text }, file) =>
  pathsOf(parseDocument(text).contents)
    .filter((path) => path.length > 1 && used.includes(String(path[0])))
    .map((path) => [file, path] as const),
);
const foundOfParts = some(pathsOfParts, MORE_OF_PARTS, seed + 1).map(
  ([file, path]) => [path, withoutPartField(file, path)] as const,
);

describe("whatever is taken out of the banner or its parts", () => {
  const open = [...found, ...foundOfParts].flatMap(([, checks]) => checks.filter(({ outcome }) => outcome === "open"));
  test("there is much that is then open", () => {
    expect(paths.length).toBeGreaterThan(100);
    expect(pathsOfParts.length).toBeGreaterThan(50);
    expect(foundOfParts.length).toBe(deep ? pathsOfParts.length : MORE_OF_PARTS);
    expect(open.length).toBeGreaterThan(deep ? 500 : 0);
  });

  test("what blocks a requirement says where a person finds it", () => {
    const shall = open.filter(({ level }) => level === "shall");
    const waits = shall.flatMap((check) => check["waits-for"] ?? []);
    expect(waits.length).toBeGreaterThan(deep ? 100 : 0);
    const unsaid = waits.filter(({ path, file }) => whereFound(path, file) === undefined);
    expect([...new Set(unsaid.map(({ path }) => path))]).toEqual([]);
    const missing = shall.flatMap((check) => (check["waits-for"] ? [] : (check.missing ?? [])));
    const paths = missing.filter((path) => FIRST_KEYS.has(path.split(".")[0] as string));
    expect([...new Set(paths.filter((path) => whereFound(path) === undefined))]).toEqual([]);
  });

  test("no sentence proposes a key that the schema refuses", () => {
    const all = [...found, ...foundOfParts].flatMap(([, checks]) => checks);
    const build = [...new Set(all.flatMap(proposed))];
    expect(build.length).toBeGreaterThan(deep ? 30 : 0);
    expect(build.filter((path) => fieldsAt(schemas.buildSchema, path).length === 0)).toEqual([]);
    const parts = [...new Set(all.flatMap(proposedInParts))];
    // Of few parts none may be proposed: in a quick run that is no fault.
    if (deep) expect(parts.length).toBeGreaterThan(10);
    expect(parts.filter((path) => fieldsAt(schemas.partsSchema, path).length === 0)).toEqual([]);
  });

  test("at most eight values have to be asked of an engineer or electrician", () => {
    const asked = new Set<string>();
    for (const [path, checks] of found) {
      const blocks = checks.some(({ level, outcome }) => level === "shall" && outcome === "open");
      if (blocks && isAsked(path)) asked.add(questionOf(path));
    }
    expect(asked.size).toBeGreaterThan(0);
    expect(asked.size).toBeLessThanOrEqual(8);
  });
});
