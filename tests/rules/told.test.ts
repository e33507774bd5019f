import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { alone } from "./repository.js";

// What a rule tells: the numbers and names in the sentence are counted by hand from the document beside it.
// The starter's tile: 160 × 160 pixels, 7.9 kg, 133 W at power factor 0.95. So six weigh 47.4 kg, draw
// 6 × 133 ÷ 0.95 ÷ 120 = 7 A and give 798 × 3.41214 = 2,723 BTU/h, 798 ÷ 3,516.85 = 0.23 tons (UCUM 2.2); two have
// 51,200 pixels; a strip of six is 160 × 960. Six panels have five jumpers of two ends, ten joints.
// Outlets: NEC 210.21(B)(1) one outlet as large as its circuit, (B)(3) several of 15 or 20 A on 20 A, (B)(2) 12 and 16 A.
// Cords alone reach 102 ÷ 1.2 = 85 m (TIA-568-B.1). Limits of parts and settings are as the starter and the rules state them.

function told(rule: string, front: string, body = ""): readonly string[] {
  const text = `---\nbuild: told\ntitle: Told\nstatus: for-build\n${front.includes("practice:") ? "" : "practice: us\n"}${front}\n---\n\n${body}\n`;
  const only = rules.filter(({ id }) => id === rule);
  const { documents } = openRepository(alone({ path: "told.md", text }), only, {
    today: "2027-01-01",
    every: true,
  }).all();
  return documents.flatMap(({ checks }) =>
    checks.filter((check) => check.rule === rule).map(({ outcome, says }) => `${outcome}: ${says}`),
  );
}

const face = (columns: number, rows = 1, support = "flown", more = ""): string =>
  `faces: {banner: {panel: tile-500-p3.1, columns: ${columns}, rows: ${rows}, support: ${support}${more}}}`;

interface Case {
  readonly name: string;
  readonly rule: string;
  readonly front: string;
  readonly body?: string;
  readonly tells: readonly string[];
}

const circuit = (breaker: number, outlet: string, more = ""): string =>
  `${face(6)}
power:
  circuits: {stage-4: {supply: 120 V, breaker: ${breaker} A, outlet: ${outlet}, wiring: {conductor: 12 AWG, length: 50 ft}${more}}}
  runs: {P1: {from: stage-4, feed: {part: cord-12-3, length: 35 ft}, jumper: {part: power-jumper, length: 0.9 m}, panels: banner A1..A6}}`;

const runs = (...panels: readonly string[]): string =>
  `power: {runs: {${panels.map((each, index) => `P${index + 1}: {panels: '${each}'}`).join(", ")}}}`;
const chains = (...panels: readonly string[]): string =>
  `data: {chains: {${panels.map((each, index) => `D${index + 1}: {panels: '${each}'}`).join(", ")}}}`;
const two = (right: string, raster = "1920 x 1080"): string =>
  `faces: {left: {panel: tile-500-p3.1, columns: 1, rows: 6, support: wall}, right: {panel: tile-500-p3.1, columns: 1, rows: 6, support: wall}}
picture: {raster: ${raster}, at: {left: '0,0', right: ${right}}}`;

const UNMEASURED =
  "open: Circuit c has no earth-fault loop impedance at the outlet written down. Circuit c has no trip curve of the breaker written down.";

// What several cases have in common, so that only what differs stands in each.
const LEFT = [
  "holds: Face left reaches 160 px across; the raster has 1,920 px.",
  "holds: Face left reaches 960 px down; the raster has 1,080 px.",
  "holds: Face left covers no other face.",
];
const right = (across: string, down: string): readonly string[] => [
  `holds: Face right reaches ${across} px across; the raster has 1,920 px.`,
  `holds: Face right reaches ${down} px down; the raster has 1,080 px.`,
];
const SUPPLIES = "holds: Circuit stage-4 supplies 120 V through an outlet rated 125 V.";
// WD 6: 5 is one line, neutral and earth, 125 V; the class begins at 100 V.
const poles = (outlet: string): readonly string[] => [
  `holds: Circuit stage-4 is supplied by one line and neutral; NEMA ${outlet} has 2P+PE.`,
  "holds: Circuit stage-4 supplies 120 V through an outlet of a class that begins at 100 V.",
];
const WIRES = "holds: The feed of run P1 has 3 conductors; its plug needs 3, the earth among them.";
const JUMPERS =
  "holds: The jumper of run P1: ac-locking-16 mates with ac-locking-16 at power-out of banner A1 and 9 more.";
