import { inject } from "vitest";
import { some } from "../run/some.js";

export const SCHEMES = ["light", "dark"] as const;

const { deep, seed } = inject("effort");
const isSheet = (path: string): boolean => path.startsWith("builds/");

/** In the dark, where all pages have the colours of one style, so many pages that are no sheets, others each time. */
const IN_THE_DARK = 3;

/**
 * Pages and how bright they are, for what looks at every element: a sheet has thousands of them, so that an ordinary run
 * takes one sheet in each scheme, others each time; a deep run takes all.
 */
export function inSchemes(paths: readonly string[]): readonly (readonly [string, (typeof SCHEMES)[number]])[] {
  const [sheets, others] = [paths.filter(isSheet), paths.filter((path) => !isSheet(path))];
  const dark = new Set(some(others, IN_THE_DARK, seed));
  const isTaken = (path: string, at: number): boolean => {
    if (deep) return true;
    if (isSheet(path)) return sheets.indexOf(path) === (seed + at) % sheets.length;
    return at === 0 || dark.has(path);
  };
  return SCHEMES.flatMap((scheme, at) =>
    paths.filter((path) => isTaken(path, at)).map((path) => [path, scheme] as const),
  );
}
