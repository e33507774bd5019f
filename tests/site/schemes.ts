import { inject } from "vitest";
import { some } from "../run/some.js";

export const SCHEMES = ["light", "dark"] as const;

const { deep, seed } = inject("effort");
const isSheet = (path: string): boolean => path.startsWith("builds/");

/**
 * Pages and how bright they are, for what looks at every element, of which a page may have thousands. An ordinary run
 * takes one sheet in one scheme, a third of the other pages in the light and one in the dark, where all have the colours of
 * one style: others each time. A deep run takes all.
 */
export function inSchemes(paths: readonly string[]): readonly (readonly [string, (typeof SCHEMES)[number]])[] {
  const [sheets, others] = [paths.filter(isSheet), paths.filter((path) => !isSheet(path))];
  const sheet = sheets[Math.floor(seed / SCHEMES.length) % sheets.length];
  const taken = {
    light: new Set(some(others, Math.ceil(others.length / 3), seed)),
    dark: new Set(some(others, 1, seed + 1)),
  };
  const isTaken = (path: string, scheme: (typeof SCHEMES)[number]): boolean =>
    deep || (path === sheet ? SCHEMES[seed % SCHEMES.length] === scheme : taken[scheme].has(path));
  return SCHEMES.flatMap((scheme) =>
    paths.filter((path) => isTaken(path, scheme)).map((path) => [path, scheme] as const),
  );
}
