import {
  connectorCurrent,
  connectors,
  connectorVoltage,
  type Known,
  plugFits,
  sources,
  type Value,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const value = (each: Value) => (each as Known).value;
const of = (id: string) => connectors.get(id);
const rated = (id: string, practice: "us" | "iec") => [
  value(connectorCurrent(id, practice)),
  value(connectorVoltage(id, practice)),
];

describe("couplers of IEC 60320: the inlet is rated as its connector", () => {
  for (const [id, us, iec] of [
    ["iec-c13", 15, 10],
    ["iec-c14", 15, 10],
    ["iec-c15", 15, 10],
    ["iec-c16", 15, 10],
    ["iec-c19", 20, 16],
    ["iec-c20", 20, 16],
  ] as const)
    reference({
      name: `${id}, A and V in us and iec practice`,
      source: "IEC 60320; UL 60320-1:2019",
      basis: "published",
      got: () => [...rated(id, "us"), ...rated(id, "iec")],
      printed: [us, 250, iec, 250],
    });
});

describe("industrial plugs of IEC 60309-2", () => {
  for (const amperes of [16, 32, 63, 125])
    for (const [wires, poles] of [
      [3, "2P+PE"],
      [4, "3P+PE"],
      [5, "3P+N+PE"],
    ] as const)
      reference({
        name: `${amperes} A, ${wires} wires: rating and poles`,
        source: "IEC 60309-2",
        basis: "published",
        got: () => `${connectorText(amperes, wires)}`,
        printed: `${amperes} A ${poles}`,
      });
  // The colours tell the voltage: blue is 200 to 250 V on three wires, red 380 to 480 V on four and five.
  for (const [wires, low, high] of [
    [3, 200, 250],
    [4, 380, 480],
    [5, 380, 480],
  ] as const)
    reference({
      name: `${wires} wires: the voltage is one of its colour`,
      source: "EN 60309-2:1992, colours",
      basis: "published",
      got: () => {
        const volts = value(connectorVoltage(`iec-60309-32-${wires}`, "iec"));
        return volts >= low && volts <= high;
      },
      printed: true,
    });
  // BS 7671 names these supplies 230 V and 400 V; the plugs are stamped with the end of the range they are made for.
  reference({
    name: "three wires 250 V, four and five wires 415 V",
    source: "stamped on the plugs",
    basis: "memory",
    got: () => [3, 4, 5].map((wires) => value(connectorVoltage(`iec-60309-16-${wires}`, "iec"))),
    printed: [250, 415, 415],
  });
  reference({
    name: "a latch on 16 and 32 A, a bayonet ring on 63 and 125 A",
    source: "IEC 60309-2",
    basis: "memory",
    got: () => [16, 32, 63, 125].map((amperes) => of(`iec-60309-${amperes}-5`)?.retention).join(", "),
    printed: "latch, latch, bayonet, bayonet",
  });
  test("what is from memory says so: the retention rests on a source of its own", () => {
    for (const amperes of [16, 32, 63, 125]) {
      const { source, retentionSource } = of(`iec-60309-${amperes}-3`) ?? {};
      expect([source, retentionSource]).toEqual(["iec-60309", "iec-60309-memory"]);
      expect(sources[retentionSource as "iec-60309-memory"].basis).toBe("memory");
    }
  });
});

const connectorText = (amperes: number, wires: number): string => {
  const id = `iec-60309-${amperes}-${wires}`;
  return `${value(connectorCurrent(id, "iec"))} A ${of(id)?.poles}`;
};

describe("other plugs", () => {
  reference({
    name: "L21-30, 30 A, 208 V between lines",
    source: "ANSI/NEMA WD 6",
    basis: "published",
    got: () => rated("nema-l21-30", "us"),
    printed: [30, 208],
  });
  reference({
    name: "13 A fused plug",
    source: "BS 1363",
    basis: "memory",
    got: () => rated("bs-1363", "iec"),
    printed: [13, 250],
  });
  reference({
    name: "16 A domestic plug",
    source: "CEE 7",
    basis: "memory",
    got: () => rated("cee-7", "iec"),
    printed: [16, 250],
  });
  reference({
    name: "16 A circular locking coupler, with breaking capacity",
    source: "IEC 60320-1, makers' data sheets",
    basis: "memory",
    got: () => [
      ...rated("ac-locking-16", "us"),
      ...rated("ac-locking-16", "iec"),
      Number(of("ac-locking-16")?.underLoad),
    ],
    printed: [20, 250, 16, 250, 1],
  });
  reference({
    name: "20 A circular locking connector, without breaking capacity",
    source: "IEC 61984, makers' data sheets",
    basis: "memory",
    got: () => [
      ...rated("ac-locking-20", "us"),
      ...rated("ac-locking-20", "iec"),
      Number(of("ac-locking-20")?.underLoad),
    ],
    printed: [20, 250, 20, 250, 0],
  });
  reference({
    name: "the T-slot takes a 5-15 and nothing else that is not its own",
    source: "ANSI/NEMA WD 6",
    basis: "published",
    got: () =>
      [
        plugFits("nema-5-15", "nema-5-20"),
        plugFits("nema-14-50", "nema-5-20"),
        plugFits("nema-5-15", "nema-14-50"),
      ].join(),
    printed: "true,false,false",
  });
});

describe("signal connectors: class of retention", () => {
  for (const [id, retention, source, basis] of [
    ["hdmi-a", "friction", "HDMI 1.4b §4.1.9.2: no lock defined", "published"],
    ["displayport", "latch", "VESA DisplayPort: optional latch", "published"],
    ["mini-displayport", "friction", "VESA DisplayPort: Mini has no latch", "published"],
    ["dvi", "screw", "DVI 1.0: two jackscrews", "memory"],
    ["bnc", "bayonet", "IEC 61169-63:2020", "published"],
    ["rj45", "latch", "IEC 60603-7: tab latch", "memory"],
    ["lc", "latch", "IEC 61754-20", "published"],
    ["sc", "latch", "IEC 61754-4", "published"],
    ["usb-a", "friction", "USB 2.0/3.x", "memory"],
    ["usb-c", "friction", "USB Type-C R2.0", "published"],
    ["jack-3.5", "friction", "IEC 60603-11", "memory"],
  ] as const)
    reference({ name: id, source, basis, got: () => of(id)?.retention ?? "none", printed: retention });
});
