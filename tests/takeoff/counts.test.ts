import { NOT_STATED, openRepository, type ScheduleName, type ScheduleTable, schedule, tableCsv } from "@plumbmark/core";
import { describe, expect, test } from "vitest";
import { changed, inspectText, openedStarter, SMALL, starter, TODAY } from "../documents/repository.js";
import { readCsv } from "./csv-reader.js";

const FOOT = 0.3048;
const POUND = 0.45359237;

const of = (name: string, which: ScheduleName): ScheduleTable => {
  const { build, system } = openedStarter().one(`builds/${name}.md`);
  return schedule(build, which, system);
};

const ofText = (text: string, which: ScheduleName): ScheduleTable => {
  const { build, system } = openRepository({ ...starter(), documents: [{ path: "a.md", text }] }, [], {
    today: TODAY,
  }).model("a.md");
  return schedule(build, which, system);
};

/** Rows by the names of their columns, as somebody reads them who opens the CSV. */
function records(table: ScheduleTable): readonly Readonly<Record<string, string>>[] {
  const [head = [], ...rows] = readCsv(tableCsv(table));
  return rows.map((row) => Object.fromEntries(head.map((name, index) => [name, row[index] ?? ""])));
}

const counts = (table: ScheduleTable): readonly string[] =>
  records(table).map((row) => [row.Part, row["As written"], row["In use"], row.Spares, row["In all"]].join(" | "));

// Counted by hand from the document's own text, not from an output.
describe("the parts of the banner over the stage", () => {
  test("are what somebody counts who reads the document", () =>
    expect(counts(of("over-stage-banner", "parts"))).toEqual([
      "tile-500-p3.1 |  | 6 | 2 | 8",
      "hanging-bar-500 |  | 6 |  | 6",
      "cord-12-3 | 35 ft | 1 |  | 1",
      "power-jumper | 0.9 m | 6 |  | 6",
      "cat6-solid | 60 ft | 1 |  | 1",
      "data-jumper | 0.9 m | 7 |  | 7",
      "cat6-solid | 70 ft | 1 |  | 1",
      "hdmi-cable | 6 ft | 1 |  | 1",
      "sdi-coax | 160 ft | 1 |  | 1",
      "hdmi-cable | 3 ft | 1 |  | 1",
      "processor-6 |  | 1 |  | 1",
      "playback-computer |  | 1 |  | 1",
      "hdmi-to-sdi |  | 1 |  | 1",
      "sdi-to-hdmi |  | 1 |  | 1",
      "pipe-1.5-std | 10 ft 6 in | 1 |  | 1",
      "beam-clamp |  | 4 |  | 4",
      // One in each hang, one at each second suspension, two more brought along.
      "shackle-3-8 |  | 10 |  | 10",
      "wire-rope-1-4 |  | 4 |  | 4",
      "turnbuckle-3-8 |  | 4 |  | 4",
      "pipe-collar |  | 4 |  | 4",
      "steel-safety-1-8 |  | 4 |  | 4",
      "device-cord |  | 2 |  | 2",
      "converter-pack |  | 2 |  | 2",
      "breaker-lock |  | 1 |  | 1",
      "settings-stick |  | 2 |  | 2",
      "beam-pad |  | 16 |  | 16",
      "locking-wire |  | 1 |  | 1",
      "rigging-tools |  | 1 |  | 1",
      "tile-bag |  | 2 |  | 2",
      "tie-line |  | 2 |  | 2",
      "barrier-tape |  | 1 |  | 1",
      "cable-cover |  | 4 |  | 4",
      "label-tape |  | 1 |  | 1",
    ]));

  // Masses by hand from the catalogue's figures; the column is in pounds, six digits.
  test.each([
    ["tile-500-p3.1", (8 * 7.9) / POUND],
    ["cord-12-3", (35 * FOOT * 0.25) / POUND],
    ["power-jumper", (6 * 0.9 * 0.25) / POUND],
    ["beam-clamp", 4 * 5],
    ["shackle-3-8", 10 * 0.3],
    // ASME B36.10M, NPS 1-1/2 Std: 2.72 lb/ft; 0.3 % for its rounding.
    ["pipe-1.5-std", 10.5 * 2.72],
  ])("%s has its mass", (part, pounds) => {
    const row = records(of("over-stage-banner", "parts")).find((each) => each.Part === part);
    expect(Number(row?.["Mass in all (lb)"]) / pounds).toBeCloseTo(1, part === "pipe-1.5-std" ? 2 : 5);
  });
});

