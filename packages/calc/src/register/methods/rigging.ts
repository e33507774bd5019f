import { given } from "../../formula/value.js";
import { balanceMethods } from "../../rigging/beam/balance-methods.js";
import { type Beam, loadMomentAbout, totalLoad } from "../../rigging/beam/beam.js";
import { deflectionValue, momentValue, worstMoment } from "../../rigging/beam/bending.js";
import { deepest, deflectionAt } from "../../rigging/beam/deflection.js";
import { hangBeam } from "../../rigging/beam/slack.js";
import { liftAt, momentAt, shearAt, solveBeam, turnAt } from "../../rigging/beam/solve.js";
import { spanTerms } from "../../rigging/beam/span-terms.js";
import { termsOf } from "../../rigging/beam/terms.js";
import { beamMomentAt, shearsBeside, threeMomentEquations } from "../../rigging/beam/three-moment.js";
import { reactionValue } from "../../rigging/beam/working.js";
import { clipsNeeded } from "../../rigging/hardware/clips.js";
import { modeMethods } from "../../rigging/hardware/modes.js";
import { bySize, carbonCable } from "../../rigging/hardware/rope.js";
import {
  asymmetryMultiplier,
  couplingMultiplier,
  distanceMultiplier,
  frequencyMultiplier,
  horizontalMultiplier,
  peopleNeeded,
  verticalMultiplier,
} from "../../rigging/lift/niosh.js";
import { loadTableMethods } from "../../rigging/section/load-table.js";
import { deflectionFrom, isCompact } from "../../rigging/section/strength.js";
import { tubeProperties } from "../../rigging/section/tube.js";
import type { Method } from "../method.js";

const handbook = "handbook cases of a uniform load: simple span wL²/8, 5wL⁴/384; two spans 3/8, 10/8, 3/8";
const bar = "a straight bar of constant EI on level, unyielding supports";
/** One span of 8 m under 1 a metre: moment 8, EI × sag 5 × 8⁴ ÷ 384. */
const simple: Beam = { length: 8, supports: [0, 8], uniform: [{ from: 0, to: 8, perMetre: 1 }] };
/** Two spans of 8 m under 1 a metre: reactions 3, 10, 3, moment over the middle −8. */
const double: Beam = { length: 16, supports: [0, 8, 16], uniform: [{ from: 0, to: 16, perMetre: 1 }] };

