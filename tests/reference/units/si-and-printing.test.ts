import { awgNumber, type Kind, printNumber, printQuantity, readQuantity, toKept, unitByCode } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

describe("decimal multiples", () => {
  // Prefixes and coherent units: SI Brochure, 9th edition, tables 4 to 8. A unit without a prefix is the one kept.
  const rows: readonly (readonly [Kind, string, number])[] = [
    ["length", "m", 1],
    ["length", "mm", 1e-3],
    ["length", "cm", 1e-2],
    ["length", "km", 1e3],
    ["area", "m2", 1],
    ["mass", "kg", 1],
    ["mass", "g", 1e-3],
    ["mass", "t", 1e3],
    ["force", "N", 1],
    ["force", "kN", 1e3],
    ["force", "daN", 10],
    ["force", "kgf", 9.80665],
    ["mass-per-length", "kg/m", 1],
    ["mass-per-length", "g/m", 1e-3],
    ["areal-load", "Pa", 1],
    ["areal-load", "kPa", 1e3],
    ["areal-load", "kN/m2", 1e3],
    ["areal-load", "N/m2", 1],
    ["areal-load", "kg/m2", 9.80665],
    ["stress", "MPa", 1],
    ["stress", "GPa", 1e3],
    ["moment", "N.m", 1],
    ["moment", "kN.m", 1e3],
    ["second-moment", "m4", 1],
    ["section-modulus", "m3", 1],
    ["voltage", "V", 1],
    ["voltage", "kV", 1e3],
    ["voltage", "mV", 1e-3],
    ["current", "A", 1],
    ["current", "mA", 1e-3],
    ["power", "W", 1],
    ["power", "kW", 1e3],
    ["apparent-power", "V.A", 1],
    ["apparent-power", "kV.A", 1e3],
    ["heat-rate", "W", 1],
    ["resistance", "Ohm", 1],
    ["resistance", "mOhm", 1e-3],
    ["resistance-per-length", "Ohm/m", 1],
    ["resistance-per-length", "Ohm/km", 1e-3],
    ["conductor", "mm2", 1],
    ["frequency", "Hz", 1],
    ["frequency", "kHz", 1e3],
    ["frequency", "MHz", 1e6],
    ["data-rate", "bit/s", 1],
    ["data-rate", "Mbit/s", 1e6],
    ["data-rate", "Gbit/s", 1e9],
    ["colour-depth", "bit", 1],
    ["pixels", "{pixel}", 1],
    ["time", "s", 1],
    ["time", "ms", 1e-3],
    ["time", "min", 60],
    ["time", "h", 3600],
    ["temperature", "Cel", 1],
    ["luminance", "cd/m2", 1],
    ["illuminance", "lx", 1],
    ["angle", "deg", 1],
    ["loss", "dB", 1],
    ["ratio", "1", 1],
    ["ratio", "%", 0.01],
    ["factor", "{factor}", 1],
    ["count", "{count}", 1],
  ];
  for (const [kind, code, printed] of rows)
    reference({
      name: `1 ${code} (${kind})`,
      source: "SI Brochure, 9th edition, tables 4 to 8; standard gravity CGPM 1901",
      basis: "published",
      got: () => toKept(1, unitByCode(kind, code)),
      printed,
      within: printed * 1e-12,
    });
});

describe("gauges that exist", () => {
  // ASTM B258 names them 4/0, 3/0, 2/0, 1/0 (also 0), then 1 to 40 as stocked.
  test.each([
    ["4/0", -3],
    ["1/0", 0],
    ["0", 0],
    ["1", 1],
    ["40", 40],
    ["41", undefined],
    ["43", undefined],
    ["-1", undefined],
    ["12.5", undefined],
    ["5/0", undefined],
    ["many", undefined],
  ])("%s", (text, gauge) => expect(awgNumber(text)).toBe(gauge));
});

