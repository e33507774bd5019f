import { type Content, h } from "./html.js";

/** `M_r` and `W_pl`, but no word with a line within it such as `max_count`. */
const SYMBOL = /(?<![\p{L}\p{Nd}_])(\p{L})_([\p{L}\p{Nd}]{1,3})(?![\p{L}\p{Nd}_])/u;

/** Words of ours in parts; `below` makes what a symbol ends in, which the formulas of a rule's page set below the line. */
export const withBelow = <Part>(text: string, below: (part: string) => Part): readonly (string | Part)[] =>
  // Nearly no step has a symbol of that kind, and there are thousands of steps.
  text.includes("_") ? text.split(SYMBOL).map((part, index) => (index % 3 === 2 ? below(part) : part)) : [text];

export const subscripts = (text: string): Content => withBelow(text, (part) => h("sub", part));
