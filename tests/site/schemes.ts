import { inject } from "vitest";

export const SCHEMES = ["light", "dark"] as const;

const { deep, seed } = inject("effort");
const isSheet = (path: string): boolean => path.startsWith("builds/");

/**
 * Pages and how bright they are, for what looks at every element: a sheet has thousands of them, so that an ordinary run
 * takes one sheet in each scheme, others each time; a deep run takes all.
 */
export function inSchemes(paths: readonly string[]): readonly (readonly [string, (typeof SCHEMES)[number]])[] {
  const sheets = paths.filter(isSheet);
  const isTaken = (path: string, at: number): boolean =>
    deep || !isSheet(path) || sheets.indexOf(path) === (seed + at) % sheets.length;
  return SCHEMES.flatMap((scheme, at) =>
    paths.filter((path) => isTaken(path, at)).map((path) => [path, scheme] as const),
  );
}
