/** A line at the left margin that begins an entry of a block mapping: `faces:`. */
export const ENTRY = /^([A-Za-z][\w-]*):(?=[ \t]|$)/u;
/** What goes on above it, or is nothing: an indented line, a comment, an empty one. */
export const WITHIN = /^(?:[ \t#]|$)/u;

/**
 * The entries of a YAML mapping that have one of these keys, as YAML: two keys of fifteen need not cost what all do.
 * Undefined where lines do not tell what belongs to them; whoever asks then has to read everything.
 */
export function topLevelEntries(yaml: string, keys: readonly string[]): string | undefined {
  const kept: string[] = [];
  const seen = new Set<string>();
  let wanted = false;
  for (const line of yaml.split(/\r\n|\n|\r/u)) {
    const key = ENTRY.exec(line)?.[1];
    if (key === undefined && !WITHIN.test(line)) return undefined;
    if (key !== undefined) {
      if (seen.has(key)) return undefined;
      seen.add(key);
      wanted = keys.includes(key);
    }
    if (wanted) kept.push(line);
  }
  const entries = kept.join("\n");
  // An alias may stand for something in an entry that was left out.
  return /[&*]/u.test(entries) ? undefined : entries;
}