describe("the parts of other builds", () => {
  // Two faces of six tiles and two spares each, from one lot; a bar and two hangs for each.
  test("faces that share a lot share the line of its spares", () => {
    const row = records(of("side-strips", "parts"))[0];
    expect(row?.For).toBe("face left: 6; spares of lot-2431: 4; face right: 6");
    expect(row?.["In all"]).toBe("16");
  });

  test("a standing face brings its base and its ballast", () => {
    const rows = records(of("small-screen", "parts"));
    expect(rows.find(({ Part }) => Part === "base")?.["Mass in all (lb)"]).toBe("90");
    expect(rows.find(({ Part }) => Part === "ballast")?.["Mass in all (lb)"]).toBe("330");
  });

  test("what is not written down is never nought", () => {
    const rows = records(of("gallery-header", "parts"));
    expect(rows[0]?.Spares).toBe(NOT_STATED);
    expect(rows.find(({ Part }) => Part === "cord-12-3")?.["Mass in all (lb)"]).toBe(NOT_STATED);
    expect(rows.find(({ Kind }) => Kind === "data return cable")?.Part).toBe(NOT_STATED);
  });

  test("a run without its panels has jumpers that cannot be counted", () => {
    const text = changed("      panels: header A1..A4\ndata:", "data:");
    const row = records(ofText(text, "parts")).find(({ Part }) => Part === "power-jumper");
    expect([row?.["In use"], row?.For]).toEqual([NOT_STATED, `run P1: ${NOT_STATED}`]);
  });

  test("panels of another kind are taken off the face's own", () => {
    const text = changed("    support: flown", "    other-panels: {tile-500-p4.2: A4}\n    support: flown");
    expect(counts(ofText(text, "parts")).slice(0, 2)).toEqual([
      "tile-500-p3.1 |  | 3 | 2 | 5",
      "tile-500-p4.2 |  | 1 | 0 | 1",
    ]);
  });

  // Two eyes with three clips each, by the schema's words "clips on each eye".
  test("a rope that ends in clips brings them", () => {
    const text = changed("wire-rope-1-4,", "{part: wire-rope-1-4, termination: clips, clips: 3},");
    expect(counts(ofText(text, "parts"))).toContain("clips of wire-rope-1-4 |  | 6 |  | 6");
  });

  test("the two legs of a bridle count both", () => {
    const leg = "{rise: 4 ft, run: 3 ft, assembly: [beam-clamp, wire-rope-1-4], structure: 500 lb}";
    const text = changed(
      "H1: {at: 1 ft, assembly: [beam-clamp, wire-rope-1-4, pipe-collar], structure: 500 lb}",
      `H1: {at: 1 ft, assembly: [pipe-collar], bridle: {left: ${leg}, right: ${leg}}}`,
    );
    const all = counts(ofText(text, "parts"));
    expect(all).toContain("beam-clamp |  | 3 |  | 3");
    expect(all).toContain("pipe-collar |  | 2 |  | 2");
  });
});

