import {
  ampacity,
  columnOf,
  cordAmpacity,
  gaugeOf,
  greatestOf,
  iecAmbient,
  type Known,
  type Missing,
  metricCordAmpacity,
  missing,
  type TemperatureColumn,
  tabled,
  type Value,
} from "@plumbmark/calc";
import type { Part } from "../../repository/parts.js";
import type { Cable } from "../cabling/cable.js";
import type { DesignSource } from "../reading/design-source.js";
import { partGap, partOptional, partValue } from "../reading/reader.js";

/** The rating the maker states for the whole cord; missing by name when the catalogue has none. */
export const cordRating = (cable: Cable): Value<"current"> =>
  partValue(cable.part, "rating", "current", "current rating", { label: cable.label, path: `${cable.path}.part` });

/** Degrees Celsius of `power.ambient`; undefined when it is not written down, which counts as the 30 °C of the tables. */
export function ambientOf(build: DesignSource): Value<"temperature"> | undefined {
  return build.reader.optional("power.ambient", "temperature", "temperature around the cables", build.label);
}

/** A maker's rating holds at 30 °C; where it is warmer, a cord carries less. */
function metricCordAllows(cable: Cable, ambient = 30): Value {
  const rating = cordRating(cable);
  if (ambient <= 30) return rating;
  const warm = iecAmbient(ambient, "cord");
  if (!warm)
    return missing("current", {
      path: "power.ambient",
      what: "current rating at this temperature",
      because: `${cable.label}: no factor for a cord at ${ambient} °C is at hand; ask its maker.`,
    });
  return ampacity.of({
    It: rating,
    ka: tabled(warm.factor, "factor", warm.source, `ambient ${ambient} °C, rubber`),
    kn: tabled(1, "factor", "arithmetic", "one cord by itself"),
  });
}

/** The column of a cord's own temperature mark, which only its ambient factor is read in; 60 °C unless it is marked. */
function cordColumn({ part }: Cable): TemperatureColumn | Missing {
  const what = "temperature rating marked on the cord";
  const mark = partOptional(part, "insulation", "temperature", what);
  if (!mark) return 60;
  if (!mark.known) return mark;
  return columnOf(mark.value) ?? missing("temperature", partGap(part as Part, "insulation", what));
}

/**
 * What a cord may carry, A: by gauge from NEC 400.5, the equipment ground not counted; a metric cord by the rating on
 * the part, since no table of the standards is at hand in print.
 */
export function cordAllows(cable: Cable, build: DesignSource): Value {
  const { conductor } = cable;
  if (!conductor.known) return conductor;
  const around = ambientOf(build);
  if (around && !around.known) return missing("current", ...around.gaps);
  const ambient = around?.value;
  if (gaugeOf(conductor.value) === undefined) return metricCordAllows(cable, ambient);
  const count = cable.part?.data.conductors;
  if (typeof count !== "number")
    return missing("current", partGap(cable.part as Part, "conductors", "number of conductors"));
  const column = cordColumn(cable);
  if (typeof column !== "number") return missing("current", ...column.gaps);
  return cordAmpacity(conductor, {
    conductors: Math.max(count - 1, 1),
    column,
    ...(ambient === undefined ? {} : { ambient }),
  });
}

/** Area of 16 AWG, mm²; IEC and NEC rounding of the printed area must not push the gauge itself out. */
const LEAST_ON_20 = 1.3;

/** The largest breaker a cord may be on, A: its ampacity, and in us practice 20 A from 16 AWG up (NEC 240.5(B)). */
export function cordBreaker(cable: Cable, build: DesignSource): Value {
  const allows = cordAllows(cable, build);
  if (
    !allows.known ||
    build.practice === "iec" ||
    gaugeOf((cable.conductor as Known).value) === undefined ||
    (cable.conductor as Known).value < LEAST_ON_20
  )
    return allows;
  return greatestOf(
    [allows, tabled(20, "current", "nec-240.5", "circuit a cord of 16 AWG or larger may be on")],
    "current",
    "greatest breaker",
  );
}

/** The connector whose plug has a fuse of its own. */
const FUSED = "bs-1363";

/** The fuse in the plug of a run's feed, A; undefined where its plug has none. What it protects is all behind it. */
export function plugFuse(feed: Cable): Value<"current"> | undefined {
  if (feed.ends[0]?.id !== FUSED) return undefined;
  return partValue(feed.part, "fuse", "current", "fuse in the plug", feed.label);
}

/** Conductors of a cord for three phases: three lines and the earth, or the neutral besides. */
const THREE_PHASE = 4;

/**
 * What a table gives for a metric cord of this size, A, at 30 °C; undefined for sizes without a row, and by gauge.
 * It is what a rating on the part is held against, and no rating: makers of cords for warmer conductors state more.
 */
export function metricCordTabled({ conductor, part }: Cable): Value | undefined {
  if (!conductor.known || gaugeOf(conductor.value) !== undefined) return undefined;
  const found = metricCordAmpacity(conductor, Number(part?.data.conductors) >= THREE_PHASE);
  return found.known ? found : undefined;
}

/** One cord of a run: the whole current passes the feed, all but the first panel's the jumpers. */
export interface Cord {
  readonly cable: Cable;
  readonly current: Value;
  readonly allows: Value;
  readonly breaker: Value;
  /** The rating on its part; missing where there is none. */
  readonly rating: Value;
  /** What a table gives for a metric cord of its size. */
  readonly tabled: Value | undefined;
}

export const cordOf = (cable: Cable, current: Value, build: DesignSource): Cord => ({
  cable,
  current,
  allows: cordAllows(cable, build),
  breaker: cordBreaker(cable, build),
  rating: cordRating(cable),
  tabled: metricCordTabled(cable),
});
