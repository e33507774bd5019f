import { FIELD_ASSEMBLED_LEAST } from "../../power/ampacity/ampacity.js";
import { buildingRows } from "../../power/ampacity/building.js";
import { CORD_USES } from "../../power/ampacity/cord-use.js";
import { cordRows } from "../../power/ampacity/cords.js";
import { ambientRows, countRows } from "../../power/ampacity/factors.js";
import { iecRows } from "../../power/ampacity/iec-building.js";
import { groupFactors, pvcAmbient, rubberAmbient } from "../../power/ampacity/iec-factors.js";
import { metricCordRows } from "../../power/ampacity/metric-cords.js";
import { portableRows } from "../../power/ampacity/portable.js";
import { annexGLimits, REACTANCE, RESISTIVITY } from "../../power/annex-g.js";
import { standardBreakers } from "../../power/breakers.js";
import { ALPHA_75, gaugeRows } from "../../power/conductors/copper-awg.js";
import { ALPHA_20, metricRows } from "../../power/conductors/copper-metric.js";
import { COPPER_DENSITY, CORD_CORES, cordMassRows, LEAST_COPPER } from "../../power/cord-mass.js";
import { C_MIN, OPENS_AT } from "../../power/fault-loop.js";
import { BTU_PER_TON } from "../../power/heat.js";
import { TRIP_CURVES } from "../../power/inrush.js";
import { K } from "../../power/k-method.js";
import { CLASS_A, CORD_LEAKAGE, LEAKAGE_SHARE, RESIDUAL_MOST } from "../../power/leakage.js";
import { receptacleLoads, receptacleRatings } from "../../power/receptacles.js";
import { PLUG_FUSE_MOST, RING, SOCKET_CIRCUITS } from "../../power/sockets.js";
import type { RegisterTable } from "../table.js";

