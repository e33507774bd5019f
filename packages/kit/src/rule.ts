import type { Rule } from "@plumbmark/core";

/** Declares a rule. Its work is a generator that yields one check for each thing it looks at, holding or not. */
export const rule = (definition: Rule): Rule => definition;
