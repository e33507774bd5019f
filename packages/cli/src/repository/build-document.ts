import { isBuildDocument } from "@plumbmark/core";

export const NOT_A_BUILD =
  "A build document is a Markdown file whose front matter, between two lines of `---`, has the key `build`.";

const frontMatter = (text: string): string => /^---[ \t]*(?:\r\n?|\n)([\s\S]*?)(?:[\r\n]---|$)/u.exec(text)?.[1] ?? "";

/**
 * Whether a file is a build document or was meant as one: an empty file where documents are kept, or a front matter
 * that describes faces but whose `build` is missing or misspelt. Leaving those alone would let them pass unseen.
 */
export const isMeantAsBuild = (text: string): boolean =>
  text.trim() === "" || isBuildDocument(text) || /^(?:faces|power|rigging)\s*:/mu.test(frontMatter(text));
