import { readdirSync, readFileSync } from "node:fs";
import { type CheckEntry, openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { isMap, parseDocument } from "yaml";
import { turningValue } from "../../packages/core/src/findings/turns.js";
import { changed, inspectText, SMALL, starter, TODAY } from "./repository.js";

/** A build that stands on the floor and hangs a bridle, so that every rule that names a figure has something to look at. */
const STANDING = changed(
  "    support: flown\n    trim: 11 ft\n",
  "    support: stacked\n    height-above: 0 m\n    base: {depth: 0.6 m, toe: 0.3 m, mass: 20 kg, ballast: 40 kg, ballast-arm: 0.5 m, deck: {rating: 125 lb/ft2, footprint: 2 m x 0.6 m}}\n",
);

/** Where a figure is changed so that a check fails, which rule is to fail, and which figure it names. */
const CASES: readonly (readonly [rule: string, path: string, text: string])[] = [
  [
    "power.supply-range",
    "power.runs.P1.feed.length",
    changed("cord-12-3, length: 35 ft", "cord-12-3, length: 2000 ft"),
  ],
  ["power.voltage-drop", "power.runs.P1.feed.length", changed("cord-12-3, length: 35 ft", "cord-12-3, length: 400 ft")],
  ["power.circuit-load", "power.circuits.c1.other-load", changed("other-load: none", "other-load: 2000 VA")],
  ["power.inrush", "power.circuits.c1.rides-through", changed("rides-through: 200 A", "rides-through: 20 A")],
  ["power.cord-ampacity", "power.circuits.c1.breaker", changed("breaker: 20 A", "breaker: 40 A")],
  [
    "data.hop-length",
    "data.chains.D1.feed.length",
    changed("feed: {part: cat6-solid, length: 60 ft}", "feed: {part: cat6-solid, length: 400 ft}"),
  ],
  [
    "data.jumper-reach",
    "data.chains.D1.jumper.length",
    changed("data-jumper, length: 0.9 m", "data-jumper, length: 0.3 m"),
  ],
  ["data.port-load", "picture.rate", changed("rate: 60 Hz", "rate: 600 Hz")],
  ["panels.spares", "faces.header.spares", changed("spares: 2", "spares: 0")],
  ["stock.promised-twice", "faces.header.spares", changed("spares: 2", "spares: 60")],
  ["picture.link-length", "picture.path.2.length", changed("hdmi-cable, length: 6 ft", "hdmi-cable, length: 60 ft")],
  ["rigging.head-room", "faces.header.trim", changed("trim: 11 ft", "trim: 6 ft")],
  [
    "rigging.point-load",
    "rigging.bars.b1.hangs.H1.structure",
    changed("structure: 500 lb}\n        H2", "structure: 30 lb}\n        H2"),
  ],
  [
    "rigging.lift",
    "rigging.lifting.people",
    changed(
      "lifting: {people: 2, from: 30 in, to: 55 in, reach: 14 in",
      "lifting: {people: 1, from: 30 in, to: 70 in, reach: 25 in",
    ),
  ],
  [
    "rigging.stack-stability",
    "faces.header.base.ballast",
    STANDING.replace("    rows: 1", "    rows: 5").replace("ballast: 40 kg", "ballast: 1 kg"),
  ],
  ["rigging.deck-load", "faces.header.base.ballast", STANDING.replace("ballast: 40 kg", "ballast: 9000 kg")],
  ["rigging.column-depth", "faces.header.rows", changed("    rows: 1", "    rows: 14")],
  ["rigging.stack-height", "faces.header.rows", STANDING.replace("    rows: 1", "    rows: 9")],
  [
    "rigging.bar-deflection",
    "rigging.bars.b1.other-load",
    changed("      length: 8 ft\n", "      length: 8 ft\n      other-load: 2000 lb\n"),
  ],
  ["viewing.pitch", "audience.nearest", changed("nearest: 15 ft", "nearest: 2 ft")],
  ["viewing.text", "audience.farthest", changed("farthest: 40 ft", "farthest: 900 ft")],
];

const known = new Map<string, readonly CheckEntry[]>();

/** What a rule finds of a text, by itself; each is asked once. */
function found(text: string, rule: string): readonly CheckEntry[] {
  const key = `${rule}\n${text}`;
  const checks = known.get(key) ?? inspectText(text, { rules: [rule] }).checks.filter((check) => check.rule === rule);
  known.set(key, checks);
  return checks;
}

/** The document with another figure at a path. */
function withFigure(text: string, path: string, figure: string | number): string {
  const end = text.indexOf("\n---\n");
  const yaml = parseDocument(text.slice(4, end));
  const keys = path.split(".").map((key) => (/^\d+$/u.test(key) ? Number(key) - 1 : key));
  yaml.setIn(keys, figure);
  expect(isMap(yaml.contents)).toBe(true);
  return `---\n${yaml.toString({ lineWidth: 0 })}---\n${text.slice(end + 5)}`;
}

/** The figure a little to either side: one in the third digit, or one of a whole number. */
function beside(text: string, by: 1 | -1): string | number {
  const [, number = "", unit = ""] = /^([\d.,−]+)\s*(.*)$/u.exec(text) ?? [];
  const value = Number(number.replaceAll(",", ""));
  if (unit === "") return value + by;
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return `${Number((value + by * step).toPrecision(6))} ${unit}`;
}

describe("the figure that turns a check", () => {
  test("is named by at least 25 rules", () => {
    const folder = new URL("../../rules/", import.meta.url).pathname;
    const naming = readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith("/rule.ts"))
      .filter((file) => readFileSync(folder + file, "utf8").includes("turns:"));
    expect(naming.length).toBeGreaterThanOrEqual(25);
  });

  test.each(CASES)("%s names %s; a little to either side the check comes out differently", (rule, path, text) => {
    const check = found(text, rule).find((each) => each["turns-at"]?.path === path);
    const turns = check?.["turns-at"];
    expect(turns, JSON.stringify(found(text, rule), null, 1)).toBeDefined();
    if (!check || !turns) return;
    const atPlace = found(text, rule).filter(({ at }) => at.path === check.at.path);
    const index = atPlace.findIndex(({ says }) => says === check.says);
    const outcome = (figure: string | number): string | undefined =>
      found(withFigure(text, path, figure), rule).filter(({ at }) => at.path === check.at.path)[index]?.outcome;
    const plain = turns.unit === "{count}" ? Number(turns.text) : turns.text.replaceAll(",", "");
    const [inside, outside] = turns.sense === "at most" ? ([-1, 1] as const) : ([1, -1] as const);
    expect(outcome(plain)).toBe("holds");
    if (turns.unit !== "{count}") expect(outcome(beside(turns.text, inside))).toBe("holds");
    expect(outcome(beside(turns.text, outside))).toBe("fails");
  });

  test("of what a licensed person states is asked for", () => {
    const [check] = found(
      CASES.find(([rule]) => rule === "rigging.point-load")?.[2] ?? "",
      "rigging.point-load",
    ).filter((each) => each["turns-at"]);
    expect(check?.["turns-at"]).toMatchObject({ sense: "at least", asks: "engineer" });
  });

  test("is told of an open check that waits for that figure alone, and of none that waits for more", () => {
    const one = changed("length: 30 ft, feeder-drop: 1 %", "feeder-drop: 1 %");
    const open = found(one, "power.supply-range").find((each) => each["turns-at"]);
    expect(open).toMatchObject({
      outcome: "open",
      "turns-at": { path: "power.circuits.c1.wiring.length", sense: "at most" },
    });
    const two = one.replace("      supply: 120 V\n", "");
    expect(found(two, "power.supply-range").filter((each) => each["turns-at"])).toEqual([]);
  });

  test("is told of nothing that holds, and of nothing that only follows from a mistake", () => {
    expect(inspectText(SMALL).checks.filter((each) => each["turns-at"])).toEqual([]);
    const files = { ...starter(), documents: [{ path: "builds/1.md", text: changed("trim: 11 ft", "trim: 11") }] };
    const checks = openRepository(files, rules, { today: TODAY }).all().documents[0]?.checks ?? [];
    expect(checks.length).toBeGreaterThan(0);
    expect(checks.filter((each) => each["turns-at"])).toEqual([]);
  });
});