const plugIn = (outcome: string, outlet: string): string =>
  `${outcome}: The feed of run P1 has the plug NEMA 5-20; circuit stage-4 has the outlet NEMA ${outlet}.`;

const cases: readonly Case[] = [
  {
    name: "six panels left out are all named",
    rule: "power.fed-once",
    front: `${face(7)}\n${runs("banner A1")}`,
    tells: [
      "fails: banner A2 is on no run; banner A3 is on no run; banner A4 is on no run; banner A5 is on no run; banner A6 is on no run; banner A7 is on no run.",
    ],
  },
  {
    name: "of eight left out six are named",
    rule: "power.fed-once",
    front: `${face(9)}\n${runs("banner A1")}`,
    tells: [
      "fails: banner A2 is on no run; banner A3 is on no run; banner A4 is on no run; banner A5 is on no run; banner A6 is on no run; banner A7 is on no run; and 2 more.",
    ],
  },
  {
    name: "all fed",
    rule: "power.fed-once",
    front: `${face(2)}\n${runs("banner A1..A2")}`,
    tells: ["holds: Every panel of face banner is powered once."],
  },
  {
    name: "six panels without data are all named",
    rule: "data.fed-once",
    front: `${face(7)}\n${chains("banner A1")}`,
    tells: [
      "fails: banner A2 is on no chain; banner A3 is on no chain; banner A4 is on no chain; banner A5 is on no chain; banner A6 is on no chain; banner A7 is on no chain.",
    ],
  },
  {
    name: "of eight without data six are named",
    rule: "data.fed-once",
    front: `${face(9)}\n${chains("banner A1")}`,
    tells: [
      "fails: banner A2 is on no chain; banner A3 is on no chain; banner A4 is on no chain; banner A5 is on no chain; banner A6 is on no chain; banner A7 is on no chain; and 2 more.",
    ],
  },
  {
    name: "all on a chain",
    rule: "data.fed-once",
    front: `${face(2)}\n${chains("banner A1..A2")}`,
    tells: ["holds: Every panel of face banner is sent data once."],
  },
  {
    name: "no chain at all",
    rule: "data.fed-once",
    front: face(2),
    tells: ["open: Face banner: 2 of 2 panels are on no chain that is written down."],
  },
  {
    name: "no run at all",
    rule: "power.fed-once",
    front: face(2),
    tells: ["open: Face banner: 2 of 2 panels are on no run that is written down."],
  },
  {
    name: "a panel twice and one never, with a run not listed",
    rule: "power.fed-once",
    front: `${face(3)}\npower: {runs: {P1: {panels: banner A1..A2}, P2: {panels: banner A2}, P3: {feed: {length: 3 m}}}}`,
    tells: ["fails: banner A3 is on no run; banner A2 is on P1 and P2."],
  },
  {
    name: "a panel twice and one never, with a chain not listed",
    rule: "data.fed-once",
    front: `${face(3)}\ndata: {chains: {D1: {panels: banner A1..A2}, D2: {panels: banner A2}, D3: {port: 3}}}`,
    tells: ["fails: banner A3 is on no chain; banner A2 is on D1 and D2."],
  },
  {
    name: "four jumps are all named",
    rule: "data.neighbours",
    front: `${face(12)}\n${chains("banner A1, A3, A5, A7, A9")}`,
    tells: [
      "fails: Chain D1 jumps from banner A1 to banner A3, from banner A3 to banner A5, from banner A5 to banner A7, from banner A7 to banner A9.",
    ],
  },
  {
    name: "of six jumps four are named",
    rule: "data.neighbours",
    front: `${face(14)}\n${chains("banner A1, A3, A5, A7, A9, A11, A13")}`,
    tells: [
      "fails: Chain D1 jumps from banner A1 to banner A3, from banner A3 to banner A5, from banner A5 to banner A7, from banner A7 to banner A9 and 2 times more.",
    ],
  },
  {
    name: "along the row",
    rule: "data.neighbours",
    front: `${face(3)}\n${chains("banner A1..A3")}`,
    tells: ["holds: Chain D1 goes from neighbour to neighbour."],
  },
  {
    name: "one by rows, one by columns",
    rule: "data.neighbours",
    front: `${face(4, 3)}\n${chains("banner A1..A3", "banner A4..C4")}`,
    tells: [
      "fails: On face banner chain D1 goes row by row and chain D2 column by column.",
      "holds: Chain D1 goes from neighbour to neighbour.",
      "holds: Chain D2 goes from neighbour to neighbour.",
    ],
  },
  {
    name: "both by columns",
    rule: "data.neighbours",
    front: `${face(2, 3)}\n${chains("banner A1..C1", "banner A2..C2")}`,
    tells: [
      "holds: All chains of face banner go column by column.",
      "holds: Chain D1 goes from neighbour to neighbour.",
      "holds: Chain D2 goes from neighbour to neighbour.",
    ],
  },
  {
    name: "as many steps of either way have no grain",
    rule: "data.neighbours",
    front: `${face(4, 2)}\n${chains("banner A1..A2, B2", "banner A3..A4")}`,
    tells: ["holds: Chain D1 goes from neighbour to neighbour.", "holds: Chain D2 goes from neighbour to neighbour."],
  },
  {
    name: "one outlet of 20 A on 20 A",
    rule: "power.plug-fits",
    front: circuit(20, "nema-5-20", ", outlets: 1"),
    tells: [
      SUPPLIES,
      ...poles("5-20"),
      "holds: Circuit stage-4 has an outlet of 20 A on a breaker of 20 A.",
      "holds: Circuit stage-4 has 1 outlet for 1 run.",
      plugIn("holds", "5-20"),
      WIRES,
    ],
  },
  {
    name: "several outlets of 15 A on 20 A",
    rule: "power.plug-fits",
    front: circuit(20, "nema-5-15", ", outlets: 4"),
    tells: [
      SUPPLIES,
      ...poles("5-15"),
      "holds: Circuit stage-4 has outlets of 15 A on a breaker of 20 A.",
      "holds: Circuit stage-4 has 4 outlets for 1 run.",
      plugIn("fails", "5-15"),
      WIRES,
      "holds: Run P1 draws 7 A from one of several outlets; 12 A is the most.",
    ],
  },
  {
    name: "outlets of 15 A on 20 A, nobody knows how many",
    rule: "power.plug-fits",
    front: circuit(20, "nema-5-15"),
    tells: [
      SUPPLIES,
      ...poles("5-15"),
      "open: Circuit stage-4: whether an outlet of 15 A may be on a breaker of 20 A depends on how many there are.",
      plugIn("fails", "5-15"),
      WIRES,
      "holds: Run P1 draws 7 A from one of several outlets; 12 A is the most.",
    ],
  },
  {
    name: "outlets of 20 A on 20 A, nobody knows how many",
    rule: "power.plug-fits",
    front: circuit(20, "nema-5-20"),
    tells: [
      SUPPLIES,
      ...poles("5-20"),
      "holds: Circuit stage-4 has outlets of 20 A on a breaker of 20 A.",
      plugIn("holds", "5-20"),
      WIRES,
      "holds: Run P1 draws 7 A from one of several outlets; 16 A is the most.",
    ],
  },
  {
    name: "one outlet of 15 A on 20 A",
    rule: "power.plug-fits",
    front: circuit(20, "nema-5-15", ", outlets: 1"),
    tells: [
      SUPPLIES,
      ...poles("5-15"),
      "fails: Circuit stage-4 has an outlet of 15 A on a breaker of 20 A.",
      "holds: Circuit stage-4 has 1 outlet for 1 run.",
      plugIn("fails", "5-15"),
      WIRES,
    ],
  },
  {
    name: "a breaker nobody wrote down",
    rule: "power.plug-fits",
    front: circuit(20, "nema-5-20", ", outlets: 1").replace("breaker: 20 A, ", ""),
    tells: [
      SUPPLIES,
      ...poles("5-20"),
      "open: Circuit stage-4 has no breaker rating written down.",
      "holds: Circuit stage-4 has 1 outlet for 1 run.",
      plugIn("holds", "5-20"),
      WIRES,
    ],
  },
  {
    name: "iec outlet",
    rule: "power.plug-fits",
    front: circuit(20, "iec-60309-16-3", ", outlets: 2"),
    tells: [
      "open: IEC 60309, 16 A, 3 wires has no rated voltage at hand for us practice; state it on the part.",
      "holds: Circuit stage-4 is supplied by one line and neutral; IEC 60309, 16 A, 3 wires has 2P+PE.",
      "fails: Circuit stage-4 supplies 120 V through an outlet of a class that begins at 200 V.",
      "open: IEC 60309, 16 A, 3 wires has no rated current at hand for us practice; state it on the part.",
      "holds: Circuit stage-4 has 2 outlets for 1 run.",
      "fails: The feed of run P1 has the plug NEMA 5-20; circuit stage-4 has the outlet IEC 60309, 16 A, 3 wires.",
      WIRES,
    ],
  },
  {
    name: "joints of one cable are told once",
    rule: "connectors.mate",
    front: circuit(20, "nema-5-20"),
    tells: ["holds: The feed of run P1: ac-locking-16 mates with ac-locking-16 at power-in of banner A1.", JUMPERS],
  },
  {
    name: "one tile, one joint",
    rule: "connectors.mate",
    front: circuit(20, "nema-5-20").replaceAll("A1..A6", "A1"),
    tells: ["holds: The feed of run P1: ac-locking-16 mates with ac-locking-16 at power-in of banner A1."],
  },
  {
    name: "appliance feed",
    rule: "connectors.mate",
    front: circuit(20, "nema-5-20").replace("cord-12-3,", "cord-12-3-c13-20,"),
    tells: ["fails: The feed of run P1: iec-c13 does not mate with ac-locking-16 at power-in of banner A1.", JUMPERS],
  },
  {
    name: "feed of an unknown part",
    rule: "connectors.mate",
    front: circuit(20, "nema-5-20").replace("part: cord-12-3, ", ""),
    tells: ["open: The feed of run P1: a connector at power-in of banner A1 is not written down.", JUMPERS],
  },
  {
    name: "held overhead",
    rule: "connectors.locking-overhead",
    front: circuit(20, "nema-5-20"),
    tells: [
      "holds: Run P1: ac-locking-16 at power-in of banner A1 is overhead and held (twist).",
      "holds: Run P1: ac-locking-16 at power-out of banner A1 and 4 more are overhead and held (twist).",
      "holds: Run P1: ac-locking-16 at power-in of banner A2 and 4 more are overhead and held (twist).",
    ],
  },
  {
    name: "one tile held overhead",
    rule: "connectors.locking-overhead",
    front: circuit(20, "nema-5-20").replaceAll("A1..A6", "A1"),
    tells: ["holds: Run P1: ac-locking-16 at power-in of banner A1 is overhead and held (twist)."],
  },
  {
    name: "side by side",
    rule: "picture.placed",
    front: two("'160,0'"),
    tells: [...LEFT, ...right("320", "960"), "holds: Face right covers no other face."],
  },
  {
    name: "one pixel over",
    rule: "picture.placed",
    front: two("'159,0'"),
    tells: [...LEFT, ...right("319", "960"), "fails: Face right covers a part of left."],
  },
  {
    name: "a copy",
    rule: "picture.placed",
    front: two("{at: '0,0', copy-of: left}"),
    tells: [
      ...LEFT,
      ...right("160", "960"),
      "holds: Face right covers no other face.",
      "holds: Face right repeats face left.",
    ],
  },
  {
    name: "a copy of itself",
    rule: "picture.placed",
    front: two("{at: '0,0', copy-of: right}"),
    tells: [
      ...LEFT,
      ...right("160", "960"),
      "fails: Face right covers a part of left.",
      "fails: Face right repeats right, which is no other face.",
    ],
  },
  {
    name: "a copy of nothing",
    rule: "picture.placed",
    front: two("{at: '0,0', copy-of: middle}"),
    tells: [
      ...LEFT,
      ...right("160", "960"),
      "fails: Face right covers a part of left.",
      "fails: Face right repeats middle, which is no other face.",
    ],
  },
  {
    name: "one to one",
    rule: "picture.placed",
    front: two("{at: '160,0', scaled: 160 x 960}"),
    tells: [
      ...LEFT,
      ...right("320", "960"),
      "holds: Face right covers no other face.",
      "holds: Face right has 160 × 960 pixels and is given 160 × 960 of the raster.",
    ],
  },
  {
    name: "half as wide",
    rule: "picture.placed",
    front: two("{at: '160,0', scaled: 80 x 960}"),
    tells: [
      ...LEFT,
      ...right("240", "960"),
      "holds: Face right covers no other face.",
      "fails: Face right has 160 × 960 pixels and is given 80 × 960 of the raster.",
    ],
  },
  {
    name: "half as high",
    rule: "picture.placed",
    front: two("{at: '160,0', scaled: 160 x 480}"),
    tells: [
      ...LEFT,
      ...right("320", "480"),
      "holds: Face right covers no other face.",
      "fails: Face right has 160 × 960 pixels and is given 160 × 480 of the raster.",
    ],
  },
  {
    name: "one batch",
    rule: "panels.batch",
    front: face(2, 1, "flown", ", lot: lot-2431"),
    tells: ["holds: Face banner is of one batch, 24-31."],
  },
  {
    name: "two batches",
    rule: "panels.batch",
    front: face(4, 2, "flown", ", lot: {lot-2507: 5, lot-2512: 3}").replace("p3.1", "p4.2"),
    tells: ["fails: Face banner mixes the batches 25-07 and 25-12."],
  },
  {
    name: "another panel",
    rule: "panels.batch",
    front: face(2, 1, "flown", ", lot: lot-2507"),
    tells: ["fails: Face banner is of tile-500-p3.1; its lot is of tile-500-p4.2."],
  },
  {
    name: "weight to the tenth",
    rule: "document.quoted-values",
    front: face(6),
    body: "[47.4 kg](calc:faces.banner.mass) [47.5 kg](calc:faces.banner.mass) [47 kg](calc:faces.banner.mass) [48 kg](calc:faces.banner.mass) [47.40 kg](calc:faces.banner.mass) [47.41 kg](calc:faces.banner.mass) [3 ft](calc:faces.banner.mass)",
    tells: [
      "holds: The text says 47.4 kg for faces.banner.mass.",
      "fails: The text says 47.5 kg for faces.banner.mass; computed it is 47.4 kg.",
      "holds: The text says 47 kg for faces.banner.mass.",
      "fails: The text says 48 kg for faces.banner.mass; computed it is 47.4 kg.",
      "holds: The text says 47.40 kg for faces.banner.mass.",
      "fails: The text says 47.41 kg for faces.banner.mass; computed it is 47.4 kg.",
      "fails: `3 ft` cannot be read as the unit of faces.banner.mass.",
    ],
  },
  {
    name: "a wrong name",
    rule: "document.quoted-values",
    front: face(6),
    body: "[47.4 kg](calc:faces.banner.masss)",
    tells: ["fails: There is no computed value `faces.banner.masss`."],
  },
  {
    name: "cautions for nothing known",
    rule: "document.cautions",
    front: "author: nobody",
    tells: [
      "open: Whether the build lifts or uses mains cannot be told, and nobody is written down who has gone over its cautions.",
    ],
  },
  {
    name: "cautions for a wall",
    rule: "document.cautions",
    front: `${face(2, 2, "wall")}\ncautions-confirmed: {by: M. Finch, on: 2026-12-01}`,
    tells: ["holds: M. Finch has gone over the cautions on 2026-12-01."],
  },
  {
    name: "cautions on no day",
    rule: "document.cautions",
    front: `${face(2, 2, "wall")}\ncautions-confirmed: {by: M. Finch}`,
    tells: ["open: The build uses mains; on which day M. Finch has gone over its cautions is not written down."],
  },
  {
    name: "cautions for a face not told how it is held",
    rule: "document.cautions",
    front: "faces: {banner: {panel: tile-500-p3.1, columns: 2, rows: 1}}",
    tells: ["open: The build uses mains, and nobody is written down who has gone over its cautions."],
  },
  {
    name: "cautions with a bar alone",
    rule: "document.cautions",
    front: "rigging: {bars: {header: {length: 2 m}}}",
    tells: ["open: The build lifts, and nobody is written down who has gone over its cautions."],
  },
  {
    name: "cautions with a circuit alone",
    rule: "document.cautions",
    front: "power: {circuits: {stage-4: {supply: 120 V}}}",
    tells: ["open: The build uses mains, and nobody is written down who has gone over its cautions."],
  },
  {
    name: "cautions with a run alone",
    rule: "document.cautions",
    front: "power: {runs: {P1: {feed: {length: 3 m}}}}",
    tells: ["open: The build uses mains, and nobody is written down who has gone over its cautions."],
  },
  {
    name: "no port",
    rule: "data.processor-load",
    front: `${face(2)}\n${chains("banner A1", "banner A2")}`,
    tells: ["open: The build has no processor written down.", "open: Chain D1 and Chain D2 name no port."],
  },
  {
    name: "one without port",
    rule: "data.processor-load",
    front: `${face(2)}\ndata: {processor: {part: processor-6}, chains: {D1: {port: 1, panels: banner A1}, D2: {panels: banner A2}}}`,
    tells: [
      "holds: All chains together have 51,200 px; the processor drives 2,211,840 px.",
      "open: Chain D2 names no port.",
    ],
  },
  {
    name: "a port each",
    rule: "data.processor-load",
    front: `${face(2)}\ndata: {processor: {part: processor-6}, chains: {D1: {port: 1, panels: banner A1}, D2: {port: 2, panels: banner A2}}}`,
    tells: [
      "holds: All chains together have 51,200 px; the processor drives 2,211,840 px.",
      "holds: The highest port used is 2; the processor has 6.",
      "holds: Every port is used once.",
    ],
  },
  {
    name: "a port twice",
    rule: "data.processor-load",
    front: `${face(2)}\ndata: {processor: {part: processor-6}, chains: {D1: {port: 2, panels: banner A1}, D2: {port: 2, panels: banner A2}}}`,
    tells: [
      "holds: All chains together have 51,200 px; the processor drives 2,211,840 px.",
      "holds: The highest port used is 2; the processor has 6.",
      "fails: Port 2 is used more than once.",
    ],
  },
  {
    name: "one document",
    rule: "document.identity",
    front: face(1),
    tells: ["holds: No other document is called told."],
  },
  // BS 7671, 415.1.1: additional protection is a residual device of at most 30 mA.
  ...(
    [
      ["30 mA", "holds: The residual device of circuit c opens at 30 mA, in 40 ms at five times that."],
      ["100 mA", UNMEASURED],
      ["none", UNMEASURED],
    ] as const
  ).map(
    ([residual, says]): Case => ({
      name: `residual ${residual}`,
      rule: "power.disconnection",
      front: `practice: iec\n${face(2)}\npower: {circuits: {c: {supply: 230 V, breaker: 16 A, residual: ${residual}}}}`,
      tells: [says],
    }),
  ),
  {
    name: "one jump",
    rule: "data.neighbours",
    front: `${face(3)}\n${chains("banner A1, A3")}`,
    tells: ["fails: Chain D1 jumps from banner A1 to banner A3."],
  },
  {
    name: "one chain",
    rule: "data.processor-load",
    front: `${face(2)}\ndata: {processor: {part: processor-6}, chains: {D1: {port: 1, panels: banner A1..A2}}}`,
    tells: [
      "holds: All chains together have 51,200 px; the processor drives 2,211,840 px.",
      "holds: The highest port used is 1; the processor has 6.",
      "holds: Every port is used once.",
    ],
  },
  {
    name: "in the rack",
    rule: "connectors.actives-overhead",
    front: `${face(2)}\ndata: {processor: {part: processor-6, place: rack A}}`,
    tells: ["holds: processor-6 is in reach (rack A)."],
  },
  {
    name: "overhead, nobody says where",
    rule: "connectors.actives-overhead",
    front: `${face(2)}\ndata: {processor: {part: processor-6, overhead: true}}`,
    tells: ["fails: processor-6 hangs overhead."],
  },
  {
    name: "on the flown face",
    rule: "connectors.actives-overhead",
    front: `${face(2)}\ndata: {processor: {part: processor-6, place: banner}}`,
    tells: ["fails: processor-6 hangs overhead (banner)."],
  },
  {
    name: "heat",
    rule: "power.heat",
    front: face(6),
    tells: [
      "holds: The panels put up to 2,723 BTU/h into the room (0.23 tons of refrigeration); above 35,827 BTU/h cooling is planned for.",
    ],
  },
  {
    name: "bar covers",
    rule: "rigging.bar-covers",
    front: `${face(3)}\nrigging: {bars: {header: {section: pipe-1.5-std, length: 2.4 m, carries: {face: banner, columns: 2..3, from: 0.2 m}}}}`,
    tells: [
      "fails: Face banner: column 1 hangs from no bar.",
      "holds: Face banner ends 1.2 m from the left end of bar header, which is 2.4 m long.",
    ],
  },
  {
    name: "no bar",
    rule: "rigging.bar-covers",
    front: `${face(2)}\nrigging: {bars: {}}`,
    tells: ["open: Face banner is flown and no bar is written down."],
  },
  {
    name: "clips",
    rule: "rigging.rope-clips",
    front: `${face(4)}\nrigging: {bars: {header: {section: pipe-1.5-std, length: 2.4 m, carries: {face: banner, from: 200 mm}, hangs: {H1: {at: 200 mm, assembly: [beam-clamp, {part: wire-rope-1-4, termination: clips, clips: 2}, pipe-collar]}}}}}`,
    tells: ["fails: Hang H1 of bar header: each eye of wire-rope-1-4 has 2 clips; 4 are needed."],
  },
  {
    name: "lift",
    rule: "rigging.lift",
    front: face(1),
    tells: ["open: How many people lift a piece is not written down."],
  },
  {
    name: "actives overhead",
    rule: "connectors.actives-overhead",
    front: `${face(2)}\ndata: {processor: {part: processor-6}}`,
    tells: ["open: Where processor-6 stands is not written down."],
  },
  {
    name: "chain loops",
    rule: "data.loop",
    front: `${face(2)}\ndata: {processor: {part: processor-6}, chains: {D1: {port: 1, back-up-port: 2, panels: banner A1}, D2: {port: 3, panels: banner A2}}}`,
    tells: [
      "open: Chain D1 has a back-up port, but whether its loop is closed cannot be told.",
      "fails: Chain D2 has no back-up port; one bad joint darkens all behind it.",
    ],
  },
  {
    name: "hops",
    rule: "data.hop-length",
    front: `${face(2)}\ndata: {processor: {part: processor-6}, chains: {D1: {port: 1, feed: {part: cat6-solid, length: 30 m}, jumper: {part: data-jumper, length: 0.9 m}, panels: banner A1..A2}}}`,
    tells: [
      "holds: The feed of chain D1 is 30 m long; it carries 100 m.",
      "holds: The jumper of chain D1 is 0.9 m long; it carries 85 m.",
    ],
  },
  {
    name: "hops of one tile",
    rule: "data.hop-length",
    front: `${face(1)}\ndata: {processor: {part: processor-6}, chains: {D1: {port: 1, feed: {part: cat6-solid, length: 30 m}, jumper: {part: data-jumper, length: 0.9 m}, panels: banner A1}}}`,
    tells: ["holds: The feed of chain D1 is 30 m long; it carries 100 m."],
  },
  {
    name: "a wall needs no second suspension",
    rule: "rigging.secondary",
    front: `${face(2, 2, "wall")}\nrigging: {over-people: true}`,
    tells: [],
  },
  {
    name: "nobody is below",
    rule: "rigging.secondary",
    front: `${face(2)}\nrigging: {over-people: false, bars: {header: {length: 2 m}}}`,
    tells: [],
  },
  {
    name: "a bar over people, whatever it carries",
    rule: "rigging.secondary",
    front: `${face(2, 2, "wall")}\nrigging: {over-people: true, bars: {header: {length: 2 m}}}`,
    tells: ["open: No second suspension of bar header is written down."],
  },
  {
    name: "a flown face over people, its bar not drawn yet",
    rule: "rigging.secondary",
    front: `${face(2)}\nrigging: {over-people: true}`,
    tells: ["open: No second suspension is written down."],
  },
  {
    name: "no hang has no design factor",
    rule: "rigging.design-factor",
    front: `${face(2)}\nrigging: {bars: {header: {length: 2 m}}}`,
    tells: [],
  },
  {
    name: "a hang, and nobody told who is below",
    rule: "rigging.design-factor",
    front: `${face(2)}\nrigging: {bars: {header: {length: 2 m, hangs: {H1: {at: 1 m}}}}}`,
    tells: ["open: Whether people are below is not written down, so the design factor is not known."],
  },
  {
    name: "a lot nobody bought",
    rule: "stock.promised-twice",
    front: `on-site: 2027-03-05 to 2027-03-08\n${face(2, 1, "flown", ", lot: lot-9999, spares: 0")}`,
    tells: ["open: The lot lot-9999 is not in the stock list."],
  },
  {
    name: "a column of each bar",
    rule: "rigging.bar-covers",
    front: `${face(2)}\nrigging: {bars: {header: {section: pipe-1.5-std, length: 1.1 m, carries: {face: banner, from: 0 m}}}}`,
    tells: [
      "holds: Every column of face banner hangs from a bar.",
      "holds: Face banner ends 1 m from the left end of bar header, which is 1.1 m long.",
    ],
  },
  {
    name: "all are fed, whatever another run says",
    rule: "power.fed-once",
    front: `${face(2)}\npower: {runs: {P1: {panels: banner A1..A2}, P2: {feed: {length: 3 m}}}}`,
    tells: ["holds: Every panel of face banner is powered once."],
  },
  {
    name: "all have data, whatever another chain says",
    rule: "data.fed-once",
    front: `${face(2)}\ndata: {chains: {D1: {panels: banner A1..A2}, D2: {port: 2}}}`,
    tells: ["holds: Every panel of face banner is sent data once."],
  },
];

