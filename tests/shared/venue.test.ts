import { type InspectionRecord, openRepository, outlineOf, type RepositoryFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { collated } from "../../packages/cli/src/record/collated.js";
import { deep } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { type NaiveUse, naiveWorst } from "./naive.js";

const SHARED = ["power.shared-circuits", "rigging.shared-structure", "data.shared-processor"];
const DAY = 86_400_000;
const START = Date.parse("2027-05-01");
const dayAt = (offset: number): string => new Date(START + offset * DAY).toISOString().slice(0, 10);

// 114 W at a power factor of 0.95 are 120 VA: a tile draws 1 A at 120 V.
const parts = [
  {
    path: "parts/parts.yaml",
    text: [
      "tile: {kind: panel, size: 500 mm x 500 mm, pixels: 100 x 100, mass: 10 kg, power: {maximum: 114 W, factor: 0.95}, supply: 100 V to 240 V}",
      "cord: {kind: power-cable, mass: 0.2 kg/m}",
      "data-cord: {kind: data-cable, mass: 0.1 kg/m}",
      "processor: {kind: processor, ports: 4, pixels: 1000000, power: none}",
      "rope: {kind: rope, breaking: 6000 lb, wll: 1000 lb, mass: 1 kg}",
    ].join("\n"),
  },
];

interface Written {
  readonly venue: string;
  readonly from: number;
  readonly days: number;
  readonly tiles: number;
  /** Amperes at 120 V. */
  readonly other: number;
}

const text = (name: string, { venue, from, days, tiles, other }: Written, more = ""): string =>
  [
    "---",
    `build: ${name}`,
    "title: Banner",
    "status: for-build",
    `venue: ${venue}`,
    `on-site: ${dayAt(from)} to ${dayAt(from + days)}`,
    `faces: {banner: {panel: tile, columns: ${tiles}, rows: 1, support: flown, spares: 0}}`,
    `power: {circuits: {stage-4: {supply: 120 V, breaker: 25 A, outlets: 9, other-load: ${other === 0 ? "none" : `${other * 120} VA`}}}, runs: {P1: {from: stage-4, feed: {part: cord, length: 5 m}, jumper: {part: cord, length: 1 m}, panels: "banner A1..A${tiles}"}}}`,
    more,
    "---",
    "",
  ].join("\n");

const inspected = (files: Omit<RepositoryFiles, "parts">, ids = SHARED): InspectionRecord =>
  openRepository(
    { parts, ...files },
    rules.filter(({ id }) => ids.includes(id)),
    {
      today: "2027-01-01",
      every: true,
    },
  ).all();

const documents = (all: readonly Written[]): RepositoryFiles["documents"] =>
  all.map((each, index) => ({ path: `builds/b${index}.md`, text: text(`b${index}`, each) }));

const written = fc.record({
  venue: fc.constantFrom("Marlow Quay Hall", "marlow  quay hall", "Pier Theatre"),
  from: fc.integer({ min: 0, max: 25 }),
  days: fc.integer({ min: 0, max: 5 }),
  tiles: fc.integer({ min: 2, max: 9 }),
  other: fc.integer({ min: 0, max: 3 }),
});

describe("what a circuit carries", () => {
  test("is what a loop over every day adds up, the house's own load once", () => {
    fc.assert(
      fc.property(fc.array(written, { minLength: 2, maxLength: 7 }), (all) => {
        const record = inspected({ documents: documents(all) });
        const key = ({ venue }: Written): string => venue.toLowerCase().replace(/\s+/gu, " ");
        const uses = all.map((each, index): NaiveUse & { readonly other: number; readonly venue: string } => ({
          file: `builds/b${index}.md`,
          from: dayAt(each.from),
          to: dayAt(each.from + each.days),
          amounts: { I: each.tiles },
          other: each.other,
          venue: key(each),
        }));
        for (const [index, own] of notEmpty(uses.entries())) {
          const near = uses.filter((each) => each.venue === own.venue && each.from <= own.to && own.from <= each.to);
          const [check] = (record.documents[index]?.checks ?? []).filter(
            ({ rule, says }) => rule === "power.shared-circuits" && !says.includes("Outlets"),
          );
          const most = naiveWorst(own, near, "I") + Math.max(...near.map(({ other }) => other));
          // Alone it is judged by power.circuit-load.
          expect(check?.measured?.value).toBe(near.length === 1 ? undefined : most);
          expect(check?.outcome).toBe(near.length === 1 || most <= 20 ? "holds" : "fails");
        }
      }),
      { numRuns: deep ? 2000 : 40 },
    );
  });

  test("stands on both documents, with the other's place and load, and with the working", () => {
    const day = { venue: "Marlow Quay Hall", from: 0, days: 0, other: 0 };
    const record = inspected(
      {
        documents: documents([
          { ...day, tiles: 12 },
          { ...day, tiles: 9 },
        ]),
      },
      [SHARED[0] ?? ""],
    );
    const found = record.documents.map(({ checks }) => checks.filter(({ outcome }) => outcome === "fails"));
    expect(found.map((checks) => checks.map(({ says, at }) => `${at.path}: ${says}`))).toEqual([
      [
        "power.circuits.stage-4: Circuit stage-4 carries 21 A with all builds on it; its continuous rating is 20 A. On 2027-05-01 with builds/b1.md (power.circuits.stage-4) 9 A.",
      ],
      [
        "power.circuits.stage-4: Circuit stage-4 carries 21 A with all builds on it; its continuous rating is 20 A. On 2027-05-01 with builds/b0.md (power.circuits.stage-4) 12 A.",
      ],
    ]);
    expect(found[0]?.[0]?.working?.map(({ with: shown }) => shown).at(-2)).toBe("12 A + 9 A = 21 A");
  });
});

const SURVEY = {
  path: "venues/hall.md",
  text: `---
survey: marlow-quay-hall
title: Marlow Quay Hall
structure:
  beam:
    from: {right: -6 m, upstage: 0 m, up: 6 m}
    to: {right: 6 m, upstage: 0 m, up: 6 m}
    structure: 130 kg
    points: {F1: {at: 1 m, structure: 90 kg}, F2: {at: 4 m, structure: 90 kg}}
---
`,
};

const HUNG = `rigging: {bars: {header: {section: pipe-1.5-std, length: 4 m, carries: {face: banner, from: 0.5 m}, hangs: {H1: {point: beam.F1, at: 0.5 m, assembly: [rope]}, H2: {point: beam.F2, at: 3.5 m, assembly: [rope]}}}}}
data: {processor: {part: processor, place: rack A}, chains: {D1: {port: 1, feed: {part: data-cord, length: 5 m}, jumper: {part: data-cord, length: 1 m}, panels: "banner A1..A6"}}}
picture: {raster: 1920 x 1080, rate: 60 Hz, depth: 8 bit, at: {banner: "0,0"}}`;

const twice = (apart: number): RepositoryFiles => ({
  parts,
  surveys: [SURVEY],
  documents: ["one", "other"].map((name, index) => ({
    path: `builds/${name}.md`,
    text: text(name, { venue: "marlow-quay-hall", from: index * apart, days: 0, tiles: 6, other: 0 }, HUNG).replace(
      "breaker: 25 A",
      "breaker: 10 A",
    ),
  })),
});

describe("the same build twice in one house", () => {
  test("on one evening fails on circuit, point, beam and processor, in both documents", () => {
    const record = inspected(twice(0));
    const failing = record.documents.map(({ checks }) =>
      checks.flatMap(({ outcome, rule, at, says }) => (outcome === "fails" ? [[rule, at.path, says]] : [])),
    );
    for (const [index, checks] of notEmpty(failing.entries())) {
      const other = index === 0 ? "builds/other.md" : "builds/one.md";
      expect(checks.map(([rule, path]) => `${rule} ${path}`).sort()).toEqual([
        "data.shared-processor data.processor",
        "power.shared-circuits power.circuits.stage-4",
        "rigging.shared-structure rigging.bars.header",
      ]);
      expect(checks.every(([, , says]) => says?.includes(other))).toBe(true);
    }
  });

  test("a week apart holds in both", () => {
    const record = inspected(twice(7));
    const outcomes = record.documents.flatMap(({ checks }) => checks.map(({ outcome }) => outcome));
    expect(outcomes.length).toBeGreaterThan(10);
    expect([...new Set(outcomes)]).toEqual(["holds"]);
  });
});

describe("over several repositories", () => {
  const one = (index: number, apart: number, stock?: string): InspectionRecord => {
    const files = twice(apart);
    const documents = files.documents.slice(index, index + 1);
    return inspected(
      { ...files, documents, ...(stock === undefined ? {} : { stock: { path: "stock.yaml", text: stock } }) },
      [...SHARED, "stock.promised-twice"],
    );
  };
  const joined = (apart: number, ...stocks: readonly (string | undefined)[]) =>
    collated([0, 1].map((index) => ({ name: `r${index}`, record: one(index, apart, stocks[index]) })));
  const failing = (record: InspectionRecord) =>
    record.documents.map(({ checks }) =>
      checks.flatMap(({ outcome, rule }) => (outcome === "fails" ? [rule] : [])).sort(),
    );

  test("what each alone may use is added up where they share a venue", () => {
    const rule = ["data.shared-processor", "power.shared-circuits", "rigging.shared-structure"];
    expect([one(0, 0), one(1, 0)].flatMap(failing)).toEqual([[], []]);
    expect(failing(joined(0))).toEqual([rule, rule]);
    expect(failing(joined(7))).toEqual([[], []]);
    expect(joined(0).documents[0]?.checks[0]?.says).toContain("r1/builds/other.md");
    expect(joined(0).totals["not-ready"]).toBe(2);
  });

  test("and where they share a stock, but not where each has its own", () => {
    const stock = "items: {processor: {count: 9}, rope: {count: 3}}\n";
    expect(failing(joined(0, stock, stock))[0]).toContain("stock.promised-twice");
    expect(failing(joined(0, stock, `${stock}days: {out: 0}\n`))[0]).not.toContain("stock.promised-twice");
    expect(failing(joined(7, stock, stock))).toEqual([[], []]);
  });
});

describe("a build without days", () => {
  const files = twice(0);
  const [one, other] = files.documents as [RepositoryFiles["documents"][number], RepositoryFiles["documents"][number]];
  const undated = { ...other, text: other.text.replace(/on-site: .*\n/u, "") };

  test("is open for itself, and fails nobody: not even where ports and points would clash", () => {
    const record = inspected({ ...files, documents: [one, undated] });
    const said = record.documents.map(({ checks }) =>
      [
        ...new Set(
          checks.filter(({ outcome }) => outcome !== "holds").map(({ level, outcome }) => `${level} ${outcome}`),
        ),
      ].sort(),
    );
    expect(said).toEqual([["note fails"], ["note fails", "shall open"]]);
    expect(record.documents[0]?.verdict).toBe("ready");
    const opened = record.documents[1]?.checks.filter(({ outcome }) => outcome === "open") ?? [];
    expect(opened.map(({ rule, missing }) => `${rule} ${missing?.join()}`).sort()).toEqual(
      SHARED.map((rule) => `${rule} on-site`).sort(),
    );
  });

  test("is told of once by each rule, whatever is shared", () => {
    const record = inspected({ ...files, documents: [one, undated] });
    const notes = record.documents[0]?.checks.filter(({ level }) => level === "note") ?? [];
    expect(notes.map(({ rule }) => rule).sort()).toEqual([...SHARED].sort());
    const [structure] = notes.filter(({ rule }) => rule === "rigging.shared-structure");
    expect(structure?.says).toContain("builds/other.md would be there, too, as a draft or without days.");
  });
});

describe("a document that is not inspected", () => {
  const files = twice(0);
  const [one, other] = files.documents as [RepositoryFiles["documents"][number], RepositoryFiles["documents"][number]];
  const failing = (others: NonNullable<RepositoryFiles["others"]>): readonly string[] =>
    (inspected({ ...files, documents: [one], others }).documents[0]?.checks ?? [])
      .filter(({ level, outcome }) => level === "shall" && outcome !== "holds")
      .map(({ rule, outcome }) => `${rule} ${outcome}`)
      .sort();

  test("counts by its outline, which knows where its text is", () => {
    expect(failing([outlineOf(other)])).toEqual([
      "data.shared-processor fails",
      "power.shared-circuits fails",
      "rigging.shared-structure fails",
    ]);
  });

  test("and leaves open what it may use, where nobody has its text", () => {
    const { ...plain } = outlineOf(other);
    const found = failing([plain]);
    expect(found.length).toBeGreaterThan(2);
    expect(found.every((each) => each.endsWith(" open"))).toBe(true);
  });
});