export const powerTables: readonly RegisterTable[] = [
  {
    id: "power.building-wire",
    title: "Ampacity of copper building wire",
    holds: "A at 30 °C by gauge and insulation column, with the greatest overcurrent device of the small sizes",
    sources: ["nec-310.16", "nec-240.4d"],
    data: buildingRows,
  },
  {
    id: "power.cords",
    title: "Ampacity of flexible cords, S and SJ families",
    holds: "A at 30 °C by gauge, for two and for three current-carrying conductors",
    sources: ["nec-400.5a1"],
    data: cordRows,
  },
  {
    id: "power.portable-cable",
    title: "Ampacity of portable power cable",
    holds: "A at 30 °C by gauge and insulation column, for one, two and three current-carrying conductors",
    sources: ["nec-400.5a2"],
    data: portableRows,
  },
  {
    id: "power.metric-cords",
    title: "Current-carrying capacity of flexible cords by cross-section",
    holds: "A at 30 °C by mm², single-phase and three-phase",
    sources: ["bs-7671-4f3a"],
    data: metricCordRows,
  },
  {
    id: "power.metric-wiring",
    title: "Current-carrying capacity of building wiring by cross-section",
    holds: "A at 30 °C by mm² and method of laying, for two and for three loaded conductors",
    sources: ["iec-60364-5-52-b"],
    data: iecRows,
  },
  {
    id: "power.ambient-factors-pvc",
    title: "Ambient temperature factors, PVC",
    holds: "factor by °C of the air, base 30 °C",
    sources: ["iec-60364-5-52-b14"],
    data: pvcAmbient,
  },
  {
    id: "power.ambient-factors-rubber",
    title: "Ambient temperature factors, cords that take 60 °C",
    holds: "factor by °C of the air, base 30 °C",
    sources: ["ambient-60"],
    data: rubberAmbient,
  },
  {
    id: "power.group-factors",
    title: "Factors for circuits that run together",
    holds: "factor for one to nine circuits",
    sources: ["iec-60364-5-52-b17"],
    data: groupFactors,
  },
  {
    id: "power.ambient-factors",
    title: "Ambient temperature factors",
    holds: "factor on an ampacity by °C of the air and insulation column, base 30 °C",
    sources: ["nec-310.15b1"],
    data: ambientRows,
  },
  {
    id: "power.conductor-count-factors",
    title: "Factors for more than three current-carrying conductors",
    holds: "factor on a cord's ampacity by number of conductors",
    sources: ["nec-400.5a3", "nec-310.15c1"],
    data: countRows,
  },
  {
    id: "power.cord-mass",
    title: "Greatest mass of flexible cords",
    holds: "kg/m by conductor in mm², two and three conductors; and the number of conductors it is for",
    sources: ["cord-mass"],
    data: { cordMassRows, CORD_CORES },
  },
  {
    id: "power.copper",
    title: "Copper in a conductor",
    holds: "kg/m³, and the share of its cross-section that is copper at least",
    sources: ["iec-60028", "iec-60228"],
    data: { COPPER_DENSITY, LEAST_COPPER },
  },
  {
    id: "power.field-assembled-cord",
    title: "Least gauge of a field-assembled cord",
    holds: "AWG on a circuit of 20 A",
    sources: ["nec-240.5"],
    data: FIELD_ASSEMBLED_LEAST,
  },
  {
    id: "power.resistance-awg",
    title: "Resistance of copper by gauge",
    holds: "Ω per 1000 ft at 75 °C, and circular mils",
    sources: ["nec-ch9-t8"],
    data: gaugeRows,
  },
  {
    id: "power.resistance-coefficient-75",
    title: "Temperature coefficient of resistance, base 75 °C",
    holds: "per kelvin",
    sources: ["nec-ch9-t8"],
    data: ALPHA_75,
  },
  {
    id: "power.resistance-metric",
    title: "Greatest resistance of copper by cross-section",
    holds: "Ω/km at 20 °C by mm² and class",
    sources: ["iec-60228"],
    data: metricRows,
  },
  {
    id: "power.resistance-coefficient-20",
    title: "Temperature coefficient of copper, base 20 °C",
    holds: "per kelvin",
    sources: ["copper-alpha-20"],
    data: ALPHA_20,
  },
  {
    id: "power.k",
    title: "K of the handbook form of voltage drop",
    holds: "Ω·cmil/ft at 75 °C",
    sources: ["nec-k-method"],
    data: K,
  },
  {
    id: "power.annex-g-limits",
    title: "Voltage drop limits of Annex G",
    holds: "share of the nominal voltage",
    sources: ["iec-60364-5-52-g"],
    data: annexGLimits,
  },
  {
    id: "power.annex-g-resistivity",
    title: "Resistivity in service of Annex G",
    holds: "Ω·mm²/m",
    sources: ["iec-60364-5-52-g"],
    data: RESISTIVITY,
  },
  {
    id: "power.annex-g-reactance",
    title: "Reactance of a conductor where nothing else is known",
    holds: "Ω/m",
    sources: ["iec-60364-5-52-g-reactance"],
    data: REACTANCE,
  },
  {
    id: "power.breakers",
    title: "Standard ratings of overcurrent devices",
    holds: "A",
    sources: ["nec-240.6a"],
    data: standardBreakers,
  },
  {
    id: "power.receptacle-loads",
    title: "Greatest cord-and-plug load on one of several receptacles",
    holds: "A by rating of circuit and receptacle; the row for 30 A is from memory",
    sources: ["nec-210.21b"],
    data: receptacleLoads,
  },
  {
    id: "power.receptacle-ratings",
    title: "Receptacle ratings on circuits with several receptacles",
    holds: "A by rating of the circuit; the row for 30 A is from memory",
    sources: ["nec-210.21b"],
    data: receptacleRatings,
  },
  {
    id: "power.trip-curves",
    title: "What breakers of a curve ride through",
    holds: "least multiple of the rating, r.m.s., at which it opens at once",
    sources: ["iec-60898-1"],
    data: TRIP_CURVES,
  },
  {
    id: "power.opens-at",
    title: "Multiples at which breakers of a curve open at once for certain",
    holds: "multiple of the rating",
    sources: ["iec-60898-1"],
    data: OPENS_AT,
  },
  {
    id: "power.least-voltage",
    title: "Least voltage of a public supply",
    holds: "share of the nominal voltage",
    sources: ["bs-7671-zs"],
    data: C_MIN,
  },
  {
    id: "power.socket-circuits",
    title: "Greatest protective device ahead of BS 1363 sockets",
    holds: "A by layout of the circuit",
    sources: ["bs-7671-433.1.204", "bs-7671-app15"],
    data: SOCKET_CIRCUITS,
  },
  {
    id: "power.ring",
    title: "A ring of BS 1363 sockets",
    holds: "least conductor in mm², least current-carrying capacity and greatest breaker in A",
    sources: ["bs-7671-433.1.204"],
    data: RING,
  },
  {
    id: "power.plug-fuse",
    title: "Greatest fuse of a BS 1363 plug",
    holds: "A",
    sources: ["bs-1362"],
    data: PLUG_FUSE_MOST,
  },
  {
    id: "power.cord-uses",
    title: "What cord types are made for",
    holds: "use by the first letters of the type",
    sources: ["nec-400.4"],
    data: CORD_USES,
  },
  {
    id: "power.leakage-share",
    title: "Standing leakage allowed on a residual device",
    holds: "share of its rated residual current",
    sources: ["iec-60364-5-53", "bs-7671-415.1.1"],
    data: LEAKAGE_SHARE,
  },
  {
    id: "power.residual-most",
    title: "Greatest rating of a residual device for additional protection",
    holds: "A",
    sources: ["bs-7671-415.1.1"],
    data: RESIDUAL_MOST,
  },
  {
    id: "power.class-a",
    title: "Trip currents of a Class A device",
    holds: "A",
    sources: ["ul-943"],
    data: CLASS_A,
  },
  {
    id: "power.cord-leakage",
    title: "Greatest leakage of cord-connected equipment",
    holds: "A",
    sources: ["iec-60950-leakage"],
    data: CORD_LEAKAGE,
  },
  {
    id: "power.ton-of-refrigeration",
    title: "Ton of refrigeration",
    holds: "Btu(IT)/h",
    sources: ["nist-sp811"],
    data: BTU_PER_TON,
  },
];
