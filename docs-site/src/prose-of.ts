import { scheduleNamed } from "@plumbmark/core";
import { h } from "hastscript";
import type { Published } from "./documents.js";
import { drawingInProse, drawingLink } from "./drawings-section.js";
import { type Content, linkTo } from "./page.js";
import { prose } from "./prose.js";
import type { Figure } from "./prose-figures.js";
import { scheduleAt } from "./schedules.js";
import type { Site } from "./site.js";

/** From a link in one document to the page of the other document it names. */
const resolver =
  (documents: readonly Published[], { entry, page }: Published) =>
  (href: string) => {
    try {
      const base = new URL(entry.file.split("/").map(encodeURIComponent).join("/"), "file:///");
      const { pathname, hash, protocol } = new URL(href, base);
      const target = documents.find(({ entry: { file } }) => `/${file}` === decodeURIComponent(pathname));
      return protocol === "file:" && target ? linkTo(page, target.page) + hash : undefined;
    } catch {
      // Neither an address nor a path: it leads nowhere.
      return undefined;
    }
  };

/** Tables and drawings in place of links to them. */
function figures(document: Published): Figure {
  const drawing = drawingInProse(document);
  return (of, words) => {
    const name = scheduleNamed(of);
    return name === undefined ? drawing(of) : scheduleAt(document, name, words);
  };
}

/** What the author wrote below the front matter. */
export const proseOf = (document: Published, { documents }: Site): Content =>
  document.build &&
  h("div", { class: "prose" }, [
    ...prose(
      document.build.markdown.tree,
      document.title,
      (href) => drawingLink(document, href) ?? resolver(documents, document)(href),
      figures(document),
    ),
  ]);
