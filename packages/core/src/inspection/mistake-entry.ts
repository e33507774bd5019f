import type { Mistake } from "../document/mistake.js";
import { mendsOfMistake } from "../mends/mend.js";
import type { CheckEntry } from "./record.js";

/** @param text of the file the mistake is in */
export function mistakeEntry(mistake: Mistake, level: "shall", text: string): CheckEntry {
  const mends = mendsOfMistake(mistake, text);
  return {
    rule: mistake.rule,
    level,
    outcome: "fails",
    at: { path: mistake.path, ...mistake.place },
    says: mistake.says,
    mend: mistake.mend,
    ...(mends.length > 0 ? { mends } : {}),
    sources: [],
  };
}
