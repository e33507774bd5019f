import type { Markdown } from "@plumbmark/core";
import type { ElementContent, Root } from "hast";
import rehypeSanitize, { defaultSchema } from "rehype-sanitize";
import rehypeSlug from "rehype-slug";
import remarkRehype from "remark-rehype";
import { unified } from "unified";
import { type FigureFor, paragraph, withFigures } from "./figures.js";
import { headings } from "./headings.js";
import type { PictureFor } from "./pictures.js";
import type { QuoteFor } from "./quotes.js";
import { tidy } from "./tidy.js";

/** Where a relative link of the author leads on the site; undefined when there is no such page. */
export type ResolveLink = (href: string) => string | undefined;

/** What stands in place of what an author names: links, quoted figures, pictures, and tables and drawings. */
export interface Replacements {
  readonly link: ResolveLink;
  readonly quote: QuoteFor;
  readonly picture: PictureFor;
  readonly figure: FigureFor;
}

// The one thing that is let through for ourselves: the mark of a figure, see prose-figures.ts.
const attributes = {
  ...defaultSchema.attributes,
  div: [...(defaultSchema.attributes?.div ?? []), "dataFigure"],
};

// Links to what is computed get through, too; `tidy` leaves none of them as it is.
const protocols = { ...defaultSchema.protocols, href: [...(defaultSchema.protocols?.href ?? []), "calc"] };

// Raw HTML is dropped on the way to hast; the sanitizer then lets through only harmless elements, attributes and links.
const processor = unified()
  .use(remarkRehype, { clobberPrefix: "", handlers: { paragraph } })
  .use(rehypeSanitize, { ...defaultSchema, clobberPrefix: "", attributes, protocols })
  .use(rehypeSlug);

/** The author's prose as content below a heading of level 2; `title` is left out where it only repeats the page's. */
export function prose(tree: Markdown["tree"], title: string, named: Replacements): readonly ElementContent[] {
  const root = processor.runSync(tree) as Root;
  const content = root.children.filter((node): node is ElementContent => node.type !== "doctype");
  return headings(withFigures(tidy(content, named), named.figure), title);
}
