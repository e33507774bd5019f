import { type Content, h } from "../../html/html.js";
import { inlineCode } from "../../html/inline-code.js";
import { subscripts } from "../../html/subscripts.js";
import type { SiteWithDocuments } from "../../site/site.js";
import { linkTo } from "../page.js";

const NAME = /([a-z]+(?:\.[a-z]+(?:-[a-z]+)*)+)/u;

/** A sentence of a rule with the rules it names as links to their pages; one reads on there. */
export function ruleMentions(text: string, path: string, { rulePaths }: Pick<SiteWithDocuments, "rulePaths">): Content {
  const linked = (part: string): Content => {
    const to = rulePaths.get(part);
    return to === undefined || to === path ? part : h("a", { href: linkTo(path, to) }, part);
  };
  // Every other part is what the pattern caught; names within backticks are code and stay so.
  const plain = (part: string): Content =>
    part.split(NAME).map((each, index) => (index % 2 === 1 ? linked(each) : subscripts(each)));
  const parts = inlineCode(text);
  return Array.isArray(parts) ? parts.map((each) => (typeof each === "string" ? plain(each) : each)) : parts;
}
