/**
 * Kinds of quantity. Kinds that share a dimension stay apart (mass and force, W and VA, cd/m² and lx),
 * so that one can never be written where the other is meant.
 */
export const kinds = {
  length: { si: "m", name: "a length" },
  area: { si: "m2", name: "an area" },
  mass: { si: "kg", name: "a mass" },
  force: { si: "N", name: "a force" },
  "mass-per-length": { si: "kg/m", name: "a mass per length" },
  "areal-load": { si: "Pa", name: "a load per area" },
  stress: { si: "MPa", name: "a stress" },
  moment: { si: "N.m", name: "a bending moment" },
  "second-moment": { si: "m4", name: "a second moment of area" },
  "section-modulus": { si: "m3", name: "a section modulus" },
  voltage: { si: "V", name: "a voltage" },
  current: { si: "A", name: "a current" },
  power: { si: "W", name: "a power" },
  "apparent-power": { si: "VA", name: "an apparent power" },
  "heat-rate": { si: "W{heat}", name: "a heat rate" },
  resistance: { si: "Ohm", name: "a resistance" },
  "resistance-per-length": { si: "Ohm/m", name: "a resistance per length" },
  conductor: { si: "mm2", name: "a conductor size" },
  frequency: { si: "Hz", name: "a frequency" },
  "data-rate": { si: "bit/s", name: "a data rate" },
  "colour-depth": { si: "bit", name: "a bit depth" },
  pixels: { si: "{pixel}", name: "a number of pixels" },
  time: { si: "s", name: "a time" },
  temperature: { si: "Cel", name: "a temperature" },
  luminance: { si: "cd/m2", name: "a luminance" },
  illuminance: { si: "lx", name: "an illuminance" },
  angle: { si: "deg", name: "an angle" },
  loss: { si: "dB", name: "a loss" },
  ratio: { si: "1", name: "a share" },
  factor: { si: "{factor}", name: "a factor" },
  count: { si: "{count}", name: "a number" },
} as const;

/** A kind of quantity: `length`, `mass`, `current` … Kinds that share a dimension stay apart. */
export type Kind = keyof typeof kinds;

/** UCUM code of the unit a kind is kept in. */
export const siUnit = (kind: Kind): string => kinds[kind].si;
