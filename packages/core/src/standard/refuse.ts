import { StandardError } from "../inspection/judging/settings.js";
import type { StandardMistake } from "./file.js";

/** @throws StandardError with every mistake, each with file, line and column. */
export function refuse(mistakes: readonly StandardMistake[]): void {
  if (mistakes.length === 0) return;
  throw new StandardError(
    mistakes.map(({ file, place, says, mend }) => `${file}:${place.line}:${place.column}: ${says} ${mend}`).join("\n"),
  );
}
