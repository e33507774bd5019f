import { isMendable } from "@plumbmark/core";
import type { DocumentEntry } from "./form.js";

/** That there is a command for what has one answer, where something has; nothing otherwise. */
export function mendable(
  documents: readonly DocumentEntry[],
  shown: (text: string) => readonly string[],
): readonly string[] {
  const number = documents.reduce((sum, { checks }) => sum + checks.filter(isMendable).length, 0);
  return number === 0 ? [] : shown(`\`plumbmark mend\` can put ${number} of these right; \`--show\` shows how.`);
}
