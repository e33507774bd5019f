import { type Content, h } from "../html/html.js";
import { state } from "../html/state.js";
import { table } from "../html/table.js";
import type { SitePage } from "../pages/page.js";
import { Names } from "../site/names.js";
import type { SiteWithDocuments } from "../site/site.js";
import type { WishEntry } from "./wish-entry.js";

export const WISH_COLUMNS = ["Wish", "What came of it", "Options", "The first", "Venue", "On site"] as const;

/** A style of its own for the foot of printed pages. */
export const DRAFT_FOOT = "wishes/draft.css";

/** Path of the page of each wish; no name of an author's leads out of the folder. */
export function wishPaths(wishes: readonly WishEntry[]): ReadonlyMap<string, string> {
  const names = new Names("draft");
  return new Map(
    wishes.map(({ file }) => [file, `wishes/${names.take(file.replace(/^wishes\/|\.ya?ml$/gu, ""))}.html`]),
  );
}

/** What can be met is a draft and no build: it must not look like one that may be built. */
const OUTCOMES = {
  met: state(["open"], "draft: can be met"),
  "to buy": state(["fails", "should"], "something is to be bought or hired"),
  unmet: state(["fails", "shall"], "cannot be met"),
  unread: state(["open"], "has to be mended first"),
} as const;

const UNSTATED = h("em", "not stated");

/** A day that is broken at a hyphen is read as another. */
const days = (text: string): Content =>
  text
    .split(/(\d{4}-\d{2}-\d{2})/u)
    .map((each, index) => (index % 2 === 1 ? h("span", { class: "whole" }, each) : each));

/** The wishes of the repository with what came of each, for the register. */
export function wishesOf({ wishes = [] }: Pick<SiteWithDocuments, "wishes">): Content {
  if (wishes.length === 0) return undefined;
  const paths = wishPaths(wishes);
  return [
    h("h2", { id: "Wishes" }, "Wishes"),
    h(
      "p",
      "What somebody wants, and what can be made of it: options to put before a client. They are drafts, and no builds.",
    ),
    h(
      "div",
      { class: "rows wishes" },
      table(
        "Wishes",
        WISH_COLUMNS,
        wishes.map(({ file, title, outcome, options, first, venue, onSite }) => [
          h("a", { href: paths.get(file) as string }, title),
          OUTCOMES[outcome],
          String(options),
          first ?? "–",
          venue ?? UNSTATED,
          onSite === undefined ? UNSTATED : days(onSite),
        ]),
      ),
    ),
  ];
}

/** A page for each wish. */
export function wishPages({ wishes = [] }: Pick<SiteWithDocuments, "wishes">): readonly SitePage[] {
  const paths = wishPaths(wishes);
  return wishes.map(({ file, title, venue, onSite, outcome, content }, index) => ({
    path: paths.get(file) as string,
    title,
    number: `3.${String(index + 1).padStart(2, "0")}`,
    styles: [DRAFT_FOOT],
    cells: [
      ["Status", outcome === "unread" ? "not drafted" : "draft"],
      ["Venue", venue],
      ["On site", onSite === undefined ? undefined : days(onSite)],
      ["Wish", h("code", file)],
    ],
    content,
  }));
}
