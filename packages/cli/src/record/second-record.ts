import type { Data } from "@plumbmark/core";

type Group = Readonly<Record<string, Data>>;

const isGroup = (data: Data | undefined): data is Group =>
  typeof data === "object" && data !== null && !Array.isArray(data);

/** A draft was called ready in the first form of the record. */
const document = (entry: Data): Data =>
  isGroup(entry) && entry.status === "draft" && entry.verdict === "ready" ? { ...entry, verdict: "draft" } : entry;

/** `ready` counted the drafts that were called so. */
function totals(all: Data | undefined, documents: readonly Data[]): Data | undefined {
  if (!isGroup(all) || typeof all.ready !== "number") return all;
  const drafts = documents.filter((each) => isGroup(each) && each.verdict === "draft").length;
  return { ...all, ready: Math.max(0, all.ready - drafts), draft: drafts };
}

/**
 * A record of the first form as one of the second, which only has more in it: the verdict `draft`, and how many drafts
 * there are. Anything else is given back as it is, to be refused where it is no record.
 */
export function asSecond(data: Data): Data {
  if (!isGroup(data) || data.record !== 1 || !Array.isArray(data.documents)) return data;
  const documents = (data.documents as readonly Data[]).map(document);
  const summed = totals(data.totals, documents);
  return { ...data, record: 2, documents, ...(summed === undefined ? {} : { totals: summed }) };
}