export const beamMethods: readonly Method[] = [
  {
    name: "totalLoad",
    title: "Everything a beam carries",
    of: totalLoad,
    units: "loads → load",
    sources: ["statics"],
    validity: bar,
    example: { asks: "16 m at 1 a metre", got: () => totalLoad(double), gives: 16, from: "by hand" },
  },
  {
    name: "termsOf",
    title: "Loads left of a place as single forces",
    of: termsOf,
    units: "loads, m → load at m",
    sources: ["statics"],
    validity: "no couples on the beam",
    example: {
      asks: "8 m at 1 a metre, left of 4 m",
      got: () => termsOf(simple, 4).flatMap(({ load, at }) => [load, at]),
      gives: [4, 2],
      from: "4 m of load in the middle of those 4 m",
    },
  },
  {
    name: "loadMomentAbout",
    title: "Moment of all loads about a place",
    of: loadMomentAbout,
    units: "loads, m → load × m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "8 m at 1 a metre about its left end",
      got: () => loadMomentAbout(simple, 0),
      gives: 32,
      from: "8 × 4",
    },
  },
  {
    name: "solveBeam",
    title: "Reactions, moments and shears of a continuous beam",
    of: solveBeam,
    units: "loads and m → loads, load × m",
    sources: ["statics", "three-moment"],
    validity: bar,
    example: {
      asks: "two spans of 8 m at 1 a metre",
      got: () => solveBeam(double).reactions,
      gives: [3, 10, 3],
      within: 1e-9,
      from: handbook,
    },
  },
  {
    name: "hangBeam",
    title: "A bar on ropes: hangs that would push are slack",
    of: hangBeam,
    units: "loads and m → loads",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "three hangs, a load only on the overhang of the last",
      got: () => {
        const hung = hangBeam({ length: 10, supports: [0, 4, 8], points: [{ at: 9, load: 4 }] });
        return hung.stable ? hung.reactions : "not stable";
      },
      gives: "not stable",
      from: "no rope pushes: the load lies outside the hangs",
    },
  },
  {
    name: "shearAt",
    title: "Shear at a place of a stretch",
    of: shearAt,
    units: "m → load",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span, 2 m from its end",
      got: () => shearAt(solveBeam(simple).stretches[0]!, 2),
      gives: 2,
      from: "4 − 2",
    },
  },
  {
    name: "momentAt",
    title: "Moment at a place of a stretch",
    of: momentAt,
    units: "m → load × m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span of 8 m, middle",
      got: () => momentAt(solveBeam(simple).stretches[0]!, 4),
      gives: 8,
      from: handbook,
    },
  },
  {
    name: "beamMomentAt",
    title: "Moment at any place of a beam",
    of: beamMomentAt,
    units: "m → load × m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "two spans of 8 m, over the middle",
      got: () => beamMomentAt(solveBeam(double), 8),
      gives: -8,
      from: "−wL²/8",
    },
  },
  {
    name: "turnAt",
    title: "EI × slope at a place of a stretch",
    of: turnAt,
    units: "m → load × m²",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span of 8 m, left end",
      got: () => turnAt(solveBeam(simple).stretches[0]!, 0),
      gives: -512 / 24,
      from: "−wL³/24",
    },
  },
  {
    name: "liftAt",
    title: "EI × deflection at a place of a stretch, up positive",
    of: liftAt,
    units: "m → load × m³",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span of 8 m, middle",
      got: () => liftAt(solveBeam(simple).stretches[0]!, 4),
      gives: (-5 * 4096) / 384,
      from: handbook,
    },
  },
  {
    name: "deflectionAt",
    title: "EI × deflection at a place, up positive",
    of: deflectionAt,
    units: "m → load × m³",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span of 8 m, middle",
      got: () => deflectionAt(solveBeam(simple), 4),
      gives: (-5 * 4096) / 384,
      from: handbook,
    },
  },
  {
    name: "deepest",
    title: "Lowest place of a beam and EI × its sag",
    of: deepest,
    units: "m → m, load × m³",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span of 8 m",
      got: () => {
        const { at, value } = deepest(solveBeam(simple));
        return [at, value];
      },
      gives: [4, (5 * 4096) / 384],
      within: 1e-9,
      from: handbook,
    },
  },
  {
    name: "worstMoment",
    title: "Greatest bending moment either way",
    of: worstMoment,
    units: "→ load × m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "two spans of 8 m",
      got: () => worstMoment(solveBeam(double)).value,
      gives: -8,
      from: "−wL²/8 over the middle",
    },
  },
  {
    name: "momentValue",
    title: "Greatest bending moment with its working",
    of: momentValue,
    units: "loads in kg → N·m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span of 8 m, 1 kg/m",
      got: () => momentValue(solveBeam(simple), []).value,
      gives: 8 * 9.80665,
      from: "wL²/8 × g",
    },
  },
  {
    name: "deflectionValue",
    title: "Deflection with its working",
    of: deflectionValue,
    units: "loads in kg, E in MPa, I in m⁴ → m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "simple span of 8 m, 1 kg/m, 210,000 MPa, 13.8 cm⁴",
      got: () =>
        deflectionValue(solveBeam(simple), [0, 8], given(210_000, "stress"), given(13.8e-8, "second-moment"), []).value,
      gives: (5 * 9.80665 * 4096) / (384 * 210e9 * 13.8e-8),
      from: "5wL⁴/384EI",
    },
  },
  {
    name: "reactionValue",
    title: "Reaction of one hang with its working",
    of: reactionValue,
    units: "loads in kg → kg",
    sources: ["statics", "three-moment"],
    validity: bar,
    example: {
      asks: "two spans of 8 m, 1 kg/m, middle",
      got: () => reactionValue(solveBeam(double), 1, []).value,
      gives: 10,
      from: handbook,
    },
  },
  {
    name: "spanTerms",
    title: "Load terms of a span",
    of: spanTerms,
    units: "loads, m → load × m²",
    sources: ["three-moment"],
    validity: "uniform loads, point loads and couples inside the span",
    example: {
      asks: "8 m at 1 a metre",
      got: () => spanTerms(simple, 0, 8).aboutLeft,
      gives: 128,
      from: "6Aa/L = wL³/4",
    },
  },
  {
    name: "threeMomentEquations",
    title: "Equations of three moments",
    of: threeMomentEquations,
    units: "→ load × m²; what remains is zero when the moments are right",
    sources: ["three-moment"],
    validity: "no couples on the beam",
    example: {
      asks: "two spans of 8 m",
      got: () => threeMomentEquations(solveBeam(double))?.map((each) => each.remains),
      gives: [0],
      within: 1e-9,
      from: "2 × −8 × 16 + 128 + 128",
    },
  },
  {
    name: "shearsBeside",
    title: "Shear left and right of a support",
    of: shearsBeside,
    units: "→ load",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "two spans of 8 m, middle",
      got: () => shearsBeside(solveBeam(double), 1),
      gives: [-5, 5],
      within: 1e-9,
      from: "±5/8 wL",
    },
  },
];

