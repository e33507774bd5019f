import { scheduleNamed } from "@plumbmark/core";
import { type Content, h } from "../html/html.js";
import { linkTo } from "../pages/page.js";
import { drawingInProse, drawingLink } from "../sheet/drawings-section.js";
import { scheduleAt } from "../sheet/schedules.js";
import type { PublishedDocument } from "../site/published-document.js";
import { withinRepository } from "../site/repository-path.js";
import type { Site } from "../site/site.js";
import type { FigureFor } from "./figures.js";
import { pictures } from "./pictures.js";
import { prose, type ResolveLink } from "./prose.js";
import { quotes } from "./quotes.js";

/** From a link in one document to the page of the other document it names. */
const pageOf =
  ({ places }: Site, { entry, page }: PublishedDocument): ResolveLink =>
  (href) => {
    const target = withinRepository(href, entry.file);
    const found = target && places.get(target.path);
    return found && linkTo(page, found.page) + target.hash;
  };

/** Tables and drawings in place of links to them. */
function figures(document: PublishedDocument, site: Site): FigureFor {
  const drawing = drawingInProse(document, site);
  return (of, words) => {
    const name = scheduleNamed(of);
    return name === undefined ? drawing(of) : scheduleAt(document, name, words);
  };
}

/** What the author wrote below the front matter. */
export function proseOf(document: PublishedDocument, site: Site): Content {
  if (!document.build) return undefined;
  const page = pageOf(site, document);
  const own = {
    link: (href: string) => drawingLink(document, site, href) ?? page(href),
    quote: quotes(document),
    picture: pictures(document, site),
    figure: figures(document, site),
  };
  return h("div", { class: "prose" }, prose(document.build.markdown.tree, document.title, own));
}