describe("what a rule tells", () => {
  for (const { name, rule, front, body, tells } of cases)
    test(`${rule}: ${name}`, () => expect(told(rule, front, body)).toEqual(tells));
});

describe("which design factor is asked for", () => {
  // US practice by the rule's settings: 8 over people, 5 with nobody below; half the WLL only where the house says so.
  const hung = (over: boolean): string =>
    `${face(4)}
rigging:
  over-people: ${over}
  bars:
    header:
      section: pipe-1.5-std
      length: 2.4 m
      carries: {face: banner, from: 200 mm}
      hangs:
        H1: {at: 300 mm, assembly: [wire-rope-1-4]}
        H2: {at: 2.1 m, assembly: [wire-rope-1-4]}`;
  test.each([
    [true, "8 times is the least over people."],
    [false, "5 times is the least."],
  ])("people below: %s", (over, words) => {
    const all = told("rigging.design-factor", hung(over)).filter(
      (each) => each.includes("at least ") || each.includes("times"),
    );
    expect(all).toHaveLength(2);
    for (const each of all) expect(each).toContain(words);
  });
});

test.each([
  [["a", "b"], "b.md is called told, too."],
  [["a", "b", "c"], "b.md and c.md are called told, too."],
])("documents of one name: %s", (names, says) => {
  const text = "---\nbuild: told\ntitle: Told\nstatus: draft\n---\n";
  const documents = names.map((name) => ({ path: `${name}.md`, text }));
  const only = rules.filter(({ id }) => id === "document.identity");
  const all = openRepository({ ...alone({ path: "a.md", text }), documents }, only, { today: "2027-01-01" });
  const [check] = all.one("a.md").entry.checks.filter(({ rule }) => rule === "document.identity");
  expect([check?.outcome, check?.says]).toEqual(["fails", says]);
});