describe("the search for it", () => {
  const search = (limit: number, over: (value: number) => number, sense: "at most" | "at least") => {
    let trials = 0;
    const value = turningValue({
      sense,
      from: sense === "at most" ? limit * 7 : limit / 7,
      to: sense === "at most" ? 0 : limit * 11,
      whole: false,
      step: (each) => 10 ** (Math.floor(Math.log10(Math.abs(each) || 1)) - 2),
      attempt: (each) => {
        trials += 1;
        return { holds: over(each) <= 0, over: over(each) };
      },
    });
    return { value, trials };
  };
  test.each([3.15, 0.273, 161.8, 0.00424, 98765])("takes at most twelve trials to %d", (limit) => {
    for (const [sense, sign] of [
      ["at most", 1],
      ["at least", -1],
    ] as const)
      for (const bend of [(x: number) => x, (x: number) => x * x, (x: number) => Math.sqrt(x)]) {
        const { value, trials } = search(limit, (each) => sign * (bend(Math.max(0, each)) - bend(limit)), sense);
        expect(trials).toBeLessThanOrEqual(12);
        if (value === undefined) continue;
        expect(Math.abs(value / limit - 1)).toBeLessThan(0.011);
        expect(sign * (value - limit)).toBeLessThanOrEqual(1e-9 * limit);
      }
  });
  // Something else governs where the figure is good: the margin is the same all along there, nothing or some.
  test.each([0, 0.1])("finds the end of a stretch along which the margin is %d of the limit", (margin) => {
    for (const limit of [3.15, 0.273, 161.8])
      for (const [sense, sign] of [
        ["at most", 1],
        ["at least", -1],
      ] as const)
        for (const bend of [(x: number) => x, (x: number) => -1 / Math.max(x, 1e-9)]) {
          const over = (x: number) => sign * (bend(x) - bend(limit));
          const { value, trials } = search(limit, (x) => Math.max(-margin * Math.abs(bend(limit)), over(x)), sense);
          expect(trials).toBeLessThanOrEqual(12);
          expect(value, `${limit} ${sense}`).toBeDefined();
          expect(Math.abs((value ?? 0) / limit - 1)).toBeLessThan(0.011);
          expect(sign * ((value ?? 0) - limit)).toBeLessThanOrEqual(1e-9 * limit);
        }
  });
  test("claims nothing where it turns nowhere", () => {
    expect(search(10, () => 1, "at most").value).toBeUndefined();
  });
});
