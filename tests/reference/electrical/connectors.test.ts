import {
  connectorCurrent,
  connectors,
  connectorVoltage,
  heldByFriction,
  type Known,
  mates,
  plugFits,
  sources,
  type Value,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const value = (each: Value) => (each as Known).value;
const friction = (id: string) => heldByFriction(connectors.get(id)?.retention ?? "none");
const wd6 = "ANSI/NEMA WD 6";

describe("connector table", () => {
  for (const [id, amperes, volts, locking] of [
    ["nema-5-15", 15, 125, false],
    ["nema-5-20", 20, 125, false],
    ["nema-l5-20", 20, 125, true],
    ["nema-l5-30", 30, 125, true],
    ["nema-l6-20", 20, 250, true],
    ["nema-l6-30", 30, 250, true],
    ["nema-14-50", 50, 250, false],
  ] as const) {
    reference({
      name: `${id}, A and V`,
      source: wd6,
      basis: "published",
      got: () => [value(connectorCurrent(id, "us")), value(connectorVoltage(id, "us"))],
      printed: [amperes, volts],
    });
    reference({
      name: `${id} is locking`,
      source: wd6,
      basis: "published",
      got: () => !friction(id),
      printed: locking,
    });
  }
  for (const [id, us, iec] of [
    ["iec-c13", 15, 10],
    ["iec-c15", 15, 10],
    ["iec-c19", 20, 16],
  ] as const)
    reference({
      name: `${id} in us and IEC practice`,
      source: "IEC 60320; UL 60320-1:2019",
      basis: "published",
      got: () => [value(connectorCurrent(id, "us")), value(connectorCurrent(id, "iec"))],
      printed: [us, iec],
    });
  reference({
    name: "C13 and C19 are held by nothing",
    source: "IEC 60320",
    basis: "published",
    got: () => friction("iec-c13") && friction("iec-c19"),
    printed: true,
  });
  for (const [one, other, joins] of [
    ["iec-c15", "iec-c14", true],
    ["iec-c13", "iec-c14", true],
    ["iec-c13", "iec-c16", false],
    ["iec-c13", "iec-c20", false],
    ["iec-c19", "iec-c20", true],
  ] as const)
    reference({
      name: `${one} goes into ${other}`,
      source: "IEC 60320",
      basis: "published",
      got: () => mates(one, other) ?? "unknown",
      printed: joins,
    });
  reference({
    name: "different ratings do not mate",
    source: "IEC 60309-2",
    basis: "published",
    got: () => mates("iec-60309-16-3", "iec-60309-32-3") ?? "unknown",
    printed: false,
  });
  reference({
    name: "a 5-15 plug goes into a 5-20 receptacle, not the reverse",
    source: wd6,
    basis: "memory",
    got: () => plugFits("nema-5-15", "nema-5-20") === true && plugFits("nema-5-20", "nema-5-15") === false,
    printed: true,
  });
  reference({
    name: "HDMI is held by friction",
    source: "HDMI type A",
    basis: "memory",
    got: () => friction("hdmi-a"),
    printed: true,
  });

  test("mating is mutual, names only entries of the table, and never joins power to signal", () => {
    for (const one of notEmpty(connectors.values()))
      for (const id of notEmpty(one.mates)) {
        const other = connectors.get(id);
        expect(other?.mates, `${one.id} with ${id}`).toContain(one.id);
        expect(other?.carries).toBe(one.carries);
      }
  });
  test("every entry has a kebab-case id and a source", () => {
    for (const { id, source } of notEmpty(connectors.values())) {
      expect(id).toMatch(/^[a-z0-9]+([-.][a-z0-9]+)*$/u);
      expect(sources[source]).toBeDefined();
    }
  });
  test("what is not in the table is unknown, not zero", () => {
    expect(mates("iec-c13", "made-up")).toBeUndefined();
    expect(connectorCurrent("made-up", "us").known).toBe(false);
    expect(connectorCurrent("iec-60309-32-5", "us").known).toBe(false);
  });
});
