import { useNotice } from "@plumbmark/core";
import type { PublishedDocument } from "./published-document.js";
import type { Site } from "./site.js";

/** A print in the binder is held against the file by its code. */
const codeWords = ({ state, code }: NonNullable<PublishedDocument["entry"]["approval"]>): string =>
  state === "approved" ? `approved ${code}` : `not approved ${code}`;

/** What a loose page or file belongs to: build, number of its sheet, revision, status, code of its content, day. */
export const identityLine = (
  { entry, number }: Pick<PublishedDocument, "entry" | "number">,
  { today }: Pick<Site, "today">,
): string =>
  [
    entry.build ?? entry.file,
    `sheet ${number}`,
    `revision ${entry.revision ?? "not stated"}`,
    entry.status ?? "status not stated",
    ...(entry.approval ? [codeWords(entry.approval)] : []),
    `inspected ${today}`,
  ].join(" · ");

/** The words that go wherever figures of a document go that must not be built from; undefined for one that is ready. */
export const noticeOf = ({ entry }: Pick<PublishedDocument, "entry">): string | undefined => useNotice(entry);
