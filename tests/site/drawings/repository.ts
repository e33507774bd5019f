import { type InspectedDocument, openRepository, type RepositoryFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starter, TODAY } from "../../documents/repository.js";
import { HALL } from "../../venues/hall.js";

/** A document with what the starter has not: bridles, cells left out, three phases, an eye height, gaps. */
const ODD = `---
build: odd
title: Odd ends
status: draft
practice: us
faces:
  wide: {panel: tile-500-p3.1, columns: 10, rows: 3, support: flown, trim: 9 ft, omit: [A1..A2, A9..A10]}
power:
  circuits:
    c-1: {supply: {three-phase: 208 V}, breaker: 20 A, outlet: nema-l21-20, wiring: {conductor: 12 AWG, length: 50 ft}}
  runs:
    P1: {from: c-1, legs: AB, feed: {part: cord-12-3, length: 35 ft}, jumper: {part: power-jumper, length: 0.9 m}, panels: "wide A3..A8, B8..B1"}
    P2: {from: c-1, legs: BC, feed: {part: cord-12-3, length: 35 ft}, jumper: {part: power-jumper, length: 0.9 m}, panels: "wide C1..C9"}
    P3: {from: c-1, legs: CA, feed: {part: cord-12-3}, jumper: {part: power-jumper, length: 0.9 m}}
data:
  processor: {part: processor-6, place: rack}
  chains:
    D1: {port: 1, feed: {part: cat6-solid, length: 60 ft}, jumper: {part: data-jumper, length: 0.9 m}, panels: "wide A3..A8, B8..B1, C1..C10"}
picture: {raster: 1920 x 1080, rate: 60 Hz, depth: 8 bit, at: {wide: "400,800"}}
audience: {nearest: 12 ft, farthest: 90 ft, eye-height: 45 in}
rigging:
  over-people: true
  bars:
    long:
      section: pipe-1.5-std
      length: 18 ft
      carries: {face: wide, from: 9 in}
      hangs:
        H1: {at: 1 ft, assembly: [pipe-collar], bridle: {left: {rise: 4 ft, run: 3 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}, right: {rise: 5 ft, run: 2 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}}}
        H2: {at: 6 ft, assembly: [beam-clamp, wire-rope-1-4], structure: 500 lb}
        H3: {at: 7 ft, assembly: [beam-clamp, wire-rope-1-4], structure: 500 lb}
        H4: {at: 12 ft, assembly: [beam-clamp, wire-rope-1-4]}
        H5: {at: 17 ft, assembly: [beam-clamp, wire-rope-1-4], structure: 500 lb}
---
# Odd ends
`;

/** A long bar on bridles that reach far beyond both of its ends and high above it, under one panel. */
const FAR = `---
build: far
title: Far apart
status: draft
practice: us
faces:
  strip: {panel: tile-500-p3.1, columns: 4, rows: 1, support: flown, trim: 20 ft}
power:
  circuits:
    c-1: {supply: 120 V, breaker: 20 A, outlet: nema-5-20, outlets: 2, wiring: {conductor: 12 AWG, length: 50 ft}, other-load: 300 W}
  runs:
    P1: {from: c-1, feed: {part: cord-12-3, length: 35 ft}, jumper: {part: power-jumper, length: 0.9 m}, panels: "strip A1..A3"}
    P2: {from: c-1, feed: {part: cord-12-3, length: 35 ft}, panels: "strip A4"}
rigging:
  over-people: true
  bars:
    far:
      section: pipe-1.5-std
      length: 24 ft
      carries: {face: strip, from: 2 ft 6 in}
      hangs:
        H1: {at: 2 ft, assembly: [pipe-collar], bridle: {left: {rise: 20 ft, run: 1.5 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}, right: {rise: 20 ft, run: 1 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}}}
        H2: {at: 22 ft, assembly: [pipe-collar], bridle: {left: {rise: 20 ft, run: 1 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}, right: {rise: 20 ft, run: 30 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}}}
---
# Far apart
`;

/** A bar under the surveyed beam of a hall: its hangs are at points of the beam. */
const UNDER = `---
build: under
title: Under a beam
status: draft
practice: us
venue: ferry-hall
faces:
  sign: {panel: tile-500-p3.1, columns: 3, rows: 1, support: flown, trim: 9 ft, upstage: 2 ft}
picture:
  raster: 640 x 480
  at: {sign: "100,60"}
  path:
    - {part: playback-computer, place: booth}
    - {part: hdmi-cable, length: 3 ft}
    - {part: hdmi-to-sdi, place: booth}
    - {part: sdi-coax, length: 160 ft}
    - {part: sdi-to-hdmi, place: rack a}
    - {part: hdmi-cable, length: 6 ft}
    - {part: hdmi-to-sdi}
    - {part: sdi-coax, length: 20 ft}
    - {part: sdi-to-hdmi}
data:
  processor: {part: processor-6, place: rack a}
  chains:
    D1: {port: 1, feed: {part: cat6-solid, length: 60 ft}, panels: "sign A1"}
    D2: {port: 2, back-up-port: 3, feed: {part: cat6-solid, length: 60 ft}, jumper: {part: data-jumper, length: 0.9 m}, return: {part: cat6-solid, length: 40 ft}, panels: "sign A2..A3"}
rigging:
  over-people: true
  bars:
    low:
      section: pipe-1.5-std
      length: 10 ft
      carries: {face: sign, from: 2 ft}
      height: 11 ft
      hangs:
        H1: {point: front-beam.F1, at: 1 ft, assembly: [beam-clamp, wire-rope-1-4]}
        H2: {point: front-beam.F2, assembly: [beam-clamp, wire-rope-1-4]}
        H3: {point: front-beam.F3, assembly: [beam-clamp, wire-rope-1-4]}
---
# Under a beam
`;

