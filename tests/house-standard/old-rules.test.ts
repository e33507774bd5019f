import { openRepository, outdated, type RepositoryFiles, readStandards, StandardError } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";

const BUILD = `---
build: banner
title: Banner
status: for-build
on-site: 2027-03-05
faces: {banner: {panel: tile, columns: 3, rows: 1, support: flown, lot: lot-a, spares: 0}}
WAIVER
---
`;
const WAIVER = (rule: string): string =>
  `waivers: [{rule: ${rule}, where: faces.banner, because: one is lent, by: M. Finch, until: 2027-06-30, accepts: 3}]`;

const files = (requirements: string, waiver = ""): RepositoryFiles => ({
  houseStandard: { path: "house-standard.yaml", text: `house-standard: House\nrequirements: {${requirements}}\n` },
  parts: [
    { path: "parts/p.yaml", text: "tile: {kind: panel, size: 500 mm x 500 mm, pixels: 100 x 100, mass: 7 kg}\n" },
  ],
  stock: { path: "stock.yaml", text: 'lots: {lot-a: {panel: tile, batch: "1", count: 2}}\n' },
  documents: [{ path: "builds/banner.md", text: BUILD.replace("WAIVER", waiver) }],
});

const checks = (asked: RepositoryFiles) =>
  openRepository(asked, rules, { today: "2027-01-01" }).all().documents[0]?.checks ?? [];

describe("a rule that has another name now", () => {
  test("is set by its old name, and told with its place", () => {
    const asked = files("panels.stock: {level: should}");
    const [check] = checks(asked).filter(({ rule }) => rule === "stock.promised-twice");
    expect([check?.outcome, check?.level]).toEqual(["fails", "should"]);
    expect(outdated(readStandards(asked).standards).map(({ place, says }) => `${place.line}: ${says}`)).toEqual([
      "2: The rule `panels.stock` is now called `stock.promised-twice`.",
    ]);
  });

  test("is not set by both names", () => {
    const both = files("panels.stock: {level: should}, stock.promised-twice: {level: note}");
    expect(() => checks(both)).toThrow(StandardError);
    expect(() => checks(both)).toThrow("the first is the name the second had before");
  });

  test("is waived by its old name, and told at level note", () => {
    for (const rule of ["panels.stock", "stock.promised-twice"]) {
      const found = checks(files("viewing.pitch: {level: none}", WAIVER(rule)));
      expect(found.find((check) => check.rule === "stock.promised-twice")?.outcome).toBe("waived");
      const told = found.filter(({ rule: by, says }) => by === "document.waivers" && says.includes("is now called"));
      expect(told.map(({ level, outcome }) => `${level} ${outcome}`)).toEqual(
        rule === "panels.stock" ? ["note fails"] : [],
      );
    }
  });
});
