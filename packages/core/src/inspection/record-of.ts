import { codeOf } from "../approval/code.js";
import type { Mistake } from "../document/mistake.js";
import { type SourceFile, stockFiles } from "../repository/files.js";
import { writtenStock } from "../repository/stock.js";
import type { StandardFile } from "../standard/file.js";
import { mistakeEntry } from "./mistake-entry.js";
import { countsOf, type DocumentEntry, type InspectionRecord, type StandardEntry, totalsOf } from "./record.js";
import type { Snapshot } from "./snapshot.js";

const fileEntry = ({ path: file, text }: SourceFile, mistakes: readonly Mistake[]): DocumentEntry => {
  const checks = mistakes.map((mistake) => mistakeEntry(mistake, "shall", text));
  return { file, verdict: "not ready", counts: countsOf(checks), checks };
};

const standardEntry = ({ file, folder, settings }: StandardFile): StandardEntry => ({
  name: settings.name,
  ...(file === undefined ? {} : { file }),
  ...(folder === "" ? {} : { folder }),
  ...(settings.edition === undefined ? {} : { edition: settings.edition }),
  ...(settings["in-force"] === undefined ? {} : { "in-force": settings["in-force"] }),
});

export function recordOf(context: Snapshot, entries: readonly DocumentEntry[]): InspectionRecord {
  const { files, standards } = context;
  const documents = [...entries];
  const stock = stockFiles(files);
  const others = new Map([...files.parts, ...(files.surveys ?? []), ...stock].map((file) => [file.path, file]));
  for (const [path, mistakes] of [
    ...context.catalogue.mistakes,
    ...context.surveys.mistakes,
    ...context.stock.mistakes,
  ])
    documents.push(fileEntry(others.get(path) ?? { path, text: "" }, mistakes));
  return {
    record: 2,
    standard: context.standard.name,
    standards: [standards.root, ...standards.folders].map(standardEntry),
    ...(stock.length > 0 ? { holdings: codeOf(JSON.stringify(writtenStock(stock))) } : {}),
    documents,
    totals: totalsOf(documents),
  };
}
