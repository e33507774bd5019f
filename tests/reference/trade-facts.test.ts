import { readdirSync, readFileSync } from "node:fs";
import { CHANNEL, fromKept, readQuantity, unitByCode } from "@plumbmark/calc";
import { openRepository, workedValues } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { describe } from "vitest";
import { reference } from "./check.js";

const read = (path: string) => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const parts = readdirSync(`${starterRepository}/parts`).map((name) => read(`parts/${name}`));

const banner = (panel: string): string => `---
build: banner
title: Banner
status: draft
practice: us
faces:
  banner: {panel: ${panel}, columns: 6, rows: 1, support: flown, extras: {hanging-bar-500: 6}}
power:
  circuits:
    C: {supply: 120 V, breaker: 20 A}
  runs:
    P: {from: C, panels: banner A1..A6}
---
`;

const value = (panel: string, path: string): number =>
  workedValues(
    openRepository({ parts, documents: [{ path: "banner.md", text: banner(panel) }] }, [], {
      today: "2027-01-01",
    }).model("banner.md"),
  ).get(path)?.value ?? Number.NaN;
const pounds = (kilograms: number): number => fromKept(kilograms, unitByCode("mass", "[lb_av]"));

describe("facts of the trade", () => {
  const fact = { source: "common practice, no source", basis: "practice" } as const;
  reference({
    ...fact,
    name: "six 500 mm panels with hanging hardware weigh less than 200 lb",
    printed: true,
    got: () => pounds(value("tile-500-p3.1", "faces.banner.mass")) < 200,
  });
  reference({
    ...fact,
    name: "a banner of 500 mm panels weighs about 20 lb a foot at most, bar and cables aside",
    printed: true,
    got: () =>
      pounds(value("tile-500-p3.1", "faces.banner.mass")) / (value("tile-500-p3.1", "faces.banner.width") / 0.3048) <=
      20,
  });
  reference({
    ...fact,
    name: "six panels of 500 mm and 4.2 mm nominal pitch are 720 × 120 pixels",
    printed: [720, 120],
    got: () => [value("tile-500-p4.2", "faces.banner.pixels-wide"), value("tile-500-p4.2", "faces.banner.pixels-high")],
  });
  reference({
    ...fact,
    name: "six such panels sit easily on one 120 V, 20 A circuit",
    printed: true,
    got: () =>
      value("tile-500-p3.1", "power.circuits.C.current") <
      0.5 * value("tile-500-p3.1", "power.circuits.C.continuous-rating"),
  });
  reference({
    ...fact,
    name: "about 300 ft between processor and wall on network cable is inside the channel",
    printed: true,
    got: () => {
      const far = readQuantity("300 ft", ["length"]);
      return far.ok && far.quantity.value <= CHANNEL.all;
    },
  });
});