export const riggingMethods: readonly Method[] = [
  ...balanceMethods,
  ...loadTableMethods,
  ...modeMethods,
  ...beamMethods,
  {
    name: "tubeProperties",
    title: "Section properties of a round tube",
    of: tubeProperties,
    units: "m → m², m³, m⁴",
    sources: ["tube-formula"],
    validity: "wall thinner than half the diameter",
    example: {
      asks: "48.3 × 4.0 mm, I in cm⁴",
      got: () => tubeProperties(0.0483, 0.004).secondMoment * 1e8,
      gives: 13.8,
      within: 0.05,
      from: "EN 39 type 4, data sheets to TG20",
    },
  },
  {
    name: "isCompact",
    title: "Whether a pipe bends to its plastic moment",
    of: isCompact,
    units: "m, m, MPa, MPa → yes or no",
    sources: ["aisc-360-f8"],
    validity: "round pipe",
    example: {
      asks: "D ÷ t = 58 of 35 ksi, E 29,000 ksi",
      got: () => isCompact(58, 1, 29_000, 35),
      gives: true,
      from: "AISC 360-22 Table B4.1b case 20: 0.07 × 29,000 ÷ 35 = 58",
    },
  },
  {
    name: "deflectionFrom",
    title: "Deflection from EI × deflection",
    of: deflectionFrom,
    units: "N·m³, MPa, m⁴ → m",
    sources: ["statics"],
    validity: "elastic",
    example: {
      asks: "1000 N·m³, 200,000 MPa, 10 cm⁴",
      got: () => deflectionFrom(1000, 200_000, 1e-7),
      gives: 0.05,
      from: "1000 ÷ 20,000 N·m²",
    },
  },
  {
    name: "clipsNeeded",
    title: "Clips an eye needs",
    of: clipsNeeded,
    units: "rope size in → count",
    sources: ["clip-charts", "cfr-1918-app-2"],
    validity: "rope of 1/2 in or less",
    example: {
      asks: "1/4 in, forged, no maker's sheet",
      got: () => clipsNeeded("1/4", { makersSheet: false, forged: true })?.count,
      gives: 3,
      from: "29 CFR 1918 App. II Table 1",
    },
  },
  {
    name: "bySize",
    title: "Strength by nominal size",
    of: bySize,
    units: "in → kg",
    sources: ["ac-43.13-1b-7-3", "rr-c-271d"],
    validity: "sizes that are listed: never interpolated",
    example: {
      asks: "1/4 in galvanised cable in lb",
      got: () => (bySize(carbonCable, "1/4") ?? 0) / 0.45359237,
      gives: 7000,
      from: "AC 43.13-1B Table 7-3",
    },
  },
  {
    name: "horizontalMultiplier",
    title: "Horizontal multiplier",
    of: horizontalMultiplier,
    units: "m → share",
    sources: ["niosh-94-110"],
    validity: "up to 25 in (63 cm); 0 beyond",
    example: {
      asks: "20 in",
      got: () => horizontalMultiplier(20 * 0.0254, "us"),
      gives: 0.5,
      within: 0.005,
      from: "10 ÷ 20",
    },
  },
  {
    name: "verticalMultiplier",
    title: "Vertical multiplier",
    of: verticalMultiplier,
    units: "m → share",
    sources: ["niosh-94-110"],
    validity: "0 to 70 in (175 cm); 0 outside",
    example: {
      asks: "10 in",
      got: () => verticalMultiplier(10 * 0.0254, "us"),
      gives: 0.85,
      within: 0.005,
      from: "1 − 0.0075 × |10 − 30|",
    },
  },
  {
    name: "distanceMultiplier",
    title: "Distance multiplier",
    of: distanceMultiplier,
    units: "m → share",
    sources: ["niosh-94-110"],
    validity: "up to 70 in (175 cm); 0 beyond",
    example: {
      asks: "30 in",
      got: () => distanceMultiplier(30 * 0.0254, "us"),
      gives: 0.88,
      within: 0.005,
      from: "0.82 + 1.8 ÷ 30",
    },
  },
  {
    name: "asymmetryMultiplier",
    title: "Asymmetry multiplier",
    of: asymmetryMultiplier,
    units: "° → share",
    sources: ["niosh-94-110"],
    validity: "0 to 135°; 0 outside",
    example: { asks: "90°", got: () => asymmetryMultiplier(90), gives: 0.71, within: 0.005, from: "1 − 0.0032 × 90" },
  },
  {
    name: "couplingMultiplier",
    title: "Coupling multiplier",
    of: couplingMultiplier,
    units: "coupling, m → share",
    sources: ["niosh-94-110"],
    validity: "the break is at 75 cm (30 in)",
    example: {
      asks: "fair, below 75 cm",
      got: () => couplingMultiplier("fair", 0.5),
      gives: 0.95,
      from: "NIOSH 94-110 Table 7",
    },
  },
  {
    name: "frequencyMultiplier",
    title: "Frequency multiplier",
    of: frequencyMultiplier,
    units: "lifts a minute, s, m → share",
    sources: ["niosh-94-110"],
    validity: "up to 15 lifts a minute and 8 hours; 0 beyond; between rows by linear interpolation",
    example: {
      asks: "3 a minute for 45 min from 22 in",
      got: () => frequencyMultiplier(3, 45 * 60, 22 * 0.0254, "us"),
      gives: 0.88,
      from: "NIOSH 94-110, Example 4, p. 46",
    },
  },
  {
    name: "peopleNeeded",
    title: "People needed for a lift",
    of: peopleNeeded,
    units: "kg, kg → number",
    sources: ["practice"],
    validity: "an even split, which the equation does not cover",
    example: { asks: "50 kg at 20 kg each", got: () => peopleNeeded(50, 20), gives: 3, from: "2.5, rounded up" },
  },
];
