import { isSchedule } from "@plumbmark/core";
import type { OpenedFile } from "./opened.js";

/** The folder a docs repository is published to, unless another is named. */
export const SITE = "site";

/** A place on the published site. */
export interface PageLink {
  /** The page, from the root of the repository. */
  readonly page: string;
  /** Where on it. */
  readonly fragment?: string;
}

type Published = Pick<OpenedFile, "pages">;

const there = ({ pages }: Published, page: string): string | undefined => (pages?.has(page) ? page : undefined);

/** The page of a rule; undefined where none is published. */
export const publishedRule = (published: Published, id: string): string | undefined =>
  there(published, `${SITE}/rules/${id}.html`);

/** Where on the sheet of a document its figures, schedules and drawings are; undefined where no sheet is published. */
export function publishedFigure(file: OpenedFile, of: string, before: readonly string[]): PageLink | undefined {
  const build = file.model?.build;
  const name = build?.reader.text("build");
  const page = name === undefined ? undefined : there(file, `${SITE}/builds/${name}.html`);
  if (page === undefined || !build) return undefined;
  const [kind, rest = ""] = [of.split(".", 1)[0], of.slice(of.indexOf(".") + 1)];
  if (kind === "schedules") return isSchedule(rest) ? { page, fragment: `Schedule-${rest}` } : undefined;
  if (kind === "drawings") return build.drawings.includes(rest) ? { page, fragment: `Drawn-${rest}` } : undefined;
  if (!build.valueAt(of)) return undefined;
  // Figures are numbered on the sheet as they stand in the text.
  const number = 1 + before.filter((each) => build.valueAt(each)).length;
  return { page, fragment: `Quoted-${number}` };
}
