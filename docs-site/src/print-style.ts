import type { Published } from "./documents.js";
import type { Site } from "./site.js";
import { stampOf } from "./stamp.js";

/** Words as a string of CSS: every sign but the plainest by its number (CSS Syntax Level 3, 4.3.7), so that none ends it. */
const quoted = (words: string): string =>
  `"${words.replace(/[^A-Za-z0-9 .-]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `)}"`;

export const printStylePath = ({ page }: Pick<Published, "page">): string => page.replace(/\.html$/u, "/print.css");

/** What stands at the foot of every printed page of a sheet: a loose or outdated one is to be known for what it is. */
export const printStyle = (document: Published, site: Site): ReadonlyMap<string, string> =>
  new Map([
    [
      printStylePath(document),
      `@page { @bottom-left { content: ${quoted(stampOf(document, site))}; font: 8pt sans-serif; } }\n`,
    ],
  ]);