// 133 W ÷ 0.95 = 140 VA a tile; 80 % of 20 A at 120 V are 1,920 VA (NEC 210.20(A)): thirteen tiles, 1,820 VA.
test.each([
  [15, "", "13 of its 15 panels fit: move 2 to another circuit, or feed the run at a higher voltage."],
  [
    2,
    ", other-load: 1900 VA",
    "None of its 2 panels fits beside what else is on it: move them to another circuit, or feed the run at a higher voltage.",
  ],
  [0, ", other-load: 2500 VA", "Move some of the other load to another circuit."],
])("a circuit with %i panels too many: how to mend it%s", (panels, more, mend) => {
  const run =
    panels === 0
      ? ""
      : `\n  runs: {P1: {from: c, feed: {part: cord-12-3, length: 35 ft}, jumper: {part: power-jumper, length: 0.9 m}, panels: banner A1..A${panels}}}`;
  const front = `${face(Math.max(panels, 1))}\npower:\n  circuits: {c: {supply: 120 V, breaker: 20 A, outlet: nema-5-20, wiring: {conductor: 12 AWG, length: 50 ft}${more}}}${run}`;
  const text = `---\nbuild: told\ntitle: Told\nstatus: for-build\npractice: us\n${front}\n---\n`;
  const only = rules.filter(({ id }) => id === "power.circuit-load");
  const { checks } = openRepository(alone({ path: "told.md", text }), only, { today: "2027-01-01" }).one(
    "told.md",
  ).entry;
  const [check] = checks.filter(({ rule, outcome }) => rule === "power.circuit-load" && outcome === "fails");
  expect(check?.mend).toBe(mend);
});
