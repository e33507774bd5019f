import { type DocumentEntry, type InspectionRecord, type StandardEntry, totalsOf } from "@plumbmark/core";
import type { Check } from "../report/form.js";
import type { NamedRecord } from "./read-record.js";
import { type Recorded, sharedOver } from "./shared.js";

const under = (name: string, file: string): string => `${name}/${file}`;

/** A document of one repository, with paths that tell it from those of the others. */
const moved = (name: string, document: DocumentEntry): DocumentEntry => ({
  ...document,
  file: under(name, document.file),
  ...(document.standards ? { standards: document.standards.map((file) => under(name, file)) } : {}),
});

const standardsOf = ({ name, record }: NamedRecord): readonly StandardEntry[] =>
  record.standards.map((standard) => ({
    ...standard,
    ...(standard.file === undefined ? {} : { file: under(name, standard.file) }),
    folder: standard.folder === undefined ? name : under(name, standard.folder),
  }));

const twinCheck = (build: string, others: readonly string[]): Check => ({
  rule: "document.identity",
  level: "shall",
  outcome: "fails",
  at: { path: "build", line: 1, column: 1, endLine: 1, endColumn: 1 },
  says: `${others.join(" and ")} ${others.length === 1 ? "is" : "are"} called ${build}, too.`,
  mend: "Give each build a name of its own.",
  sources: [],
});

const withCheck = (document: DocumentEntry, check: Check): DocumentEntry => ({
  ...document,
  verdict: "not ready",
  counts: {
    ...document.counts,
    checks: document.counts.checks + 1,
    [check.outcome]: document.counts[check.outcome] + 1,
  },
  checks: [check, ...document.checks],
});

/** A name that documents of other repositories have, too, stands against each of them. */
function judged(all: readonly Recorded[]): readonly DocumentEntry[] {
  const names = new Map<string, Recorded[]>();
  for (const each of all) {
    const { build } = each.document;
    if (build !== undefined) names.set(build, [...(names.get(build) ?? []), each]);
  }
  const shared = sharedOver(all);
  return all.map(({ from, document: given }) => {
    const document = (shared.get(given.file) ?? []).reduce(withCheck, given);
    const twins = document.build === undefined ? [] : (names.get(document.build) ?? []);
    const others = twins.filter((twin) => twin.from !== from).map((twin) => twin.document.file);
    return others.length === 0 ? document : withCheck(document, twinCheck(document.build as string, others));
  });
}

/** One record of several repositories. Their names are those of the records and have to differ. */
export function collated(records: readonly NamedRecord[]): InspectionRecord {
  const documents = judged(
    records.flatMap(({ name, record }) =>
      record.documents.map((document) => ({
        ...{ from: name, holdings: record.holdings },
        document: moved(name, document),
      })),
    ),
  );
  return {
    record: 2,
    standard: [...new Set(records.map(({ record }) => record.standard))].join("; "),
    standards: records.flatMap(standardsOf),
    documents,
    totals: totalsOf(documents),
  };
}
