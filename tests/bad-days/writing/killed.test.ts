import { expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { chosen, EVERY, run, scratch, stepsOf, tree } from "./command.js";
import { isWhole, triedWritings } from "./writings.js";

// The process is ended at any one step, half of a file written: everything is as it was, or as it was to become, and
// the next run does what this one could not and clears away what it left.

const SIGNALS = ["SIGKILL", "SIGTERM", "SIGINT", "SIGHUP"] as const;

test.for(notEmpty(triedWritings))(
  "%s: killed at a step, it leaves nothing half done",
  { timeout: EVERY ? 900_000 : 120_000 },
  ([, writing]) => {
    const { words, before } = writing;
    const model = scratch();
    before(model);
    const was = tree(model);
    const steps = stepsOf(model, words);
    const is = tree(model);
    for (const at of notEmpty(chosen(steps))) {
      const wanted = SIGNALS[at % SIGNALS.length] as (typeof SIGNALS)[number];
      const folder = scratch();
      before(folder);
      const { status, signal } = run(folder, words, { at, signal: wanted });
      const told = `step ${at} of ${steps}, ${wanted}`;
      expect([status, signal], told).toEqual([null, wanted]);
      expect(tree(folder), told).toSatisfy((now) => isWhole(writing, now, was, is));
      run(folder, words);
      expect(tree(folder), told).toEqual(is);
    }
  },
);
