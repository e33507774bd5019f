import type { SourceId } from "../../sources/index.js";

/** A published pipe or tube. Lengths in metres, areas m², I m⁴, moduli m³, mass kg/m, stresses MPa. */
export interface PipeSection {
  readonly id: string;
  readonly name: string;
  readonly outside: number;
  /** Wall the properties are worked out with. */
  readonly wall: number;
  readonly wallIs: "design" | "nominal";
  readonly area: number;
  readonly secondMoment: number;
  readonly elastic: number;
  readonly plastic: number;
  readonly massPerMetre: number;
  readonly yield: number;
  readonly modulus: number;
  /** Divides yield × Z: 1.67 (AISC 360) or 1.65 (EN 12811-1). */
  readonly factor: number;
  readonly source: SourceId;
  readonly allowableSource: SourceId;
  /** False where part of the row is from memory. */
  readonly printed: boolean;
}

const IN = 0.0254;
const LB_FT = 0.45359237 / 0.3048;
const KSI = 6.894757293168;

const CM = 1e-2;

/** NPS name, OD in, wall in, lb/ft, A in², I in⁴, S in³, Z in³, printed. */
type PipeRow = readonly [string, number, number, number, number, number, number, number, boolean];

/** ASTM A53 Grade B, Fy 35 ksi. Weight always uses the nominal wall. */
const pipe =
  (wallIs: "design" | "nominal", source: SourceId) =>
  ([nps, od, wall, weight, A, I, S, Z, printed]: PipeRow): PipeSection => ({
    id: `pipe-${nps}-std${wallIs === "nominal" ? "-nominal" : ""}`,
    name: `NPS ${nps} standard pipe, ASTM A53 Gr. B, ${wallIs} wall`,
    outside: od * IN,
    wall: wall * IN,
    wallIs,
    area: A * IN ** 2,
    secondMoment: I * IN ** 4,
    elastic: S * IN ** 3,
    plastic: Z * IN ** 3,
    massPerMetre: weight * LB_FT,
    yield: 35 * KSI,
    modulus: 29000 * KSI,
    factor: 1.67,
    source,
    allowableSource: "aisc-360-f8",
    printed,
  });

/** AISC Shapes Database v16.0, design wall (about 0.93 × nominal): the default. */
export const designRows: readonly PipeRow[] = [
  ["1", 1.315, 0.124, 1.68, 0.469, 0.083, 0.126, 0.177, false],
  ["1.25", 1.66, 0.13, 2.27, 0.625, 0.184, 0.222, 0.305, false],
  ["1.5", 1.9, 0.135, 2.72, 0.749, 0.293, 0.309, 0.421, true],
  ["2", 2.375, 0.143, 3.65, 1.02, 0.627, 0.528, 0.713, false],
  ["2.5", 2.875, 0.189, 5.79, 1.61, 1.45, 1.01, 1.37, false],
  ["3", 3.5, 0.201, 7.58, 2.07, 2.85, 1.63, 2.19, false],
];

/** Mott, Table A16-6, nominal wall; Z by arithmetic. */
export const nominalRows: readonly PipeRow[] = [
  ["1", 1.315, 0.133, 1.68, 0.494, 0.08734, 0.1328, 0.187, true],
  ["1.25", 1.66, 0.14, 2.27, 0.669, 0.1947, 0.2346, 0.324, true],
  ["1.5", 1.9, 0.145, 2.72, 0.799, 0.3099, 0.3262, 0.448, true],
  ["2", 2.375, 0.154, 3.65, 1.075, 0.6658, 0.5607, 0.761, true],
  ["2.5", 2.875, 0.203, 5.79, 1.704, 1.53, 1.064, 1.452, true],
  ["3", 3.5, 0.216, 7.58, 2.228, 3.017, 1.724, 2.333, true],
];

/** id, name, OD mm, wall mm, kg/m, A cm², I cm⁴, S cm³, Z cm³, fy, E, source, printed. */
type TubeRow = readonly [
  string,
  string,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  SourceId,
  boolean,
];

const STEEL = 210_000;

export const tubeRows: readonly TubeRow[] = [
  [
    "tube-48.3x4.0",
    "steel tube 48.3 × 4.0 mm, EN 39 type 4",
    48.3,
    4,
    4.37,
    5.57,
    13.8,
    5.7,
    7.87,
    235,
    STEEL,
    "en-39",
    true,
  ],
  [
    "tube-48.3x3.2",
    "steel tube 48.3 × 3.2 mm, EN 39 type 3",
    48.3,
    3.2,
    3.56,
    4.534,
    11.59,
    4.8,
    6.52,
    235,
    STEEL,
    "en-39",
    false,
  ],
  [
    "tube-al-48.3x4.47",
    "aluminium tube 48.3 × 4.47 mm, BS 1139-1.2",
    48.3,
    4.47,
    1.67,
    6.15,
    14.9,
    6.18,
    8.61,
    255,
    70_000,
    "bs-1139-1.2",
    true,
  ],
];

const tube = ([id, name, od, wall, mass, A, I, S, Z, fy, E, source, printed]: TubeRow): PipeSection => ({
  id,
  name,
  outside: od / 1000,
  wall: wall / 1000,
  wallIs: "nominal",
  area: A * CM ** 2,
  secondMoment: I * CM ** 4,
  elastic: S * CM ** 3,
  plastic: Z * CM ** 3,
  massPerMetre: mass,
  yield: fy,
  modulus: E,
  factor: 1.65,
  source,
  allowableSource: "tg20-5.6",
  printed,
});

/** Sections a bar may name, by id: `pipe-1.5-std`, `pipe-1.5-std-nominal`, `tube-48.3x4.0`. */
export const sections: ReadonlyMap<string, PipeSection> = new Map(
  [
    ...designRows.map(pipe("design", "aisc-shapes-16")),
    ...nominalRows.map(pipe("nominal", "mott-a16-6")),
    ...tubeRows.map(tube),
  ].map((each) => [each.id, each]),
);
