import { expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { chosen, EVERY, run, scratch, stepsOf, tree } from "./command.js";
import { isWhole, triedWritings, withoutLeft } from "./writings.js";

// The disk refuses any one step of a command that writes, or every step from one on: afterwards everything is as it
// was, or as it was to become; status 2 says where and why; and the next run does what this one could not.

const REFUSALS = [
  { code: "ENOSPC", on: true, why: "no room left" },
  { code: "EIO", on: false, why: "disk reports a fault" },
  { code: "EROFS", on: true, why: "read-only" },
  { code: "EACCES", on: false, why: "no right" },
] as const;

const cases = (steps: number) =>
  chosen(steps).flatMap((at) =>
    (EVERY ? REFUSALS : [REFUSALS[at % REFUSALS.length] as (typeof REFUSALS)[number]]).map((refusal) => ({
      at,
      ...refusal,
    })),
  );

test.for(notEmpty(triedWritings))(
  "%s: no step of it leaves anything half done",
  { timeout: EVERY ? 900_000 : 120_000 },
  ([, writing]) => {
    const { words, before, names } = writing;
    const model = scratch();
    before(model);
    const was = tree(model);
    const steps = stepsOf(model, words);
    const is = tree(model);
    expect(steps).toBeGreaterThan(0);
    for (const { why, ...fault } of cases(steps)) {
      const folder = scratch();
      before(folder);
      const { status, err } = run(folder, words, fault);
      const now = tree(folder);
      const told = `step ${fault.at} of ${steps}, ${fault.code}: ${err}`;
      if (status === 0) expect(withoutLeft(now, is), told).toEqual(is);
      else {
        expect(status, told).toBe(2);
        if (writing.eachByItself) expect(now, told).toSatisfy((each) => isWhole(writing, each, was, is));
        else expect(withoutLeft(now, was), told).toEqual(was);
        expect(err, told).toContain(names);
        expect(err, told).toContain(why);
        expect(err, told).not.toMatch(/mistake in Plumbmark|\n {4}at /u);
        expect(err.trim().split("\n"), told).toHaveLength(2);
      }
      run(folder, words);
      expect(tree(folder), told).toEqual(is);
    }
  },
);
