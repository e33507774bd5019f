/** What tells the structure of a text that is JSON: a text in quotes, or a sign outside of them. */
const TOKEN = /"(?:[^"\\]|\\.)*"|[{}[\],]/gsu;

/** A key that stands a second time in its group. */
export interface Twice {
  /** Where it stands, from the start of the text. */
  readonly at: number;
  readonly key: string;
}

/**
 * The first key that stands twice in one group of a text that is JSON. RFC 8259, 4, leaves what comes of it to whoever
 * reads it, and two readers may take different values: it has to be told.
 */
export function findKeyTwice(text: string): Twice | undefined {
  /** Keys of the groups around, undefined for a list. */
  const around: (Set<string> | undefined)[] = [];
  let isKey = false;
  TOKEN.lastIndex = 0;
  for (let found = TOKEN.exec(text); found; found = TOKEN.exec(text)) {
    const [token] = found;
    if (token === "{" || token === "[") around.push(token === "{" ? new Set() : undefined);
    else if (token === "}" || token === "]") around.pop();
    const keys = around.at(-1);
    if (isKey && keys && token.startsWith('"')) {
      const key = JSON.parse(token) as string;
      if (keys.has(key)) return { at: found.index, key };
      keys.add(key);
    }
    isKey = token === "{" || (token === "," && keys !== undefined);
  }
  return undefined;
}
