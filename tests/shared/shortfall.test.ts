import { readdirSync, readFileSync } from "node:fs";
import { openRepository, pricesOf, type RepositoryFiles } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { expect, test } from "vitest";

const parts = [
  {
    path: "parts/parts.yaml",
    text: [
      "tile: {kind: panel, size: 500 mm x 500 mm, pixels: 128 x 128, mass: 7 kg, price: 412.00 USD}",
      "lock: {kind: spare-part, mass: 0.2 kg, price: 0.10 USD}",
      "cord: {kind: power-cable, mass: 0.25 kg/m, price: {25 ft: 31.50 USD, 50 ft: 55.25 USD}}",
      "rope: {kind: rope, breaking: 6000 lb, wll: 1000 lb, mass: 0.5 lb}",
      "shackle: {kind: hardware, wll: 2000 lb, breaking: 12000 lb, mass: 0.3 lb}",
      "hang: {kind: assembly, of: [shackle, rope]}",
    ].join("\n"),
  },
];
const stock = {
  path: "stock.yaml",
  text: [
    "lots:",
    '  lot-a: {panel: tile, batch: "24-31", count: 8, faulty: 1}',
    '  lot-b: {panel: tile, batch: "25-02", count: 90}',
    "items:",
    "  lock: {count: 5}",
    "  cord: {lengths: {25 ft: 2, 50 ft: 1}}",
    "days: {out: 1, back: 1}",
  ].join("\n"),
};

const build = (
  name: string,
  days: string,
  more: string,
  status = "for-build",
): RepositoryFiles["documents"][number] => ({
  path: `builds/${name}.md`,
  text: `---\nbuild: ${name}\ntitle: ${name}\nstatus: ${status}\non-site: ${days}\n${more}\n---\n`,
});

const FACE = "faces: {banner: {panel: tile, columns: 6, rows: 1, support: flown, lot: lot-a, spares: 2}}";

const open = (...documents: RepositoryFiles["documents"]) =>
  openRepository({ parts, stock, documents }, [], { today: "2027-01-01" });

test("what is short is what is needed on the fullest day over what is owned, sound and not taken", () => {
  const repository = open(
    build(
      "hall",
      "2027-05-03 to 2027-05-05",
      `${FACE}\nalso-bring: {lock: 3, cord: {count: 3, length: 25 ft}, rope: 2}`,
    ),
    build("pier", "2027-05-07", "also-bring: {lock: 4}"),
    build("later", "2027-05-20", "also-bring: {lock: 5}"),
    build("thought", "2027-05-04", "also-bring: {lock: 5}", "draft"),
  );
  const lines = repository.shortfall(["builds/hall.md"]);
  const brief = lines.map(({ name, which, needed, taken, owned, short }) => ({
    name,
    which,
    needed,
    taken,
    owned,
    short,
  }));
  // Six tiles and two spares of seven sound ones; three locks with four of the pier, loaded on the day the hall's come
  // back, of five; three cords of two; ropes nobody listed. The ninety panels of another batch help nobody.
  expect(brief).toEqual(
    [
      { name: "panels of lot-a", which: "tile", needed: 8, taken: 0, owned: 7, short: 1 },
      { name: "cord", which: "25 ft", needed: 3, taken: 0, owned: 2, short: 1 },
      { name: "lock", which: "", needed: 3, taken: 4, owned: 5, short: 2 },
      { name: "rope", which: "", needed: 2, taken: 0, owned: undefined, short: 2 },
    ].sort(
      (one, other) =>
        brief.findIndex(({ name }) => name === one.name) - brief.findIndex(({ name }) => name === other.name),
    ),
  );
  expect(lines.find(({ name }) => name === "panels of lot-a")?.note).toContain("batch 24-31 only");
  expect(lines.find(({ name }) => name === "cord")?.note).toBe("longer ones are owned: 1 of 50 ft");
});

test("several builds need together what they need on one day, and no more", () => {
  const repository = open(
    build("hall", "2027-05-03 to 2027-05-05", "also-bring: {lock: 3}"),
    build("pier", "2027-05-07", "also-bring: {lock: 4}"),
    build("later", "2027-05-20", "also-bring: {lock: 5}"),
  );
  const short = (...names: string[]) => repository.shortfall(names.map((name) => `builds/${name}.md`));
  expect(short("hall", "pier", "later").map(({ needed, taken, short: missing }) => [needed, taken, missing])).toEqual([
    [7, 0, 2],
  ]);
  expect(short("later")).toEqual([]);
});

