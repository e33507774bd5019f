import type { ChangedValue } from "@plumbmark/draft";
import { plain, wrap } from "../lines.js";

const NOTHING = "nothing";

/**
 * What is another in a draft than in the build it is like, a line for each value.
 * @param left faces of the build that are not in it
 */
export function changesText(
  like: string,
  changes: readonly ChangedValue[],
  left: readonly string[],
  { width }: { readonly width: number },
): string {
  const lines = changes.map(({ path, was = NOTHING, is = NOTHING }) => `${path}: ${was} → ${is}`);
  const head = `Another than in ${plain(like)}; text, approvals and waivers are not carried over`;
  const rest =
    left.length === 0
      ? []
      : wrap(
          `Other faces of the build are not in it: ${plain(left.join(", "))}. Their circuits, chains and points count as free.`,
          width,
        );
  const folded = lines.flatMap((line) =>
    wrap(plain(line), width - 4).map((each, index) => `${index === 0 ? "  - " : "    "}${each}`),
  );
  return `${[head, ...folded, ...rest].join("\n")}\n`;
}
