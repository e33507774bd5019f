export type { CheckEntry as Check, DocumentEntry } from "@plumbmark/core";

export const SAFETY =
  "This inspection supports, and does not replace, local codes, the maker's instructions and the judgement of licensed electricians, engineers and qualified riggers.";

/** Data as JSON for another program: indented, with a newline at the end. */
export const json = (data: unknown): string => `${JSON.stringify(data, undefined, 2)}\n`;
