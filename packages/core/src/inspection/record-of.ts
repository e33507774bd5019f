import { codeOf } from "../approval/code.js";
import type { Mistake } from "../document/mistake.js";
import { readWholeYaml } from "../document/yaml/whole-yaml.js";
import type { SourceFile } from "../repository/files.js";
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
  const others = new Map([...files.parts, ...(files.surveys ?? [])].map((file) => [file.path, file]));
  for (const [path, mistakes] of [...context.catalogue.mistakes, ...context.surveys.mistakes])
    documents.push(fileEntry(others.get(path) ?? { path, text: "" }, mistakes));
  if (files.stock && context.stock.mistakes.length > 0) documents.push(fileEntry(files.stock, context.stock.mistakes));
  return {
    record: 2,
    standard: context.standard.name,
    standards: [standards.root, ...standards.folders].map(standardEntry),
    ...(files.stock ? { holdings: codeOf(JSON.stringify(readWholeYaml(files.stock.text).data)) } : {}),
    documents,
    totals: totalsOf(documents),
  };
}
