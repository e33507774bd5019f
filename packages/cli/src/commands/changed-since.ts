import { type Build, changesBetween, type DocumentEntry, type InspectionRecord, openRepository } from "@plumbmark/core";
import { approvedIn } from "../git/approved-revision.js";
import { sourceAt } from "../git/scope.js";
import { readRepository } from "../repository/read-repository.js";
import type { FileSource } from "../source/source.js";

interface Where {
  readonly root: string;
  readonly standard?: string | undefined;
  readonly today: string;
  /** Where the documents were read from; the disk when nothing is said. */
  readonly source?: FileSource | undefined;
}

/** Each takes a few questions to git; whoever changes a part that hundreds of builds name knows what they did. */
const MOST = 20;

const isStale = ({ approval }: DocumentEntry): boolean => approval?.state === "changed";

/** Gives the model of a document of one state of the repository; undefined where it cannot be read there. */
async function modelsOf({ root, standard, today, source }: Where): Promise<(file: string) => Build | undefined> {
  const { files } = await readRepository({ folder: root, paths: [], standard, today, source });
  const repository = openRepository(files, [], { today });
  return (file) => (repository.documents.includes(file) ? repository.model(file).build : undefined);
}

/** What is another since a document was approved; undefined where git does not know. */
async function changesOf({ file, approval }: DocumentEntry, where: Where, now: (file: string) => Build | undefined) {
  const given = approval?.given;
  const commit = given && (await approvedIn(where.root, file, given));
  if (!commit) return undefined;
  const then = await modelsOf({ ...where, source: await sourceAt(where.root, commit) });
  const [was, is] = [then(file), now(file)];
  // What was committed with the code may have been something else already.
  if (!was || !is || was.approval.code !== given) return undefined;
  return { commit: commit.slice(0, 10), changes: changesBetween(was, is) };
}

function told(entry: DocumentEntry, commit: string, changes: readonly string[]): DocumentEntry {
  const says = `Changed since it was approved in ${commit}: ${changes.join("; ")}.`;
  return {
    ...entry,
    ...(entry.approval ? { approval: { ...entry.approval, changes } } : {}),
    checks: entry.checks.map((check) =>
      check.rule === "document.sign-off" && check.at.path === "approved.code" && check.outcome === "fails"
        ? { ...check, says: `${check.says} ${says}` }
        : check,
    ),
  };
}

/** The record, with what was changed in documents since they were approved, where git knows. */
export async function withChangesSince(record: InspectionRecord, where: Where): Promise<InspectionRecord> {
  const stale = record.documents.filter(isStale);
  if (stale.length === 0 || stale.length > MOST) return record;
  try {
    const now = await modelsOf(where);
    const found = new Map<string, DocumentEntry>();
    for (const entry of stale) {
      const changed = await changesOf(entry, where, now);
      if (changed && changed.changes.length > 0) found.set(entry.file, told(entry, changed.commit, changed.changes));
    }
    return { ...record, documents: record.documents.map((entry) => found.get(entry.file) ?? entry) };
  } catch {
    // A state that cannot be read any more tells nothing; the inspection itself stands.
    return record;
  }
}