describe("figures as printed", () => {
  // Four significant digits by hand; the unit of a size is the one in which it is neither 0.0something nor thousands.
  const us: readonly (readonly [number, Kind, string])[] = [
    [0.3048, "length", "1 ft"],
    [0.3049, "length", "1 ft"],
    [0.32, "length", "1.05 ft"],
    [0.2794, "length", "11 in"],
    [0, "length", "0 ft"],
  ];
  const metric: readonly (readonly [number, Kind, string])[] = [
    [0.1, "length", "0.1 m"],
    [0.105, "length", "0.105 m"],
    [0.099, "length", "99 mm"],
    [0, "length", "0 m"],
    [1e6, "frequency", "1 MHz"],
    [1.05e6, "frequency", "1.05 MHz"],
    [999_000, "frequency", "999 kHz"],
    [1e4, "frequency", "10 kHz"],
    [10_500, "frequency", "10.5 kHz"],
    [9_000, "frequency", "9,000 Hz"],
    [1e9, "data-rate", "1 Gb/s"],
    [1e6, "data-rate", "1 Mb/s"],
    [1.05e6, "data-rate", "1.05 Mb/s"],
    [9_000, "data-rate", "9,000 b/s"],
    [0.0035, "current", "3.5 mA"],
    [0.1, "current", "0.1 A"],
    [0.105, "current", "0.105 A"],
    [0, "current", "0 A"],
    [0.5, "current", "0.5 A"],
    [1_234_567, "count", "1,234,567"],
    [169_344, "pixels", "169,344 px"],
    [2.34567, "count", "2.346"],
    [123_456, "mass", "123,456 kg"],
    [12.34567, "mass", "12.35 kg"],
    [30, "angle", "30°"],
    [2.5, "conductor", "2.5 mm²"],
  ];
  test.each(us)("%d m of %s: %s", (value, kind, text) => expect(printQuantity(value, kind, "us")).toBe(text));
  test.each(metric)("%d as %s: %s", (value, kind, text) => expect(printQuantity(value, kind, "metric")).toBe(text));
  test("an arc-minute stands at its figure", () =>
    expect(printQuantity(20 / 60, "angle", "metric", unitByCode("angle", "'"))).toBe("20′"));
  test("a gauge is printed as the gauge it is, from 4/0 to 40", () => {
    // ASTM B258: 4/0 is 0.46 in, so 107.22 mm²; 12 AWG 3.3088 mm²; 40 AWG is 0.0031445 in, so 0.0050103 mm².
    for (const name of ["4/0", "1/0", "1", "12", "40"]) {
      const reading = readQuantity(`${name} AWG`, ["conductor"]);
      expect(reading.ok && printQuantity(reading.quantity.value, "conductor", "us")).toBe(`${name} AWG`);
    }
    expect(printQuantity(3.3088, "conductor", "us")).toBe("3.309 mm²");
  });
  test("digits run to the tenth place and no further, four of them unless told", () => {
    expect(printNumber(2 / 3)).toBe("0.6667");
    expect(printNumber(0.123456789012, 12)).toBe("0.123456789");
    expect(printNumber(-1234.5)).toBe("−1,235");
    expect(printNumber(98_765)).toBe("98,765");
  });
});

describe("figures as written", () => {
  const read = (text: string, ...kinds: readonly Kind[]): number | string => {
    const reading = readQuantity(text, kinds);
    return reading.ok ? reading.quantity.value : reading.found;
  };
  // 1 ft = 0.3048 m, 1 in = 0.0254 m (1959).
  test.each([
    ["-3 ft", "length", -0.9144],
    ["2 1/0 in", "length", "`2 1/0 in`"],
    ["10 ft 0 in", "length", 3.048],
    ["10 ft 0.5 in", "length", 3.0607],
    ["10 FT", "length", 3.048],
    ["10 mm 6 in", "length", "`10 mm 6 in`"],
    ["10 ft 6 mm", "length", "`10 ft 6 mm`"],
    ["10 ft -6 in", "length", "`10 ft -6 in`"],
  ] as const)("%s", (text, kind, kept) => {
    const got = read(text, kind);
    if (typeof kept === "string") expect(got).toBe(kept);
    else expect(got).toBeCloseTo(kept, 12);
  });
  test("case is forgiven where no other unit differs by it", () => expect(read("3 KV", "voltage")).toBe(3000));
  test("a text of eighty characters is read, a longer one is not", () => {
    expect(read(`${" ".repeat(3)}${"0".repeat(77)}3 m`, "length")).toBe(3);
    expect(read(`${"0".repeat(78)}3 m`, "length")).toBe("a text of 81 characters");
  });
  test("what has a unit of another kind is told by that kind", () =>
    expect(read("3 kg", "length")).toBe("`3 kg`, which is a mass"));
});
