import type { CheckEntry } from "@plumbmark/core";
import { chosen } from "./choose.js";
import type { Drafted } from "./draft.js";
import type { Option, OutOfIt } from "./option.js";

/**
 * Options that were judged by more rules than a draft knows of: one that fails a requirement falls out with what the rule
 * says, what others are advised or leave open is told of them.
 * @param judge what does not hold of an option by those rules
 */
export function judgedAgain(drafted: Drafted, judge: ReadonlyMap<Option, readonly CheckEntry[]>): Drafted {
  const fallen: OutOfIt[] = [];
  const kept = drafted.options.flatMap((option): readonly Option[] => {
    const checks = judge.get(option) ?? [];
    const fails = checks.filter(({ outcome }) => outcome === "fails");
    const bad = fails.find(({ level }) => level === "shall");
    const { scheme, advised, open } = option;
    if (bad) {
      const { columns, rows, panel, variant } = scheme;
      fallen.push({ panel, columns, rows, variant, rule: bad.rule, says: bad.says });
      return [];
    }
    const more = fails.filter(({ level }) => level === "should");
    const unsure = checks.filter(({ outcome }) => outcome === "open").length;
    return more.length + unsure === 0 ? [option] : [{ ...option, advised: [...advised, ...more], open: open + unsure }];
  });
  const { options, trades } = chosen(kept, kept.length);
  return {
    ...drafted,
    options,
    trades: fallen.length === 0 ? drafted.trades : trades,
    fellOut: [...drafted.fellOut, ...fallen],
  };
}
