import type { Mistake } from "../document/mistake.js";
import type { CheckEntry } from "./record.js";

export const mistakeEntry = (mistake: Mistake, level: "shall"): CheckEntry => ({
  rule: mistake.rule,
  level,
  outcome: "fails",
  at: { path: mistake.path, ...mistake.place },
  says: mistake.says,
  mend: mistake.mend,
  sources: [],
});
