import { type Content, h } from "./html.js";

/** A sentence of ours with what stands in backticks set as code. */
export const inlineCode = (text: string): Content =>
  text.split("`").map(
    (part, index, all): Content =>
      // The last of an even number of parts has no backtick after it: it stands as it is.
      index % 2 === 1 && index < all.length - 1 ? h("code", part) : index % 2 === 1 ? `\`${part}` : part,
  );
