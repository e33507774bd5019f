import type { WorkingEntry } from "@plumbmark/core";

/** A working with every line once: panels of one kind lead to the same line many times over. */
export function distinct(working: readonly WorkingEntry[]): readonly WorkingEntry[] {
  const seen = new Map<string, WorkingEntry>();
  for (const line of working) {
    const key = `${line.formula}\n${line.with}`;
    if (!seen.has(key)) seen.set(key, line);
  }
  return [...seen.values()];
}
