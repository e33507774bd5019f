import {
  conductorResistance,
  given,
  type Known,
  loadCurrent,
  phasorDifference,
  register,
  slingLegLoad,
  threePhaseCurrent,
} from "@plumbmark/calc";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { reference } from "./check.js";

describe("legs of a supply with loads of every sort", () => {
  const mixed = "industrialmonitordirect.com, mixed connections";
  const lineToLine = loadCurrent.compute({ S: 100, V: 208 });
  const toNeutral = loadCurrent.compute({ S: 100, V: 120 });
  const balanced = threePhaseCurrent.compute({ S: 100, V: 208 });
  reference({
    name: "6-E4: plain sums of legs A, B and C",
    source: mixed,
    basis: "published",
    got: () => [lineToLine + balanced, toNeutral + balanced, lineToLine + balanced],
    printed: [0.758, 1.11, 0.758],
    within: 0.002,
    because: "the parts are cut to three places before they are added",
  });
  // The line-to-line current stands 30° off the line-to-neutral one; taken away from behind it is added.
  const vector = () =>
    phasorDifference({ amperes: balanced, degrees: 0 }, { amperes: lineToLine, degrees: 150 }).amperes;
  reference({
    name: "6-E4: leg A by vectors",
    source: mixed,
    basis: "arithmetic",
    got: vector,
    printed: 0.734,
    within: 0.002,
  });
  test("6-E4: the plain sum is never below the vector sum", () =>
    expect(lineToLine + balanced).toBeGreaterThanOrEqual(vector()));
});

describe("figures that look alike and are not", () => {
  const ohms = (mm2: number, celsius?: number) =>
    (conductorResistance(given(mm2, "conductor"), "stranded", celsius) as Known).value * 1000;
  reference({
    name: "2.5 mm² class 5 at 20 °C is the figure of the standard",
    source: "IEC 60228",
    basis: "published",
    got: () => ohms(2.5, 20),
    printed: 7.98,
    within: 1e-9,
  });
  reference({
    name: "in service it is not: at 70 °C it is a fifth more",
    source: "7.98 × (1 + 0.00393 × 50)",
    basis: "arithmetic",
    got: () => ohms(2.5),
    printed: 9.55,
    within: 0.005,
  });
  test("a maximum at 20 °C is never used as it stands beside a figure of 75 °C", () => {
    for (const mm2 of [0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25]) {
      const share = ohms(mm2) / ohms(mm2, 20);
      expect(share).toBeGreaterThan(1.18);
      expect(share).toBeLessThan(1.2);
    }
  });
  reference({
    name: "2,000 lb on two legs at 60° from horizontal is 1,154.7 lb a leg, not 2,000",
    source: "W ÷ (2 sin 60°); a web example divides by the cosine of the wrong angle",
    basis: "arithmetic",
    got: () => slingLegLoad.compute({ W: 2000, n: 2, α: 60 }),
    printed: 1154.7,
    within: 0.05,
  });
});

describe("what no source at hand says is not said", () => {
  const { sources } = register(rules);
  const named = (wanted: RegExp) =>
    sources.filter(({ source }) => wanted.test(`${source.document} ${source.clause ?? ""}`));
  test("EN 17115 is about trusses: no notional load rests on it", () => expect(named(/17115/u)).toEqual([]));
  test("no design factor is given to ANSI E1.6-1, E1.4-1 or EN 17206, whose figures nobody here has seen", () => {
    const given = named(/E1\.[46]|17206/u).filter(({ source }) => /\d ?(?::|to) ?1\b|factor of \d/u.test(source.says));
    expect(given).toEqual([]);
  });
  test("note numbers of the NEC and letters of 210.23 stand in no rule's words", () => {
    for (const { states, why, judged } of notEmpty(rules))
      expect(`${states} ${why} ${judged}`).not.toMatch(/note (?:no\. ?)?\d|210\.23/iu);
  });
});
