import { useNotice } from "@plumbmark/core";
import type { PublishedDocument } from "./published-document.js";
import type { Site } from "./site.js";

/** What a loose page or file belongs to: build, number of its sheet, revision, status, day. */
export const identityLine = (
  { entry, number }: Pick<PublishedDocument, "entry" | "number">,
  { today }: Pick<Site, "today">,
): string =>
  [
    entry.build ?? entry.file,
    `sheet ${number}`,
    `revision ${entry.revision ?? "not stated"}`,
    entry.status ?? "status not stated",
    `inspected ${today}`,
  ].join(" · ");

/** The words that go wherever figures of a document go that must not be built from; undefined for one that is ready. */
export const noticeOf = ({ entry }: Pick<PublishedDocument, "entry">): string | undefined => useNotice(entry);
