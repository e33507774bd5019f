import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe, inject } from "vitest";
import { around, documents, TODAY, taken } from "./base.js";
import { fuzz, one } from "./cases.js";
import { body } from "./markdown.js";
import { refuseUnsound } from "./sound.js";
import { editedTexts } from "./text.js";
import { changedTrees, form, written } from "./tree.js";

/** In a quick run fewer, so that its batches are other ones with every seed. */
const TOGETHER = inject("effort").deep ? 20 : 5;

/** Inspects the texts as documents; whatever they are, the record is sound. */
function inspected(texts: readonly string[]): void {
  const files = { ...around, documents: texts.map((text, index) => ({ path: `builds/${index}.md`, text })) };
  const record = openRepository(files, rules, { today: TODAY, every: true }).all();
  if (files.stock === undefined) throw new Error("the stock list is there");
  refuseUnsound(record, [...files.documents, ...files.parts, files.stock]);
}

const batch = (of: fc.Arbitrary<string>) => fc.array(of, { minLength: TOGETHER, maxLength: TOGETHER, size: "max" });

/** Only some of the keys at the top: a short document reaches as far as a long one. */
const some = fc
  .tuple(fc.constantFrom(...taken.slice(0, 4)), fc.array(fc.nat(20), { maxLength: 5 }))
  .map(([{ data }, numbers]) => {
    const entries = Object.entries(data as object);
    const chosen = new Set(numbers.map((number) => entries[number % entries.length]?.[0]));
    return Object.fromEntries(
      entries.filter(([key]) => ["build", "title", "status", "faces"].includes(key) || chosen.has(key)),
    );
  });

const trees = some.chain((tree) => changedTrees([tree]));
const head = taken[0]?.data;
const short = { build: "x", title: "t", status: "for-build" };

describe("whatever a document says, its inspection ends with a sound record", () => {
  fuzz("front matter with a few values, keys and branches changed", {
    share: 430,
    together: TOGETHER,
    of: batch(fc.tuple(trees, form).map(([tree, how]) => `---\n${written(tree, how)}\n---\n\n## Scope\n`)),
    holds: (texts) => one(texts, inspected),
  });

  fuzz("whole documents with pieces of text changed", {
    share: 50,
    together: TOGETHER,
    of: batch(editedTexts(documents)),
    holds: (texts) => one(texts, inspected),
  });

  fuzz("Markdown by its grammar", {
    share: 430,
    together: TOGETHER,
    of: batch(body.map((text) => `---\n${written(short, "block")}\n---\n${text}`)),
    holds: (texts) => one(texts, inspected),
  });

  fuzz("Markdown by its grammar under a whole front matter", {
    share: 20,
    together: TOGETHER,
    of: batch(body.map((text) => `---\n${written(head, "json")}\n---\n${text}`)),
    holds: (texts) => one(texts, inspected),
  });
});
