import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { plumbmark } from "../../plumbmark.js";
import { notEmpty } from "../../run/not-empty.js";
import { ENCODINGS, INHERITED } from "./faults.js";
import { small } from "./small.js";

// A record is JSON (RFC 8259) and is made by a machine; between the machine and `collate` lies a disk.

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), "plumbmark-inputs-"));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

async function record(): Promise<string> {
  const docs = small();
  return (await plumbmark(docs, ["inspect", "--as", "json", "--no-cache"])).out;
}

async function collated(content: Uint8Array | string) {
  const place = folder();
  writeFileSync(join(place, "north.json"), content);
  return plumbmark(place, ["collate", "--as", "json", "north.json"]);
}

test.each(notEmpty(ENCODINGS.filter(({ name }) => name !== "Latin-1")))("$name", async ({ of, fine }) => {
  const { status, err } = await collated(of(await record()));
  expect(status, err).toBe(fine ? 0 : 2);
  if (fine) expect(err).toBe("");
  else expect(err).toMatch(/^plumbmark: north\.json(?::\d+:\d+)?: .*(?:UTF-16|not text|UTF-8|no JSON)/u);
});

test.each([
  ["nothing", "", "1:1"],
  ["a text of YAML", "only: a sentence\n", "1:1"],
  ["a list that is not closed", "[1,\n2", "2:2"],
  ["a comment", '{"record": 1, // one\n"a": 2}', "1:15"],
  ["a comma too many", '{"record": 1,\n}', "2:1"],
  ["a tag", "!!binary aGk=\n", "1:1"],
  ["two of them", "{}\n{}\n", "2:1"],
  ["a word cut off", '{"record":\n tru }', "2:5"],
])("%s is told where it stops being JSON", async (_, text, place) => {
  const { status, out, err } = await collated(text);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toContain(`north.json:${place}: this is no JSON from here on.`);
});

const DEEP = 10_000;
const STRANGE: readonly (readonly [what: string, text: string])[] = [
  ["a list", "[]"],
  ["a scalar", '"x"'],
  ["null", "null"],
  ["an empty group", "{}"],
  ["lists 10,000 deep", `{"record": ${"[".repeat(DEEP)}${"]".repeat(DEEP)}}`],
  ["lists 10,000 deep and nothing else", "[".repeat(DEEP) + "]".repeat(DEEP)],
  ...INHERITED.map((key) => [`the key ${key}`, `{"${key}": {"a": 1}}`] as const),
];
test.each(STRANGE)("%s is no record, and told so with its place", async (_, text) => {
  const { status, out, err } = await collated(text);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toMatch(/^plumbmark: north\.json:1:\d+: this is no record of an inspection\. .*\n.*inspect --as json/u);
  expect(err).not.toMatch(/call stack|mistake in Plumbmark/u);
});

test.each(INHERITED)("%s among the counts of a record is no count, and changes no object", async (key) => {
  const text = (await record()).replace('"counts": {', `"counts": {"${key}": {"a": 1}, `);
  expect(text).toContain(key);
  const { status, err } = await collated(text);
  expect(status).toBe(2);
  expect(err).toMatch(/north\.json:\d+:\d+: this is no record/u);
  expect(Object.keys(Object.prototype)).toEqual([]);
});

test.each(INHERITED)("a record called %s is one like any other", async (key) => {
  const place = folder();
  writeFileSync(join(place, `${key}.json`), await record());
  const { status, out } = await plumbmark(place, ["collate", "--as", "json", `${key}.json`]);
  expect(status).toBe(0);
  expect(JSON.parse(out).documents[0].file).toBe(`${key}/builds/a.md`);
});

// RFC 8259, 4: names within an object should be unique; what comes of twins is left to whoever reads them.
test.each([
  ["at the top", (text: string) => text.replace('{\n  "record": 2,', '{\n  "record": 2,\n  "record": 2,'), /"record"/u],
  [
    "in a document",
    (text: string) => text.replace(/^( +)"verdict": "draft"/mu, '$1"verdict": "not ready",\n$&'),
    /"verdict"/u,
  ],
  ["spelt otherwise", (text: string) => text.replace("{\n", '{\n  "rec\\u006frd": 1,\n'), /"record"/u],
])("a key that stands twice %s is told with its place", async (_, twice, key) => {
  const text = twice(await record());
  const { status, out, err } = await collated(text);
  expect([status, out], err).toEqual([2, ""]);
  const [, line, column, named] =
    /^plumbmark: north\.json:(\d+):(\d+): the key ("\w+") stands here a second time\./u.exec(err) ?? [];
  expect(named).toMatch(key);
  expect(
    JSON.parse((text.split("\n")[Number(line) - 1] as string).slice(Number(column) - 1).split(":")[0] as string),
  ).toBe(JSON.parse(named as string));
});

test("texts that look like keys, and the same key in two groups, are none twice", async () => {
  const text = (await record()).replace('"standard": "', '"standard": "{\\"a\\": 1, \\"a\\": 2, \\\\\\"');
  const { status, err } = await collated(text);
  expect([status, err]).toEqual([0, ""]);
});

const LONG = 2_000_000;
test.each([
  ["a value", (text: string) => text.replace('"record": 2', `"record": "${"x".repeat(LONG)}"`)],
  ["a value of many words", (text: string) => text.replace('"record": 2', `"record": "${"x y ".repeat(LONG / 4)}"`)],
  ["a key", (text: string) => text.replace('"record": 2', `"record": 1, "${"x".repeat(LONG)}": 1`)],
  ["a key twice", (text: string) => text.replace('"record": 2', `"${"x".repeat(LONG)}": 1, "${"x".repeat(LONG)}": 1`)],
  ["a path", (text: string) => text.replace('"counts": {', `"counts": {"${"x".repeat(LONG)}": {"a": 1}, `)],
  ["what is no JSON", (text: string) => text.replace('"record": 2', `"record": ${"x".repeat(LONG)}`)],
])("%s of 2 MB is not quoted as a whole", async (_, long) => {
  const { status, err } = await collated(long(await record()));
  expect(status).toBe(2);
  expect(err).toMatch(/^plumbmark: north\.json:\d+:\d+: /u);
  expect(err.length).toBeLessThan(2000);
});
