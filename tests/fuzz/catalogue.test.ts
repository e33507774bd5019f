import { openRepository, type RepositoryFiles, readYaml, StandardError } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe } from "vitest";
import { SMALL } from "../documents/repository.js";
import { around, HOUSE, PARTS, RICH, STOCK, TODAY } from "./base.js";
import { fuzz } from "./cases.js";
import { astray, refuseUnsound } from "./sound.js";
import { editedTexts } from "./text.js";
import { changedTrees, form, written } from "./tree.js";

const SHORT = `${SMALL.slice(0, SMALL.indexOf("\n---\n", 4))}\n---\n\n## Scope\n\nFour tiles, [4](calc:faces.header.panel-count).\n`;

const document = { path: "builds/a.md", text: SHORT };

const edited = (text: string): fc.Arbitrary<string> =>
  fc.oneof(
    editedTexts([text]),
    fc.tuple(changedTrees([readYaml(text).data]), form).map(([tree, how]) => written(tree, how)),
  );

/** Inspects; a house standard that cannot be used is refused with places inside it. */
function inspected(files: RepositoryFiles): void {
  const all = [...files.documents, ...files.parts, ...(files.stock ? [files.stock] : [])];
  try {
    refuseUnsound(openRepository(files, rules, { today: TODAY, every: true }).all(), all);
  } catch (error) {
    if (!(error instanceof StandardError)) throw error;
    refuseAstray(error.message, files.houseStandard?.text ?? "");
  }
}

/** Every line of a refusal begins with a place in the house standard. */
function refuseAstray(message: string, text: string): void {
  const [first, ...places] = [...message.matchAll(/^house-standard\.yaml:(\d+):(\d+): /gmu)];
  if (!first) throw new Error(`no place is told: ${message}`);
  for (const [, line, column] of [first, ...places]) {
    const wrong = astray({ line: Number(line), column: Number(column) }, text);
    if (wrong !== undefined) throw new Error(`${wrong}: ${message}`);
  }
}

describe("whatever the files around a document say, the inspection ends with a sound record or a refusal", () => {
  fuzz("parts", {
    share: 12,
    of: edited(PARTS),
    holds: (text) => inspected({ ...around, parts: [{ path: "parts/all.yaml", text }], documents: [document] }),
  });

  fuzz("stock", {
    share: 12,
    of: edited(STOCK),
    holds: (text) => inspected({ ...around, stock: { path: "stock.yaml", text }, documents: [document] }),
  });

  fuzz("house standards", {
    share: 26,
    of: fc.oneof(edited(HOUSE), edited(RICH), edited(RICH)),
    holds: (text) =>
      inspected({ ...around, houseStandard: { path: "house-standard.yaml", text }, documents: [document] }),
  });
});