/** Panels of three kinds in one face, each with its sockets elsewhere. */
const KINDS = `---
build: kinds
title: Three kinds
status: draft
practice: iec
faces:
  wall:
    panel: strip
    columns: 4
    rows: 3
    support: wall
    height-above: 1 m
    other-panels: {strip-b: "A2..A3", strip-c: "B4"}
---
# Three kinds
`;

const sockets = (...places: readonly string[]): string =>
  ["power-in", "power-out", "data-in", "data-out"].map((name, index) => `${name}: ${places[index]}`).join(", ");

const STRIPS = `strip: {kind: panel, size: 500 mm x 250 mm, pixels: 100 x 50, connector-at: {${sockets("100 mm x 50 mm", "400 mm x 50 mm", "100 mm x 200 mm", "400 mm x 200 mm")}}}
strip-b: {kind: panel, size: 500 mm x 250 mm, pixels: 100 x 50, connector-at: {${sockets("450 mm x 60 mm", "440 mm x 70 mm", "430 mm x 190 mm", "460 mm x 200 mm")}}}
strip-c: {kind: panel, size: 500 mm x 250 mm, pixels: 100 x 50}
`;

/** Two and a half thousand panels on a hundred runs. */
const rows = Array.from({ length: 40 }, (_, row) => (row < 26 ? "" : "A") + String.fromCharCode(65 + (row % 26)));
const runs = rows.flatMap((row, index) => [
  `    P${index}a: {from: c${index % 7}, feed: {part: cord-2.5-3g, length: 20 m}, jumper: {part: power-jumper-2.5, length: 0.9 m}, panels: "huge ${row}1..${row}30"}`,
  `    P${index}b: {from: c${index % 7}, feed: {part: cord-2.5-3g, length: 20 m}, jumper: {part: power-jumper-2.5, length: 0.9 m}, panels: "huge ${row}60..${row}31"}`,
]);
const circuits = Array.from(
  { length: 7 },
  (_, index) =>
    `    c${index}: {supply: 230 V, breaker: 16 A, outlet: iec-60309-16-3, wiring: {conductor: 2.5 mm2, length: 20 m}}`,
);
const HUGE = `---
build: huge
title: A wall of walls
status: draft
practice: iec
faces:
  huge: {panel: tile-500-p3.1, columns: 60, rows: 40, support: wall, height-above: 1 m}
power:
  circuits:
${circuits.join("\n")}
  runs:
${runs.join("\n")}
---
# A wall of walls
`;

/** A document of which nothing but the faces' names is written. */
const BARE = `---
build: bare
title: Hardly anything
status: draft
faces:
  one: {panel: tile-500-p3.1, columns: 2, rows: 2, support: stacked}
  two: {columns: 3, rows: 1}
power: {circuits: {c: {}}, runs: {P1: {from: c}}}
data: {chains: {D1: {}}}
picture: {}
rigging: {bars: {b: {hangs: {H1: {}}}}}
---
# Hardly anything
`;

/** A ribbon and a tower folded over the raster, a lamp that is one panel, and one more that shows the same. */
export const FOLDED = `---
build: folded
title: Folded over the raster
status: draft
faces:
  ribbon: {panel: tile-500-p3.1, columns: 25, rows: 1, support: wall}
  tower: {panel: tile-500-p3.1, columns: 1, rows: 10, support: wall}
  lamp: {panel: tile-500-p4.2, columns: 1, rows: 1, support: wall}
  twin: {panel: tile-500-p3.1, columns: 1, rows: 10, support: wall}
picture:
  raster: 1920 x 1080
  rate: 60 Hz
  depth: 8 bit
  at:
    ribbon:
      parts:
        - {columns: 1..9, at: "0,0"}
        - {columns: 10..17, at: "0,160"}
        - {columns: 18..25, at: "0,320"}
    tower:
      parts:
        - {rows: A..D, at: "1440,0"}
        - {rows: E..H, at: "1600,0"}
        - {rows: I..J, at: "1760,0"}
    lamp: 1800,900
    twin:
      copy-of: tower
      parts:
        - {rows: A..D, at: "1440,0"}
        - {rows: E..H, at: "1600,0"}
        - {rows: I..J, at: "1760,0"}
---
# Folded over the raster
`;

const more = [
  ["builds/odd.md", ODD],
  ["builds/far.md", FAR],
  ["builds/under.md", UNDER],
  ["builds/kinds.md", KINDS],
  ["builds/huge.md", HUGE],
  ["builds/bare.md", BARE],
  ["builds/folded.md", FOLDED],
] as const;

const own = starter();

export const files: RepositoryFiles = {
  ...own,
  parts: [...own.parts, { path: "parts/strips.yaml", text: STRIPS }],
  surveys: [...(own.surveys ?? []), { path: "venues/ferry-hall.md", text: HALL }],
  documents: [...own.documents, ...more.map(([path, text]) => ({ path, text }))],
};

const repository = openRepository(files, rules, { today: TODAY });

/** The paths of all documents. */
export const paths = repository.documents;

const known = new Map<string, InspectedDocument>();

/** A document of the starter or of these, inspected once. */
export function inspected(path: string): InspectedDocument {
  const found = known.get(path) ?? repository.one(path);
  known.set(path, found);
  return found;
}
