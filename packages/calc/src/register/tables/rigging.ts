import { GRAVITY } from "../../rigging/gravity.js";
import { designFactorOptions } from "../../rigging/hardware/assembly.js";
import { clipChart } from "../../rigging/hardware/clips.js";
import { leastCoefficients, slingModeFactors, unknownSling } from "../../rigging/hardware/modes.js";
import { carbonCable, shackles, stainlessCable, terminations } from "../../rigging/hardware/rope.js";
import { ROPE_GRADE, ropeAreas, SOLID } from "../../rigging/hardware/rope-area.js";
import { LEAST_ROPE_MASS } from "../../rigging/hardware/rope-mass.js";
import { chain80, slingColours, slingModes } from "../../rigging/hardware/slings.js";
import { headRoom } from "../../rigging/lift/head-room.js";
import { frequencyRows, liftingHours, loadConstant } from "../../rigging/lift/niosh.js";
import { designRows, nominalRows, sections, tubeRows } from "../../rigging/section/table.js";
import { leastOverturningFactor, notionalPush } from "../../rigging/stack/push.js";
import type { RegisterTable } from "../table.js";

const pipe =
  "NPS, outside in, wall in, lb/ft, area in², I in⁴, S in³, Z in³, and whether all of the row was seen in print";

export const riggingTables: readonly RegisterTable[] = [
  {
    id: "rigging.notional-push",
    title: "Notional push on a standing face",
    holds: "Pa by practice, up to 4 m and above",
    sources: ["ibc-1607.13", "messe-stand-building"],
    data: notionalPush,
  },
  {
    id: "rigging.overturning-factor",
    title: "Least factor against overturning",
    holds: "a factor",
    sources: ["overturning-1.5"],
    data: leastOverturningFactor,
  },
  { id: "rigging.gravity", title: "Standard gravity", holds: "m/s²", sources: ["ucum-2.2"], data: GRAVITY },
  {
    id: "rigging.pipe-design",
    title: "Steel pipe, design wall",
    holds: pipe,
    sources: ["aisc-shapes-16", "asme-b36.10m"],
    data: designRows,
  },
  {
    id: "rigging.pipe-nominal",
    title: "Steel pipe, nominal wall",
    holds: pipe,
    sources: ["mott-a16-6", "asme-b36.10m"],
    data: nominalRows,
  },
  {
    id: "rigging.tubes",
    title: "Scaffold tubes",
    holds: "outside mm, wall mm, kg/m, area cm², I cm⁴, S cm³, Z cm³, yield MPa, E MPa",
    sources: ["en-39", "bs-1139-1.2"],
    data: tubeRows,
  },
  {
    id: "rigging.sections",
    title: "Sections a bar may name",
    holds: "SI units, with yield stress, modulus and the factor that divides the plastic moment",
    sources: ["aisc-360-f8", "tg20-5.6"],
    data: sections,
  },
  {
    id: "rigging.shackles",
    title: "Working load of screw-pin anchor shackles",
    holds: "lb by size in inches",
    sources: ["rr-c-271d"],
    data: shackles,
  },
  {
    id: "rigging.cable-galvanised",
    title: "Least breaking strength of galvanised 7x19 cable",
    holds: "lb by size in inches",
    sources: ["ac-43.13-1b-7-3"],
    data: carbonCable,
  },
  {
    id: "rigging.cable-stainless",
    title: "Least breaking strength of stainless 7x19 cable",
    holds: "lb by size in inches",
    sources: ["ac-43.13-1b-7-3"],
    data: stainlessCable,
  },
  {
    id: "rigging.terminations",
    title: "Efficiency of rope terminations",
    holds: "share of the rope's breaking strength that is kept",
    sources: ["tm-5-3810-4"],
    data: terminations,
  },
  {
    id: "rigging.clips",
    title: "Wire rope clips",
    holds: "count, turn-back in, torque lb·ft by rope size in inches",
    sources: ["clip-charts", "cfr-1918-app-2"],
    data: clipChart,
  },
  {
    id: "rigging.chain-80",
    title: "Working load of Grade 80 chain",
    holds: "lb by size in inches, one leg straight down",
    sources: ["astm-a906"],
    data: chain80,
  },
  {
    id: "rigging.sling-modes",
    title: "Mode factors of textile slings",
    holds: "share of the working load marked on the sling",
    sources: ["en-1492-2"],
    data: slingModes,
  },
  {
    id: "rigging.sling-mode-factors",
    title: "Mode factors of slings by material and practice",
    holds: "share of the working load marked on the sling",
    sources: ["choker-us", "en-13414-1", "chain-slings-en", "as-3775", "en-1492-2", "practice"],
    data: { ...slingModeFactors, unknown: unknownSling },
  },
  {
    id: "rigging.least-coefficients",
    title: "Breaking strength over working load a part has at least",
    holds: "a factor by kind of part and practice; 5 for American textile slings is from memory",
    sources: ["ec-2006-42-4.1.2.5"],
    data: leastCoefficients,
  },
  {
    id: "rigging.rope-mass",
    title: "Least mass of stranded steel ropes",
    holds: "kg for each 100 m and mm² of diameter squared",
    sources: ["rope-length-mass"],
    data: LEAST_ROPE_MASS,
  },
  {
    id: "rigging.rope-areas",
    title: "Metal in steel wire ropes",
    holds: "metallic area ÷ diameter² by construction; that of a rod; the strongest grade drawn in N/mm²",
    sources: ["rope-factors", "practice"],
    data: { ropeAreas, SOLID, ROPE_GRADE },
  },
  {
    id: "rigging.sling-colours",
    title: "Colours of round slings",
    holds: "working load in tonnes",
    sources: ["en-1492-2"],
    data: slingColours,
  },
  {
    id: "rigging.design-factors",
    title: "Published choices of design factor",
    holds: "least factor on breaking strength, share of the maker's working load",
    sources: ["wac-296-24-29401"],
    data: designFactorOptions,
  },
  {
    id: "rigging.head-room",
    title: "Clear height over where people walk",
    holds: "m; in iec practice 2.1 m by common practice",
    sources: ["ada-307.4", "practice"],
    data: headRoom,
  },
  {
    id: "rigging.lifting-constant",
    title: "Load constant of the lifting equation",
    holds: "kg",
    sources: ["niosh-94-110"],
    data: loadConstant,
  },
  {
    id: "rigging.lifting-frequency",
    title: "Frequency multiplier of the lifting equation",
    holds: "lifts a minute; share for up to 1, 2 and 8 h, each below 30 in (75 cm) and from there up",
    sources: ["niosh-94-110"],
    data: frequencyRows,
  },
  {
    id: "rigging.lifting-hours",
    title: "Durations of the lifting equation",
    holds: "h",
    sources: ["niosh-94-110"],
    data: liftingHours,
  },
];
