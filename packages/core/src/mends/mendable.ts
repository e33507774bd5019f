import type { CheckEntry, MendEntry } from "../inspection/record.js";

/** Whether a change is one that `mend` makes: the one answer, within a line. */
export const isMade = ({ sure, at, becomes }: MendEntry): boolean =>
  sure && at.line === at.endLine && !/[\r\n]/u.test(becomes);

/** Whether `mend` has the one answer to a check; what only follows from a mistake waits for that to be put right. */
export const isMendable = ({ outcome, mends = [], ...check }: CheckEntry): boolean =>
  (outcome === "fails" || outcome === "open") && check["follows-from"] === undefined && mends.some(isMade);
