import {
  asStock,
  type CheckEntry,
  type Mistake,
  type OpenRepository,
  openRepository,
  type RepositoryFiles,
  type Rule,
  type SourceFile,
} from "@plumbmark/core";
import type { Case, CaseContext } from "./case.js";

const TODAY = "2027-01-01";

const file = (path: string, text: string | undefined): SourceFile | undefined =>
  text === undefined ? undefined : { path, text };

function filesOf({ documents, ...own }: Case, shared: CaseContext): RepositoryFiles {
  const { parts = [], stock = [], papers = [], surveys = [], houseStandard } = { ...shared, ...own };
  const standardFile = file("house-standard.yaml", houseStandard);
  const texts = typeof documents === "string" ? { "builds/case.md": documents } : documents;
  return {
    parts: typeof parts === "string" ? [{ path: "parts/parts.yaml", text: parts }] : parts,
    papers,
    surveys: typeof surveys === "string" ? [{ path: "venues/venue.md", text: surveys }] : surveys,
    documents: Object.entries(texts).map(([path, text]) => ({ path, text })),
    ...asStock(typeof stock === "string" ? [{ path: "stock.yaml", text: stock }] : stock),
    ...(standardFile ? { houseStandard: standardFile } : {}),
  };
}

/** One check with the document it is about. */
export type FoundCheck = CheckEntry & { readonly file: string };

/** Result of a rule, and what is wrong with the case itself. */
export interface CaseRun {
  readonly checks: readonly FoundCheck[];
  readonly slips: readonly string[];
}

/** Mistakes of the documents, the catalogue, the surveys and the stock list, with the file they stand in. */
const mistakesIn = (repository: OpenRepository): readonly (Mistake & { readonly file: string })[] => {
  const { documents, catalogue, stock, surveys } = repository;
  const inFile = (file: string, mistakes: readonly Mistake[]) => mistakes.map((each) => ({ ...each, file }));
  return [
    ...documents.flatMap((file) => inFile(file, repository.model(file).mistakes)),
    ...[...catalogue.mistakes].flatMap(([file, found]) => inFile(file, found)),
    ...[...surveys.mistakes].flatMap(([file, found]) => inFile(file, found)),
    ...[...stock.mistakes].flatMap(([file, found]) => inFile(file, found)),
  ];
};

/** Runs a rule on the documents of a case. What fails in the rule is thrown. */
export function runCase(rule: Rule, trial: Case, shared: CaseContext): CaseRun {
  const { today = TODAY, known = [] } = { ...shared, ...trial };
  // Frozen, so that a rule that changes what it looks at fails.
  const options = { today, known: [...known, rule.id], frozen: true, keep: "models", prose: true } as const;
  const repository = openRepository(filesOf(trial, shared), [], options);
  // As a plugin's: what it yields is looked at before it is judged.
  const tried = { ...rule, plugin: "tried out" };
  const checks = repository.documents.flatMap((each) =>
    repository.run(tried, each).map((check) => ({ ...check, file: each })),
  );
  const failed = checks.find((check) => check.rule !== rule.id);
  if (failed) throw new Error(failed.says);
  const found = mistakesIn(repository);
  const own = found
    .filter((each) => each.rule === rule.id)
    .map(
      ({ file: where, path, place, says, mend }): FoundCheck => ({
        ...{ rule: rule.id, level: "shall", outcome: "fails", at: { path, ...place }, says, mend, sources: [] },
        file: where,
      }),
    );
  // Only a document's own rules are about slips; for any other a slip must not be what makes the case come out.
  const slips = rule.id.startsWith("document.")
    ? []
    : found.map(({ file: where, place, says }) => `${where}:${place.line}:${place.column}: ${says}`);
  return { checks: [...checks, ...own], slips };
}
