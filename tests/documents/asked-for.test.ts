import { type CheckEntry, fieldsAt, openRepository, schemas, whereFound } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, inject, test } from "vitest";
import { isMap, isSeq, parseDocument } from "yaml";
import { some } from "../run/some.js";
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

function withoutField(path: Path): readonly CheckEntry[] {
  const yaml = front();
  yaml.deleteIn(path);
  const text = `---\n${yaml.toString({ lineWidth: 0 })}---\n${BANNER.slice(END + 5)}`;
  const files = { ...starter(), documents: [{ path: "builds/over-stage-banner.md", text }] };
  return openRepository(files, rules, { today: TODAY }).all().documents[0]?.checks ?? [];
}

/** The banner's catalogue without one field of one part. */
function withoutPartField(file: number, path: Path): readonly CheckEntry[] {
  const parts = starter().parts.map((each, index) => {
    if (index !== file) return each;
    const yaml = parseDocument(each.text);
    yaml.deleteIn(path);
    return { ...each, text: yaml.toString({ lineWidth: 0 }) };
  });
  const files = { ...starter(), parts, documents: [{ path: "builds/over-stage-banner.md", text: BANNER }] };
  return openRepository(files, rules, { today: TODAY }).all().documents[0]?.checks ?? [];
}

const FIRST_KEYS = new Set([...Object.keys((schemas.buildSchema as { properties: object }).properties)]);

/** Paths of the document that a sentence tells to write something under. */
const proposed = ({ mend = "" }: CheckEntry): readonly string[] =>
  [...mend.matchAll(/`([\w-]+(?:\.[\w-]+)+)`(?! in )/gu)]
    .map(([, path]) => path as string)
    .filter((path) => FIRST_KEYS.has(path.split(".")[0] as string));

const proposedInParts = ({ mend = "" }: CheckEntry): readonly string[] =>
  [...mend.matchAll(/`([\w.-]+)` in parts\//gu)].map(([, path]) => path as string);

/** All are taken out in a deep run; of others one takes so many, other ones in each run. */
const { deep, seed } = inject("effort");
const SHARE = deep ? 1 : 5;

const paths = pathsOf(front().contents);
const isOfLetter = ([first, second]: Path): boolean => first === "rigging" && second === "letter";
const tried = [
  ...paths.filter(isOfLetter),
  ...some(
    paths.filter((path) => !isOfLetter(path)),
    Math.ceil(paths.length / SHARE),
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
const foundOfParts = some(pathsOfParts, Math.ceil(pathsOfParts.length / SHARE), seed + 1).map(
  ([file, path]) => [path, withoutPartField(file, path)] as const,
);

describe("whatever is taken out of the banner or its parts", () => {
  const open = [...found, ...foundOfParts].flatMap(([, checks]) => checks.filter(({ outcome }) => outcome === "open"));
  test("there is much that is then open", () => {
    expect(paths.length).toBeGreaterThan(100);
    expect(pathsOfParts.length).toBeGreaterThan(50);
    expect(foundOfParts.length).toBeGreaterThan(50 / SHARE);
    expect(open.length).toBeGreaterThan(500 / SHARE);
  });

  test("what blocks a requirement says where a person finds it", () => {
    const shall = open.filter(({ level }) => level === "shall");
    const waits = shall.flatMap((check) => check["waits-for"] ?? []);
    expect(waits.length).toBeGreaterThan(100 / SHARE);
    const unsaid = waits.filter(({ path, file }) => whereFound(path, file) === undefined);
    expect([...new Set(unsaid.map(({ path }) => path))]).toEqual([]);
    const missing = shall.flatMap((check) => (check["waits-for"] ? [] : (check.missing ?? [])));
    const paths = missing.filter((path) => FIRST_KEYS.has(path.split(".")[0] as string));
    expect([...new Set(paths.filter((path) => whereFound(path) === undefined))]).toEqual([]);
  });

  test("no sentence proposes a key that the schema refuses", () => {
    const all = [...found, ...foundOfParts].flatMap(([, checks]) => checks);
    const build = [...new Set(all.flatMap(proposed))];
    expect(build.length).toBeGreaterThan(30 / SHARE);
    expect(build.filter((path) => fieldsAt(schemas.buildSchema, path).length === 0)).toEqual([]);
    const parts = [...new Set(all.flatMap(proposedInParts))];
    expect(parts.length).toBeGreaterThan(10 / SHARE);
    expect(parts.filter((path) => fieldsAt(schemas.partsSchema, path).length === 0)).toEqual([]);
  });

  test("at most eight values have to be asked of an engineer or electrician", () => {
    const asked = new Set<string>();
    for (const [path, checks] of found) {
      const dotted = path.map((key) => (typeof key === "number" ? key + 1 : key)).join(".");
      const blocks = checks.some(({ level, outcome }) => level === "shall" && outcome === "open");
      // Who wrote the letter, when and until when is read off it; both ratings of a point are one question.
      if (!blocks || whereFound(dotted) !== "letter" || /\.(?:by|licence|on|file|until)$/u.test(dotted)) continue;
      asked.add(dotted.replace(/\.(?:structure|catch)$/u, ""));
    }
    expect(asked.size).toBeGreaterThan(0);
    expect(asked.size).toBeLessThanOrEqual(8);
  });
});
