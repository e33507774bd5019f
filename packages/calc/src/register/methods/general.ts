import {
  type Contacts,
  connectorCurrent,
  connectorLeastVoltage,
  connectors,
  connectorVoltage,
  hasPoles,
  mates,
  plugFits,
  wiresOf,
} from "../../connectors/index.js";
import { areNeighbours, cellCentre, pathLength, stepBetween } from "../../face/path.js";
import { pitchAgrees } from "../../face/pitch.js";
import { difference, greatestOf, leastOf, shareOf, sum, times } from "../../formula/arithmetic.js";
import { given } from "../../formula/value.js";
import { awgArea, awgDiameter } from "../../quantity/awg.js";
import { fromKept, toKept, unitByCode } from "../../quantity/units.js";
import { peakUse } from "../../stock/sweep.js";
import { standTogether } from "../../stock/together.js";
import { type Method, numberOf } from "../method.js";

const metres = (value: number) => given(value, "length");
const size = { width: 0.5, height: 0.5 };
const arithmetic = { units: "values of one kind", sources: ["arithmetic"], validity: "every value known" } as const;

const quantityMethods: readonly Method[] = [
  {
    name: "sum",
    title: "Sum of values",
    of: sum,
    ...arithmetic,
    example: {
      asks: "1 m and 2 m",
      got: () => numberOf(sum([metres(1), metres(2)], "length")),
      gives: 3,
      from: "by hand",
    },
  },
  {
    name: "difference",
    title: "One value less another",
    of: difference,
    ...arithmetic,
    example: {
      asks: "3 m less 1 m",
      got: () => numberOf(difference(metres(3), metres(1), "length")),
      gives: 2,
      from: "by hand",
    },
  },
  {
    name: "times",
    title: "A value times a number",
    of: times,
    ...arithmetic,
    example: { asks: "2 m × 3", got: () => numberOf(times(metres(2), 3)), gives: 6, from: "by hand" },
  },
  {
    name: "leastOf",
    title: "Least of values",
    of: leastOf,
    ...arithmetic,
    example: {
      asks: "1 m and 2 m",
      got: () => numberOf(leastOf([metres(1), metres(2)], "length")),
      gives: 1,
      from: "by hand",
    },
  },
  {
    name: "greatestOf",
    title: "Greatest of values",
    of: greatestOf,
    ...arithmetic,
    example: {
      asks: "1 m and 2 m",
      got: () => numberOf(greatestOf([metres(1), metres(2)], "length")),
      gives: 2,
      from: "by hand",
    },
  },
  {
    name: "shareOf",
    title: "A value as a share of another",
    of: shareOf,
    ...arithmetic,
    example: {
      asks: "1 m of 4 m",
      got: () => numberOf(shareOf(metres(1), metres(4))),
      gives: 0.25,
      from: "by hand",
    },
  },
  {
    name: "toKept",
    title: "From a written unit to the kept one",
    of: toKept,
    units: "unit → SI unit of the kind",
    sources: ["ucum-2.2"],
    validity: "units of the table",
    example: {
      asks: "212 °F",
      got: () => toKept(212, unitByCode("temperature", "[degF]")),
      gives: 100,
      from: "water boils at 212 °F and 100 °C",
    },
  },
  {
    name: "fromKept",
    title: "From the kept unit to another",
    of: fromKept,
    units: "SI unit of the kind → unit",
    sources: ["ucum-2.2"],
    validity: "units of the table",
    example: {
      asks: "0.3048 m in feet",
      got: () => fromKept(0.3048, unitByCode("length", "[ft_i]")),
      gives: 1,
      from: "UCUM: [ft_i] is 0.3048 m",
    },
  },
  {
    name: "awgDiameter",
    title: "Diameter of a gauge",
    of: awgDiameter,
    units: "gauge → m",
    sources: ["astm-b258"],
    validity: "4/0 to 40 AWG",
    example: {
      asks: "10 AWG in inches",
      got: () => awgDiameter(10) / 0.0254,
      gives: 0.1019,
      within: 0.00005,
      from: "ASTM B258: 0.1019 in",
    },
  },
  {
    name: "awgArea",
    title: "Cross-section of a gauge",
    of: awgArea,
    units: "gauge → mm²",
    sources: ["astm-b258"],
    validity: "4/0 to 40 AWG",
    example: { asks: "12 AWG", got: () => awgArea(12), gives: 3.309, within: 0.0005, from: "ASTM B258: 3.309 mm²" },
  },
];

