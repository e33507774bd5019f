import {
  openRepository,
  type RepositoryFiles,
  StandardError,
  schedule,
  scheduleNames,
  tableCsv,
  tableMarkdown,
  workedValues,
} from "@plumbmark/core";
import { publish } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe } from "vitest";
import { around, documents, PARTS, RICH, TODAY, taken } from "./base.js";
import { fuzz } from "./cases.js";
import { body } from "./markdown.js";
import { editedTexts } from "./text.js";
import { changedTrees, form, written } from "./tree.js";

const PATH = "builds/a.md";

/** A document, whole or changed, and the catalogue, whole or changed. */
const changed = fc
  .tuple(fc.constantFrom(...taken), body, form)
  .chain(([{ data }, text, how]) =>
    changedTrees([data]).map((tree) => `---\n${written(tree, how)}\n---\n\n## Scope\n\n${text}\n`),
  );
const files: fc.Arbitrary<RepositoryFiles> = fc
  .tuple(fc.oneof(changed, editedTexts(documents)), fc.oneof(fc.constant(PARTS), editedTexts([PARTS])))
  .map(([text, parts]) => ({
    ...around,
    parts: [{ path: "parts/all.yaml", text: parts }],
    documents: [{ path: PATH, text }],
  }));

/** Every value and every schedule, in every form. */
function countedAndWorked(given: RepositoryFiles): void {
  for (const [path, { working }] of workedValues(openRepository(given, [], { today: TODAY }).model(PATH)))
    if (!Array.isArray(working)) throw new Error(`${path} has no working`);
  const { build, system } = openRepository(given, rules, { today: TODAY, every: true }).one(PATH);
  for (const name of scheduleNames) {
    const table = schedule(build, name, system);
    const text = tableCsv(table) + tableMarkdown(table);
    if (/\[object|\bundefined\b|\bNaN\b/u.test(text) && !/object|undefined|NaN/u.test(JSON.stringify(given)))
      throw new Error(`${name} has in it what nobody wrote: ${text.slice(0, 400)}`);
  }
}

function published(given: RepositoryFiles): void {
  try {
    const pages = publish({ files: given, rules, today: TODAY });
    const index = pages.get("index.html");
    if (index === undefined) throw new Error("there is no first page");
    for (const path of pages.keys())
      if (path.startsWith("/") || path.split("/").includes("..")) throw new Error(`the page ${path} lies outside`);
  } catch (error) {
    if (!(error instanceof StandardError)) throw error;
  }
}

describe("whatever a document says, it can be shown", () => {
  fuzz("workings and schedules", { share: 6, of: files, holds: countedAndWorked });

  fuzz("pages", {
    share: 2,
    of: fc.tuple(files, fc.constantFrom(undefined, RICH)).map(([given, text]) => ({
      ...given,
      ...(text === undefined ? {} : { houseStandard: { path: "house-standard.yaml", text } }),
    })),
    holds: published,
  });
});
