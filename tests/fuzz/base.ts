import { readFileSync } from "node:fs";
import { type Data, type RepositoryFiles, readMarkdown, readYaml } from "@plumbmark/core";
import { SMALL, starter } from "../documents/repository.js";

/** Parts the small build names. */
const NAMED = new Set([
  ...["tile-500-p3.1", "cord-12-3", "power-jumper", "cat6-solid", "data-jumper", "processor-6", "playback-computer"],
  ...["hdmi-cable", "beam-clamp", "wire-rope-1-4", "pipe-collar", "steel-safety-1-8", "hanging-bar-500"],
]);

/** Their catalogue and the stock, so that thousands of cases do not read the whole starter. */
function catalogue(): string {
  const all = starter().parts.flatMap(({ text }) => Object.entries(readYaml(text).data as object));
  return all
    .filter(([name]) => NAMED.has(name))
    .map(
      ([name, part]) => `${name}: ${JSON.stringify(part).replaceAll(/"([a-z-]+)":/gu, "$1: ")}
`,
    )
    .join("");
}

export const PARTS = catalogue();

export const STOCK = `lots:\n  lot-2431: {panel: tile-500-p3.1, batch: "24-31", count: 40, bought: 2025-11-03, at: "Unit 4, bay A"}\n`;

/** The defaults of the product with a small catalogue. */
export const around: RepositoryFiles = {
  parts: [{ path: "parts/all.yaml", text: PARTS }],
  stock: { path: "stock.yaml", text: STOCK },
  documents: [],
};

/** The starter's documents and the small build. */
export const documents: readonly string[] = [SMALL, SMALL, SMALL, ...starter().documents.map(({ text }) => text)];

const yamlOf = (text: string): readonly [yaml: string, body: string] => {
  const place = readMarkdown(text).frontMatter as { from: number; to: number };
  return [text.slice(place.from, place.to), text.slice(text.indexOf("\n---", place.to - 1) + 4)];
};

/** Front matter as data, and the body, of every document. */
export const taken: readonly { readonly data: Data; readonly body: string }[] = documents.map((text) => {
  const [yaml, body] = yamlOf(text);
  return { data: readYaml(yaml).data, body };
});

export const HOUSE = starter().houseStandard?.text as string;

/** A house standard that uses what there is to use. */
export const RICH = readFileSync(new URL("rich-standard.yaml", import.meta.url), "utf8");

export const TODAY = "2026-11-25";