describe("what is counted one by one", () => {
  const rows = (from: string, to: string) => counts(ofText(changed(from, to), "parts"));

  test("one spare is one, and none is no line of spares", () => {
    expect(rows("    spares: 2\n", "    spares: 1\n")[0]).toBe("tile-500-p3.1 |  | 4 | 1 | 5");
    expect(rows("    spares: 2\n", "    spares: 0\n")[0]).toBe("tile-500-p3.1 |  | 4 | 0 | 4");
  });

  test("other parts on a face as often as is written; what is no number is not counted", () => {
    const extra = (count: string) => rows("    spares: 2\n", `    spares: 2\n    extras: {beam-pad: ${count}}\n`);
    expect(extra("3")).toContain("beam-pad |  | 3 |  | 3");
    expect(extra("1")).toContain("beam-pad |  | 1 |  | 1");
    expect(extra("some")).toContain(`beam-pad |  | ${NOT_STATED} |  | ${NOT_STATED}`);
  });

  // The older form: each of its parts at every hang, and the bar has two.
  test("a second suspension at every hang is there as often as there are hangs", () => {
    const second =
      "      second: {at: each hang, assembly: [steel-safety-1-8, shackle-3-8], girth: 40 in, slack: none}\n";
    const text = changed(second, "").replace("rigging:\n", "rigging:\n  secondary: [steel-safety-1-8]\n");
    expect(counts(ofText(text, "parts"))).toContain("steel-safety-1-8 |  | 2 |  | 2");
    const none = text.replace(/ {2}bars:\n[\s\S]*? {2}letter:\n/u, "  letter:\n");
    expect(none).not.toBe(text);
    expect(counts(ofText(none, "parts"))).toContain(`steel-safety-1-8 |  | ${NOT_STATED} |  | ${NOT_STATED}`);
  });

  test("a base and its ballast are one each", () => {
    const all = counts(of("small-screen", "parts"));
    expect(all).toContain("base |  | 1 |  | 1");
    expect(all).toContain("ballast |  | 1 |  | 1");
  });

  // 1 kg for each metre is no mass of a piece, and a kilogram no mass of a metre.
  test("what is weighed by the wrong measure has no mass, and what is weighed rightly has one", () => {
    const mass = (part: string, text: string) =>
      records(ofText(text, "parts")).find((row) => row.Part === part)?.["Mass in all (lb)"];
    expect(Number(mass("tile-500-p3.1", SMALL))).toBeCloseTo((6 * 7.9) / POUND, 3);
    const brought = changed("rigging:\n", "also-bring: {power-jumper: {count: 1}}\nrigging:\n");
    const row = records(ofText(brought, "parts")).find(
      ({ Part, For }) => Part === "power-jumper" && !/run/u.test(For ?? ""),
    );
    expect(row?.["Mass in all (lb)"]).toBe(NOT_STATED);
  });

  test("supplies in the words of the document", () => {
    const supply = (written: string) =>
      records(ofText(changed("supply: 120 V", `supply: ${written}`), "circuits"))[0]?.Supply;
    expect(supply("120 V")).toBe("120 V");
    expect(supply("{line-to-line: 208 V}")).toBe("208 V between lines");
    expect(supply("{line-to-line: 208 V, legs: AB}")).toBe("208 V between lines AB");
    expect(supply("{three-phase: 208 V}")).toBe("208 V three phase");
  });

  test("the assembly of a hang from the structure down", () => {
    const rows = records(ofText(SMALL, "hangs"));
    expect(rows.map((row) => row["Assembly, load order"])).toEqual(
      ["H1", "H2"].map(() => "beam-clamp, wire-rope-1-4, pipe-collar"),
    );
    const none = changed("H1: {at: 1 ft, assembly: [beam-clamp, wire-rope-1-4, pipe-collar], ", "H1: {at: 1 ft, ");
    expect(records(ofText(none, "hangs"))[0]?.["Assembly, load order"]).toBe("");
  });

  test("a port of a processor that stands nowhere is named by itself", () => {
    const [place, nowhere] = [SMALL, changed("processor-6, place: rack}", "processor-6}")].map(
      (text) => records(ofText(text, "cables")).find(({ Label }) => Label === "D1-F")?.From,
    );
    expect([place, nowhere]).toEqual(["processor-6 (rack) port 1", "processor-6 port 1"]);
  });
});

describe("the cables of the banner", () => {
  const rows = records(of("over-stage-banner", "cables"));

  test("each is there once, with a label of its own", () => {
    // One feed and five jumpers of power; feed, five jumpers and return of data; three of the picture.
    expect(rows.length).toBe(6 + 7 + 3);
    expect(new Set(rows.map(({ Label }) => Label)).size).toBe(rows.length);
  });

  test.each([
    ["P1-F", "35 ft", "circuit stage-4 outlet", "nema-5-20", "banner A1 power-in", "ac-locking-16"],
    ["P1-J5", "0.9 m", "banner A5 power-out", "ac-locking-16", "banner A6 power-in", "ac-locking-16"],
    ["D1-F", "60 ft", "processor-6 (rack A) port 1", "rj45-locking", "banner A1 data-in", "rj45-locking"],
    ["D1-R", "70 ft", "banner A6 data-out", "rj45-locking", "processor-6 (rack A) port 2", "rj45-locking"],
    ["V2", "160 ft", "hdmi-to-sdi (booth)", "bnc", "sdi-to-hdmi (rack A)", "bnc"],
    ["V3", "3 ft", "sdi-to-hdmi (rack A)", "hdmi-a", "processor-6 (rack A) input", "hdmi-a"],
  ])("%s leads where the document says", (label, length, from, plug, to, other) => {
    const row = rows.find((each) => each.Label === label);
    const found = [row?.["As written"], row?.From, row?.["From connector"], row?.To];
    expect([...found, row?.["To connector"]]).toEqual([length, from, plug, to, other]);
  });

  // Cells 500 mm apart, out at 300 mm and in at 200 mm from the left as seen from behind: going to the audience's
  // right each jumper spans 500 + 100 mm.
  test("a jumper's reach is measured from connector to connector", () =>
    expect(Number(rows.find(({ Label }) => Label === "P1-J1")?.["Reach (ft)"])).toBeCloseTo(0.6 / FOOT, 4));

  test("all lengths together are what somebody adds up", () => {
    const feet = rows.reduce((total, row) => total + Number(row["Length (ft)"]), 0);
    // Feeds 35 + 60, return 70, picture 6 + 160 + 3, ten jumpers of 0.9 m; six digits each.
    expect(feet).toBeCloseTo(35 + 60 + 70 + 169 + (10 * 0.9) / FOOT, 3);
  });

  test("a run and a chain of one name have labels that tell them apart", () => {
    const labels = records(ofText(SMALL.replace("    D1:\n", "    P1:\n"), "cables")).map(({ Label }) => Label);
    expect(labels).toContain("power-P1-F");
    expect(labels).toContain("data-P1-F");
    expect(new Set(labels).size).toBe(labels.length);
  });
});

