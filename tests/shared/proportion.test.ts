import { openRepository, type RepositoryFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { deep } from "../run/effort.js";

const RULES = ["stock.promised-twice", "power.shared-circuits"];
const DAY = 86_400_000;
const START = Date.parse("2027-01-01");
const dayAt = (offset: number): string => new Date(START + offset * DAY).toISOString().slice(0, 10);

const parts = [
  {
    path: "parts/parts.yaml",
    text: "tile: {kind: panel, size: 500 mm x 500 mm, pixels: 100 x 100, mass: 10 kg, power: {maximum: 114 W, factor: 0.95}}\nlock: {kind: spare-part, mass: 0.2 kg}\ncord: {kind: power-cable, mass: 0.2 kg/m}\nwire: {kind: power-cable, mass: 0.2 kg/m}\n",
  },
];
const stock = { path: "stock.yaml", text: "items: {lock: {count: 8}, cord: {lengths: {5 m: 8}}}\n" };

/** So many builds, four of them on any day, all of one venue and with one circuit, whatever there are of them. */
const documents = (count: number): RepositoryFiles["documents"] =>
  Array.from({ length: count }, (_, index) => ({
    path: `builds/b${String(index).padStart(5, "0")}.md`,
    text: `---\nbuild: b${index}\ntitle: b\nstatus: for-build\nvenue: Hall\non-site: ${dayAt(Math.floor(index / 4))}\nalso-bring: {lock: 2}\nfaces: {f: {panel: tile, columns: 3, rows: 1, support: flown, spares: 0}}\npower: {circuits: {c: {supply: 120 V, breaker: 20 A, outlets: 9, other-load: none}}, runs: {P: {from: c, feed: {part: cord, length: 5 m}, jumper: {part: wire, length: 1 m}, panels: "f A1..A3"}}}\n---\n`,
  }));

/** Milliseconds of processor time for each document, and what came out. */
function each(count: number): number {
  const files = { parts, stock, documents: documents(count) };
  const repository = openRepository(
    files,
    rules.filter(({ id }) => RULES.includes(id)),
    { today: "2027-01-01" },
  );
  const begun = process.cpuUsage();
  const { totals } = repository.all();
  const { user, system } = process.cpuUsage(begun);
  // Three of four are the others of a day: 4 × 3 A are within 16 A, and 4 × 2 locks are all there are.
  expect(totals.ready).toBe(count);
  return (user + system) / 1000 / count;
}

// What is shared grows with those that share something on a day, which is four here, and not with all there are.
test("the time for a document does not grow with the number of documents", () => {
  const [few, many] = deep ? [1000, 10_000] : [40, 240];
  each(few);
  const before = each(few);
  expect(each(many)).toBeLessThan(2.5 * before);
});