test("a length that is not written is told in the unit of those it comes in", () => {
  const file = (path: string) => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
  const folder = (name: string) => readdirSync(`${starterRepository}/${name}`).map((each) => file(`${name}/${each}`));
  const lots = { path: "stock.yaml", text: file("stock.yaml").text.split("\nitems:")[0] ?? "" };
  const files = { parts: folder("parts"), stock: lots, surveys: folder("venues"), documents: folder("builds") };
  // The shortest of 25, 35 and 50 ft that reaches; it came out as 7.62 m.
  const lines = openRepository(files, [], { today: "2027-01-01" }).shortfall(["builds/lobby-ribbon.md"]);
  expect(lines.find(({ name }) => name === "cord-12-3")?.which).toMatch(/^(?:25|35|50) ft$/u);
});

test("prices are number times price, by length, with what has none left out and told", () => {
  const repository = open(
    build("hall", "2027-05-03", "also-bring: {lock: 3, cord: {count: 3, length: 25 ft}, rope: 2}"),
  );
  const { table, unpriced } = pricesOf(repository.model("builds/hall.md").build, "us");
  expect(table.rows.map((row) => [row[0]?.text, row[4]?.text, row[5]?.text])).toEqual([
    ["lock", "0.10", "0.30"],
    ["cord", "31.50", "94.50"],
    ["rope", "not stated", "not stated"],
    ["Sum of what has a price", "", "94.80"],
  ]);
  expect(unpriced).toEqual(["rope"]);
});

test("an assembly by its name is its parts in their order", () => {
  const bar = (assembly: string) =>
    `${FACE}\nrigging: {bars: {header: {section: pipe-1.5-std, length: 3 m, carries: {face: banner, from: 0 m}, hangs: {H1: {at: 0.5 m, assembly: ${assembly}}, H2: {at: 2.5 m, assembly: ${assembly}}}}}}`;
  const repository = open(
    build("named", "2027-05-03", bar("hang")),
    build("listed", "2027-05-13", bar("[shackle, rope]")),
    build("unknown", "2027-05-23", bar("hank")),
  );
  const of = (name: string) => repository.model(`builds/${name}.md`).build;
  const values = (name: string) =>
    [...of(name).valuesUnder("rigging")].map(([path, value]) => [path, value.known ? value.value : "missing"]);
  expect(values("named")).toEqual(values("listed"));
  expect(values("named").length).toBeGreaterThan(10);
  const pieces = (name: string) =>
    of(name).takeoff.pieces.map((piece) => [piece.name, piece.count.known && piece.count.value]);
  expect(pieces("named")).toEqual(pieces("listed"));
  expect(of("unknown").mistakes.map(({ says, mend }) => [says, mend.slice(0, 13)])).toEqual([
    ["The part `hank` is not in the catalogue.", "Write `hang`."],
    ["The part `hank` is not in the catalogue.", "Write `hang`."],
  ]);
});

test("prices and items that cannot be right are told with their place", () => {
  const broken = openRepository(
    {
      parts: [
        {
          path: "parts/p.yaml",
          text: "lock: {kind: spare-part, price: 0.105 USD}\ncord: {kind: power-cable, price: {long: 3 USD}}\n",
        },
      ],
      stock: {
        path: "stock.yaml",
        text: "lots: {a: {panel: tile, count: 2, faulty: 3}}\nitems:\n  lock: {}\n  cord: {count: 2, lengths: {25 ft: 1, 7.62 m: 1, far: 2}}\n",
      },
      documents: [],
    },
    [],
    { today: "2027-01-01" },
  );
  expect(
    [...broken.catalogue.mistakes].flatMap(([, all]) => all.map(({ path, place }) => `${path} ${place.line}`)),
  ).toEqual(["lock.price 1", "cord.price.long 2"]);
  expect(
    [...broken.stock.mistakes.values()].flat().map(({ path, place, says }) => `${path} ${place.line}: ${says}`),
  ).toEqual([
    "lots.a.faulty 1: The lot `a` has 2 panels, and 3 of them are said to be faulty.",
    "items.lock 3: The item `lock` does not say how many there are.",
    "items.cord 4: The item `cord` says how many there are in 2 ways: count, lengths.",
    "items.cord.lengths.far 4: `far` is not a length.",
    "items.cord.lengths.7.62 m 4: The length `7.62 m` is listed twice.",
  ]);
});
