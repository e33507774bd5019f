import { openRepository, type RepositoryFiles, type Rule, readSurveys, type SourceFile } from "@plumbmark/core";
import {
  type Brief,
  briefFor,
  type DraftRecord,
  draft,
  draftRecord,
  freePath,
  readWish,
  unknownIn,
  type WishFile,
} from "@plumbmark/draft";
import { type Content, childrenOf, h } from "../html/html.js";
import { inlineCode } from "../html/inline-code.js";
import { wishContent } from "./wish-content.js";
import type { WishEntry, WishOutcome } from "./wish-entry.js";

/** What wishes of a docs repository are drafted from. */
export interface WishesInput {
  readonly files: RepositoryFiles;
  /** Those of plugins are not asked: they run over what is written, and a draft is not. */
  readonly rules: readonly Rule[];
  /** The day of the inspection, `2027-03-05`. */
  readonly today: string;
}

/**
 * So many front matters are weighed for a wish when a site is made; what was not looked at then is said on its page. It is
 * a number and no time, so that the same wish gives the same page everywhere.
 */
const MOST_ASKED = 4000;

const REMARK_OF_PLUGINS =
  "Rules of plugins were not asked: inspect the document once an option is written with `plumbmark draft`.";

interface Said {
  readonly says: string;
  readonly mend: string;
  readonly at: string;
}

const unreadContent = (all: readonly Said[]): Content => [
  h("p", h("b", "Nothing was drafted: the wish has to be mended first.")),
  h(
    "ul",
    all.map(({ at, says, mend }) => h("li", [h("code", at), ": ", inlineCode(says), " ", inlineCode(mend)])),
  ),
];

const unread = ({ file, name }: WishFile, all: readonly Said[]): WishEntry => ({
  file,
  title: name ?? file,
  outcome: "unread",
  options: 0,
  content: childrenOf(unreadContent(all)),
});

function outcomeOf({ options }: DraftRecord): WishOutcome {
  if (options.length === 0) return "unmet";
  return options.some(({ shortfall }) => shortfall.length === 0) ? "met" : "to buy";
}

/** Drafts a wish, and gives what the site shows of it. @throws StandardError when the house standard cannot be used */
export function draftedWish(file: SourceFile, { files, rules: all, today }: WishesInput): WishEntry {
  const rules = all.filter(({ plugin }) => plugin === undefined);
  const read = readWish(file, readSurveys(files.surveys ?? []).byName);
  const { wish } = read;
  if (!wish)
    return unread(
      read,
      read.mistakes.length > 0
        ? read.mistakes.map(({ place, ...rest }) => ({ ...rest, at: `${file.path}:${place.line}:${place.column}` }))
        : [
            {
              at: file.path,
              says: "It is no wish.",
              mend: "A wish is a file of YAML with the keys `wish` and `title`.",
            },
          ],
    );
  const repository = openRepository(files, rules, { today, every: true, accepted: true, keep: "models", turns: false });
  const unknown = unknownIn(wish, repository);
  if (unknown.length > 0)
    return unread(
      read,
      unknown.map(({ path, ...rest }) => ({ ...rest, at: `${file.path}, \`${path}\`` })),
    );
  const path = freePath(new Set(repository.documents), wish.name);
  const brief: Brief = briefFor(wish, {
    repository,
    path,
    isOver: () => brief.desk.counts.asked >= MOST_ASKED,
  });
  const drafted = draft(brief, { name: path.replace(/^.*\/|\.md$/gu, ""), every: false });
  const record = draftRecord(brief, drafted);
  const subjects = drafted.options.map(({ document }) => {
    repository.replace(path, document, "document");
    const { build, system } = repository.model(path);
    return { build, system };
  });
  const remarks = rules.length < all.length ? [REMARK_OF_PLUGINS] : [];
  const [first] = record.options;
  return {
    file: file.path,
    title: wish.title,
    ...(wish.venueName === undefined
      ? {}
      : { venue: repository.surveys.byName.get(wish.venueName)?.title ?? wish.venueName }),
    ...(wish.onSite === undefined ? {} : { onSite: wish.onSite }),
    outcome: outcomeOf(record),
    options: record.options.length,
    ...(first ? { first: `${first.columns} × ${first.rows} ${first.panel}` } : {}),
    content: childrenOf(wishContent({ record, subjects, today, remarks })),
  };
}
