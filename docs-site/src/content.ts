import type { ElementContent } from "hast";

/** What stands in an element: elements, words, lists of them, or nothing. */
export type Content = ElementContent | string | undefined | readonly Content[];

/** Content in the form hastscript takes: no gaps, no lists in lists. */
export const flat = (content: Content): (ElementContent | string)[] =>
  content === undefined
    ? []
    : typeof content === "string"
      ? [content]
      : Array.isArray(content)
        ? content.flatMap(flat)
        : [content as ElementContent];
