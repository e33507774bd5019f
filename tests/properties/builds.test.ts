import { workings } from "@plumbmark/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alone } from "../rules/repository.js";

/** A banner of so many columns and rows on one circuit and one port; cables along the rows, or in a serpentine. */
interface Banner {
  readonly columns: number;
  readonly rows: number;
  readonly serpentine?: boolean;
  /** Metres of the power feed. */
  readonly feed?: number;
  readonly rate?: number;
  /** Panels left out at the end of the last row. */
  readonly without?: number;
}

const letter = (row: number): string => String.fromCharCode(65 + row);

/** Every panel by name in cable order. */
function order({ columns, rows, serpentine = false, without = 0 }: Banner): readonly string[] {
  const cells = Array.from({ length: rows }, (_, row) => {
    const places = Array.from({ length: row === rows - 1 ? columns - without : columns }, (_, k) => k + 1);
    return (serpentine && row % 2 === 1 ? places.reverse() : places).map((column) => `${letter(row)}${column}`);
  });
  return cells.flat();
}

const left = ({ columns, rows, without = 0 }: Banner): string =>
  Array.from({ length: without }, (_, k) => `${letter(rows - 1)}${columns - k}`).join(", ");

const document = (banner: Banner): string => `---
build: banner
title: Banner
status: draft
practice: us
faces:
  banner: {panel: tile-500-p2.9, columns: ${banner.columns}, rows: ${banner.rows}, support: flown${left(banner) && `, without: "${left(banner)}"`}}
power:
  circuits:
    C: {supply: 208 V, breaker: 20 A, wiring: {conductor: 12 AWG, length: 20 m}}
  runs:
    P: {from: C, feed: {part: cord-12-3, length: ${banner.feed ?? 10} m}, jumper: {part: power-jumper, length: 1.5 m}, panels: "banner ${order(banner).join(", ")}"}
data:
  processor: {part: processor-4}
  chains:
    D: {port: 1, feed: {part: cat6-solid, length: 30 m}, jumper: {part: data-jumper, length: 1.5 m}, panels: "banner ${order(banner).join(", ")}"}
picture: {rate: ${banner.rate ?? 60} Hz, depth: 8 bit}
rigging:
  bars:
    bar:
      section: pipe-1.5-std
      length: ${banner.columns * 0.5 + 0.4} m
      carries: {face: banner, from: 0.2 m}
      hangs:
        H1: {at: 0.3 m, assembly: [beam-clamp, wire-rope-1-4, shackle-3-8], structure: 200 kg}
        H2: {at: ${banner.columns * 0.5} m, assembly: [beam-clamp, wire-rope-1-4, shackle-3-8], structure: 200 kg}
---

# Banner
`;

const figures = (banner: Banner): ReadonlyMap<string, number> =>
  new Map(
    [...workings(alone({ path: "banner.md", text: document(banner) }), "banner.md", "2027-01-01")].flatMap(
      ([path, { value }]) => (value === undefined ? [] : [[path, value] as const]),
    ),
  );

test("list", () => {
  console.log([...figures({ columns: 4, rows: 2 })].map(([k, v]) => `${k} ${v}`).join("\n"));
});
describe("x", () => void fc);
expect(1).toBe(1);
