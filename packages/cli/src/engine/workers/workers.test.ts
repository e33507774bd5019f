import {
  type CheckEntry,
  outlineOf,
  pluginRules,
  type RepositoryFiles,
  type RuleResult,
  type SharedUse,
  StandardError,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { starter } from "../../../../../tests/documents/repository.js";
import { stated } from "../../../../../tests/plugins/stated.js";
import { inspectMany } from "./inspect-many.js";
import { readOutlines } from "./read-outlines.js";
import { readUses } from "./read-uses.js";
import { workersFor } from "./schedule.js";

const options = { today: "2027-01-01" };
/** Enough for two threads to have several each. */
const SOME = starter().documents.slice(0, 5);
/** As the engine gives them: what each document uses is known, for a thread has the texts of its own batch alone. */
const uses = await readUses({ ...starter(), documents: SOME }, SOME, options);
const files: RepositoryFiles = {
  ...starter(),
  documents: SOME.map((each, index) => ({
    ...each,
    outline: { ...outlineOf(each), uses: uses[index] as readonly SharedUse[] },
  })),
};

/** What reaches the record: which figure a check may turn by is used up before, and no part of it. */
const plain = (found: unknown): unknown => JSON.parse(JSON.stringify(found));

// To start a thread takes longer than what it has to do here: few are started, in each way in which their number matters.

test("threads come to the same as one, though there are more of them than documents", async () => {
  const few = { ...files, documents: files.documents.slice(0, 2) };
  const alone = plain(await inspectMany(few, rules, options, 0));
  expect(plain(await inspectMany(few, rules, options, 3))).toEqual(alone);
});

test("outlines are the same however many threads read them, who then inspect", async () => {
  const documents = files.documents.map(({ path, text }) => ({ path, text }));
  const alone = documents.map(outlineOf);
  const inspected = plain(await inspectMany(files, rules, options, 0));
  expect(await readOutlines(documents, 0)).toEqual(alone);
  // Two threads inspect: one of them, or both, have read outlines before.
  for (const threads of [1, 2]) {
    expect(await readOutlines(documents, threads)).toEqual(alone);
    expect(plain(await inspectMany(files, rules, options, 2))).toEqual(inspected);
  }
});

const check = (rule: string, line: number, outcome: "fails" | "holds"): CheckEntry => ({
  rule,
  from: "a-plugin",
  level: "should",
  outcome,
  at: { path: "faces", line, column: 1, endLine: line, endColumn: 2 },
  says: `It was found on line ${line}.`,
  sources: [],
});

/** Of two rules: one comes to something on every document, the other fails on some and was not carried out on others. */
const carriedOut = pluginRules({
  rules: [
    {
      stated: stated("house.first"),
      outcomes: Object.fromEntries(
        files.documents.map(({ path }, index): [string, RuleResult] => [
          path,
          { checks: [check("house.first", 2 + index, "fails"), check("house.first", 2, "holds")] },
        ]),
      ),
    },
    {
      stated: stated("house.second"),
      outcomes: Object.fromEntries(
        files.documents
          .slice(2)
          .map(({ path }, index): [string, RuleResult] => [
            path,
            index === 0 ? { failed: "it did not finish" } : { checks: [] },
          ]),
      ),
    },
  ],
  failed: [{ plugin: "another", reason: "it brings no rules" }],
  refused: ["a-third"],
});

test.each([false, true])("what plugins came to is joined to it, to the byte (every check: %s)", async (every) => {
  const all = [...rules, ...carriedOut];
  const alone = await inspectMany(files, all, { ...options, every }, 0);
  expect(
    alone.flatMap(({ entry }) => entry.checks).filter(({ from }) => from !== undefined).length,
  ).toBeGreaterThanOrEqual(SOME.length);
  expect(JSON.stringify(await inspectMany(files, all, { ...options, every }, 2))).toBe(JSON.stringify(alone));
});

test("what threads cannot be given is inspected here", async () => {
  const own = [...rules, { ...(rules[0] as (typeof rules)[number]), id: "house.own" }];
  expect(await inspectMany(files, own, options, 2)).toEqual(await inspectMany(files, own, options, 0));
});

test("a house standard that cannot be used is told as ever", async () => {
  const broken = {
    ...files,
    houseStandard: {
      path: "house-standard.yaml",
      text: "house-standard: X\nrequirements: {no.such: {level: shall}}\n",
    },
  };
  await expect(inspectMany(broken, rules, options, 2)).rejects.toThrow(StandardError);
});

test("a handful of documents is not worth a thread", () => {
  for (const processors of [1, 2, 8]) expect([0, 8, 39].map((many) => workersFor(many, processors))).toEqual([0, 0, 0]);
  expect([40, 99, 100, 1000].map((many) => workersFor(many, 2))).toEqual([2, 2, 2, 2]);
});

test("with one processor a thread is worth it for many, since it can be given more room", () => {
  expect([40, 99, 100, 1000].map((many) => workersFor(many, 1))).toEqual([0, 0, 1, 1]);
});
