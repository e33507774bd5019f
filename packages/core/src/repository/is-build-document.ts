/** Whether a Markdown file is a build document: its front matter has the key `build`, or was meant to and cannot be read. */
export const isBuildDocument = (text: string): boolean =>
  /^---[ \t]*$[\s\S]*?^(?:\{\s*)?["']?build["']?\s*:/mu.test(text.slice(0, 200_000));