const connectorMethods: readonly Method[] = [
  {
    name: "wiresOf",
    title: "Wires a connector's cord has to have",
    of: wiresOf,
    units: "contacts → number",
    sources: ["nema-wd6", "iec-60309"],
    validity: "power connectors",
    example: {
      asks: "NEMA L21-30",
      got: () => wiresOf(connectors.get("nema-l21-30")?.contacts as Contacts),
      gives: 5,
      from: "WD 6: 4 poles, 5 wires",
    },
  },
  {
    name: "hasPoles",
    title: "Whether an outlet has the poles of its supply",
    of: hasPoles,
    units: "contacts, supply → yes or no",
    sources: ["nema-wd6", "iec-60309"],
    validity: "power connectors",
    example: {
      asks: "NEMA L6-20 on one line and neutral",
      got: () => hasPoles(connectors.get("nema-l6-20")?.contacts as Contacts, "line-to-neutral", true),
      gives: false,
      from: "WD 6: 6 is two lines and earth, no neutral",
    },
  },
  {
    name: "connectorLeastVoltage",
    title: "Least voltage of a connector's class",
    of: connectorLeastVoltage,
    units: "connector → V",
    sources: ["nema-wd6", "iec-60309"],
    validity: "connectors of one voltage class",
    example: {
      asks: "IEC 60309, 16 A, 5 wires",
      got: () => numberOf(connectorLeastVoltage("iec-60309-16-5")),
      gives: 380,
      from: "EN 60309-2: red is 380 to 480 V",
    },
  },
  {
    name: "mates",
    title: "Whether two connectors join",
    of: mates,
    units: "two families → yes or no",
    sources: ["iec-60320", "iec-60309", "nema-wd6"],
    validity: "families of the table",
    example: {
      asks: "C15 and C14",
      got: () => mates("iec-c15", "iec-c14"),
      gives: true,
      from: "IEC 60320: C15 fits a C14 inlet",
    },
  },
  {
    name: "plugFits",
    title: "Whether a plug goes into an outlet",
    of: plugFits,
    units: "two families → yes or no",
    sources: ["nema-wd6"],
    validity: "families of the table",
    example: {
      asks: "5-15 into 5-20",
      got: () => plugFits("nema-5-15", "nema-5-20"),
      gives: true,
      from: "ANSI/NEMA WD 6: the T-slot",
    },
  },
  {
    name: "connectorCurrent",
    title: "Rated current of a connector",
    of: connectorCurrent,
    units: "family, practice → A",
    sources: ["iec-60320", "iec-60309", "nema-wd6"],
    validity: "families of the table",
    example: {
      asks: "C13 in iec practice",
      got: () => numberOf(connectorCurrent("iec-c13", "iec")),
      gives: 10,
      from: "IEC 60320",
    },
  },
  {
    name: "connectorVoltage",
    title: "Rated voltage of a connector",
    of: connectorVoltage,
    units: "family, practice → V",
    sources: ["iec-60320", "iec-60309", "nema-wd6"],
    validity: "families of the table",
    example: {
      asks: "L6-30",
      got: () => numberOf(connectorVoltage("nema-l6-30", "us")),
      gives: 250,
      from: "ANSI/NEMA WD 6",
    },
  },
];

const faceMethods: readonly Method[] = [
  {
    name: "areNeighbours",
    title: "Whether two cells share an edge",
    of: areNeighbours,
    units: "rows and columns → yes or no",
    sources: ["geometry"],
    validity: "cells of one size",
    example: {
      asks: "a cell and the one diagonally below",
      got: () => areNeighbours({ row: 0, column: 0 }, { row: 1, column: 1 }),
      gives: false,
      from: "they share a corner only",
    },
  },
  {
    name: "cellCentre",
    title: "Centre of a cell",
    of: cellCentre,
    units: "m → m",
    sources: ["geometry"],
    validity: "panels of one size",
    example: {
      asks: "second column, first row of 500 mm",
      got: () => [cellCentre({ row: 0, column: 1 }, size).x, cellCentre({ row: 0, column: 1 }, size).y],
      gives: [0.75, 0.25],
      from: "one and a half and half a panel",
    },
  },
  {
    name: "stepBetween",
    title: "Distances between two connectors",
    of: stepBetween,
    units: "m → m",
    sources: ["geometry"],
    validity: "panels of one size",
    example: {
      asks: "next column of 500 mm",
      got: () => stepBetween({ row: 0, column: 0 }, { row: 0, column: 1 }, size).x,
      gives: 0.5,
      from: "one panel",
    },
  },
  {
    name: "pathLength",
    title: "Length of a cable through cells",
    of: pathLength,
    units: "m → m",
    sources: ["geometry"],
    validity: "a straight lay",
    example: {
      asks: "three cells in a row of 500 mm",
      got: () =>
        pathLength(
          [0, 1, 2].map((column) => ({ row: 0, column })),
          size,
        ),
      gives: 1,
      from: "two steps",
    },
  },
  {
    name: "pitchAgrees",
    title: "Whether a nominal pitch agrees with the true one",
    of: pitchAgrees,
    units: "m, m → yes or no",
    sources: ["practice"],
    validity: "0.005 mm for two decimals and more, 0.1 mm for fewer",
    example: {
      asks: "500 mm ÷ 168 against 2.976 mm",
      got: () => pitchAgrees(0.5 / 168, 0.002976, 3),
      gives: true,
      from: "2.976190 mm",
    },
  },
  {
    name: "peakUse",
    title: "Most panels of a lot away on one day",
    of: peakUse,
    units: "days and counts → count",
    sources: ["arithmetic"],
    validity: "both days of a stay count",
    example: {
      asks: "6 panels to the 4th, 5 from the 4th",
      got: () =>
        peakUse([
          { lot: "A", build: "one", count: 6, from: "2027-03-01", to: "2027-03-04" },
          { lot: "A", build: "two", count: 5, from: "2027-03-04", to: "2027-03-08" },
        ])[0]?.count,
      gives: 11,
      from: "both are away on the 4th",
    },
  },
  {
    name: "standTogether",
    title: "Builds the stock can make at the same time",
    of: standTogether,
    units: "counts → sets of builds",
    sources: ["arithmetic"],
    validity: "whatever their dates; spares count; the sets are gone through for 14 rivals at most",
    example: {
      asks: "of 40 panels one build takes 30, others 18, 14 and 8",
      got: () =>
        standTogether(
          [30, 18, 14, 8].map((count, index) => ({ build: "abcd"[index] as string, lot: "x", count })),
          new Map([["x", 40]]),
        )
          .sets?.map((set) => set.join(" and "))
          .join("; "),
      gives: "a and d; b and c and d",
      from: "18 + 14 + 8 = 40 and 30 + 8 = 38",
    },
  },
];

export const generalMethods: readonly Method[] = [...quantityMethods, ...connectorMethods, ...faceMethods];