describe("what the banner comes to", () => {
  const { build } = openedStarter().one("builds/over-stage-banner.md");
  const total = (key: string): number => {
    const value = build.values.get(`totals.${key}`);
    return value?.known ? value.value : Number.NaN;
  };
  const feet = (length: number): number => length * FOOT;

  const brought =
    2 * 0.2 +
    2 * 0.2 +
    0.3 +
    2 * 0.02 +
    16 * 0.1 +
    0.6 +
    6 +
    2 * 2 +
    2 * 0.8 +
    9 +
    4 * 5 +
    0.2 +
    0.9 * (0.25 + 2 * 0.04);

  // Every line of the parts list by hand, in kilograms, spares left at home; the bar by ASME B36.10M, 2.72 lb/ft.
  const byHand =
    6 * (7.9 + 2.4) +
    (feet(35) + 5 * 0.9) * 0.25 +
    feet(60 + 70) * 0.045 +
    5 * 0.9 * 0.04 +
    feet(6 + 3) * 0.09 +
    feet(160) * 0.06 +
    (4.3 + 8 + 0.3 + 0.3) +
    (10.5 * 2.72 + 4 * (5 + 0.3 + 0.5 + 0.9 + 2) + 4 * (0.5 + 0.3) + 2 * 0.3) * POUND +
    brought;

  test("the mass of everything in use", () => expect(total("mass")).toBeCloseTo(byHand, 6));
  test.each([
    ["panels", 6],
    ["spares", 2],
    ["spares-mass", 2 * 7.9],
    ["cables", 16 + 3],
    ["pixels", 6 * 160 * 160],
    ["area", 6 * 0.25],
    ["power-maximum", 6 * 133],
    ["power-typical", 6 * 47],
    ["heat", 6 * 133],
    // Processor, computer and two converters.
    ["power-of-devices", 52 + 180 + 6 + 6],
    // Tiles, what stands in rack A, and what stands in the booth.
    ["circuit-load", (6 * 133) / 0.95 + (52 + 6) + (180 + 6)],
  ])("%s", (key, value) => expect(total(key)).toBeCloseTo(value, 6));
});

describe("panels, circuits and hangs", () => {
  test("every panel of the header over the harbour has its place on run, chain and raster", () => {
    const rows = records(of("harbour-header", "panels"));
    expect(rows.length).toBe(16);
    // Row B runs back on the chain, A8 to B8: B8 is the ninth panel, B1 the sixteenth; the run P2 begins at B1.
    const b8 = rows.find(({ Cell }) => Cell === "B8");
    expect(b8).toMatchObject({
      Circuit: "grid-2",
      Run: "P2",
      "Order on run": "8",
      "Order on chain": "9",
      Port: "1",
    });
    // 160 pixels a tile: the eighth begins at 7 × 160, the second row at 160.
    expect(b8).toMatchObject({ "First pixel across (px)": "1120", "First pixel down (px)": "160" });
  });

  // 8 tiles of 133 W ÷ 0.95 at 230 V, 16 A in iec practice: 1,120 VA, 4.87 A of 16 A.
  test("a circuit has its load, current and share", () => {
    const row = records(of("harbour-header", "circuits"))[0];
    expect(Number(row?.["Load (VA)"])).toBeCloseTo((8 * 133) / 0.95, 2);
    expect(Number(row?.["Current (A)"])).toBeCloseTo((8 * 133) / 0.95 / 230, 4);
    expect(row?.Supply).toBe("230 V");
  });

  // Statics: the reactions of a bar carry all that is on it.
  test("the hangs of a bar carry its whole load", () => {
    const { build } = openedStarter().one("builds/harbour-header.md");
    const rows = records(of("harbour-header", "hangs"));
    const load = build.bars[0]?.load;
    expect(rows.map(({ Hang }) => Hang)).toEqual(["H1", "H2", "H3", "H4"]);
    expect(rows.reduce((total, row) => total + Number(row["Load, level (kg)"]), 0)).toBeCloseTo(
      load?.known ? load.value : NaN,
      2,
    );
  });
});

// A length that is left out, or written for what has none, leaves the mass unknown; it ends no inspection.
test.each([["power-jumper: {count: 1}"], ["shackle-3-8: {count: 1, length: 1 m}"]])(
  "what is brought as %s has no known mass, and the inspection goes on",
  (brought) => {
    const text = changed("rigging:\n", `also-bring: {${brought}}\nrigging:\n`).replace(
      "Four tiles.",
      "[1 kg](calc:totals.mass) in all.",
    );
    expect(inspectText(text).checks.length).toBeGreaterThan(50);
  },
);
