import { type InspectionRecord, openRepository, stockFiles } from "@plumbmark/core";
import { partOf } from "../record/part-of.js";
import { NOT_A_BUILD } from "../repository/build-document.js";
import type { DocsRepository } from "../repository/read-repository.js";
import { fromRoot } from "../source/paths.js";
import { Trouble } from "../terminal/trouble.js";
import type { InspectRequest, InspectResult, Means } from "./engine.js";
import { figuresOf } from "./figures.js";
import { inspectScope } from "./inspect-scope.js";
import { type Opened, openWithRules } from "./open.js";

/** Files named on the command line that turned out to be no build documents. */
const leftAloneIn = ({ asked, root }: DocsRepository, record: InspectionRecord): readonly string[] =>
  asked
    .filter(({ folder, path }) => !folder && !record.documents.some(({ file }) => file === fromRoot(root, path)))
    .map(({ written }) => written);

/** What a file is that is read with the builds, and is none. */
function kindOfData({ files }: DocsRepository, path: string): string | undefined {
  const { parts, surveys = [], houseStandard } = files;
  const is = (each: { readonly path: string } | undefined): boolean => each?.path === path;
  if (surveys.some(is)) return "a survey";
  if (parts.some(is)) return "a file of the catalogue";
  if (stockFiles(files).some(is)) return "a file of the holdings";
  return is(houseStandard) ? "the house standard" : undefined;
}

/** A survey or a part is judged by the builds that rest on it. */
function refuseData(repository: DocsRepository): void {
  const { asked, root } = repository;
  const [kind, ...more] = asked.map(({ path }) => kindOfData(repository, fromRoot(root, path)));
  if (kind !== undefined && more.length === 0)
    throw new Trouble(
      `${asked[0]?.written} is ${kind}, and nothing in it is written wrongly. What is in it is judged with the builds that rest on it.`,
      "`plumbmark inspect` judges all builds.",
    );
}

function refuseNothing(repository: DocsRepository, record: InspectionRecord, leftAlone: readonly string[]): void {
  if (record.documents.length > 0) return;
  refuseData(repository);
  const { asked, root, files, settings } = repository;
  const named = leftAlone.length > 0 ? leftAlone : asked.map(({ written }) => written);
  const patterns = files.houseStandard
    ? ` The house standard looks for documents in ${settings.documents.join(", ")}.`
    : "";
  throw new Trouble(`There is no build document in ${named.join(", ") || root}.${patterns}`, NOT_A_BUILD);
}

/** The record with the models behind it, from which weight, power and margin are read. */
function inspectWithFigures(opened: Opened, { today }: InspectRequest): InspectResult {
  const { root, files, rules, wants, unreadable } = opened;
  const gone = unreadable[0];
  if (gone) throw new Trouble(`${gone.path}: ${gone.says}`, gone.mend);
  const repository = openRepository(files, rules, { today, every: true });
  const figures = new Map(repository.documents.map((path) => [path, figuresOf(repository.one(path))]));
  return { root, rules, record: repository.all(), leftAlone: [], wants, figures };
}

/** Inspects a docs repository, or what a change in git touched, and gives the part of the record that was asked for. */
export const inspectBy =
  (means: Means) =>
  async (request: InspectRequest): Promise<InspectResult> => {
    if (request.scope) return inspectScope(request.scope, request, means);
    const opened = await openWithRules(request, means);
    if (request.figures) return inspectWithFigures(opened, request);
    const { root, files, rules, wants, unreadable, cache } = opened;
    const { today, every } = request;
    const whole = await means.judge(files, rules, { today, every }, cache);
    cache?.save();
    const isDocument = new Set(files.documents.map(({ path }) => path));
    const record = partOf(whole, unreadable, (file) => !isDocument.has(file) || wants(file));
    const leftAlone = leftAloneIn(opened, record);
    refuseNothing(opened, record, leftAlone);
    return { root, rules, record, leftAlone, wants, figures: new Map() };
  };
