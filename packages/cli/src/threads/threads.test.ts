import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { inspectEach, outlineOf, type RepositoryFiles, type SourceFile, StandardError } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { expect, test } from "vitest";
import { inspectMany, threadsFor } from "./inspect-many.js";

const folder = (name: string): readonly SourceFile[] =>
  readdirSync(join(starterRepository, name))
    .filter((each) => /\.(?:md|ya?ml)$/u.test(each))
    .map((each) => ({ path: `${name}/${each}`, text: readFileSync(join(starterRepository, name, each), "utf8") }));
const file = (path: string): SourceFile => ({ path, text: readFileSync(join(starterRepository, path), "utf8") });

const files: RepositoryFiles = {
  documents: folder("builds").map((each) => ({ ...each, outline: outlineOf(each) })),
  parts: folder("parts"),
  stock: file("stock.yaml"),
  houseStandard: file("house-standard.yaml"),
};
const options = { today: "2027-01-01" };

test("threads come to the same as one, whatever their number", async () => {
  const alone = inspectEach(files, rules, options);
  for (const threads of [2, 3, 7]) expect(await inspectMany(files, rules, options, threads)).toEqual(alone);
});

test("what threads cannot be given is inspected here", async () => {
  const own = [...rules, { ...(rules[0] as (typeof rules)[number]), id: "house.own" }];
  expect(await inspectMany(files, own, options, 2)).toEqual(inspectEach(files, own, options));
});

test("a house standard that cannot be used is told as ever", async () => {
  const broken = {
    ...files,
    houseStandard: { path: "house-standard.yaml", text: "house-standard: X\nrules: {no.such: {level: shall}}\n" },
  };
  await expect(inspectMany(broken, rules, options, 2)).rejects.toThrow(StandardError);
});

test("a handful of documents is not worth a thread", () => {
  expect(threadsFor(8)).toBe(1);
  expect(threadsFor(0)).toBe(1);
});
