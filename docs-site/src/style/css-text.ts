/** Words as a string of CSS: every sign but the plainest by its number (CSS Syntax Level 3, 4.3.7), so that none ends it. */
export const cssText = (words: string): string =>
  `"${words.replace(/[^A-Za-z0-9 .()-]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `)}"`;
