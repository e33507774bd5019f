import {
  armBehind,
  ballastNeeded,
  centreOfWeight,
  counted,
  deckPressure,
  footLoad,
  GRAVITY,
  gapsOf,
  greatestOf,
  type Known,
  missing,
  notionalForce,
  notionalMoment,
  overturningFactor,
  restoringMoment,
  type SourceId,
  slidingFactor,
  sum,
  tabled,
  times,
  type Value,
} from "@plumbmark/calc";
import { affirmed } from "../../document/nothing-written.js";
import type { Face } from "./face.js";

const plain = (value: number, kind: "length" | "area", what: string): Known => tabled(value, kind, "geometry", what);

function areaOf(x: Value, y: Value, what: string): Value<"area"> {
  const gaps = gapsOf([x, y]);
  if (gaps.length > 0) return missing("area", ...gaps);
  return plain((x as Known).value * (y as Known).value, "area", what) as Known<"area">;
}

/** The edge of the base a face would tip over: the toe, from which distances are written, or the one behind. */
export type Edge = "toe" | "behind";

/** A notional horizontal push in pascals, up to 4 m above the floor and above that. */
export interface Push {
  readonly low: number;
  readonly high: number;
}

/** Who asks for the push: the trade fairs' rules, the building code, or the house. */
const sourceOf = (push: number): SourceId => {
  if (push === 125 || push === 63) return "messe-stand-building";
  return Math.abs(push - 239.4) < 0.1 ? "ibc-1607.13" : "house";
};

/** A face that stands on its own base. */
export class Stand {
  readonly path: string;
  readonly label: string;

  constructor(readonly face: Face) {
    this.path = `${face.path}.base`;
    this.label = `The base of face ${face.name}`;
  }

  get baseMass(): Value<"mass"> {
    return this.#value("mass", "mass", "mass of the base");
  }

  get ballast(): Value<"mass"> {
    return this.#value("ballast", "mass", "ballast");
  }

  /** Panels, extras, base and ballast. A base without a stated mass or ballast is missing, not light. */
  get mass(): Value<"mass"> {
    return sum([this.face.mass, this.baseMass, this.ballast], "mass", "m");
  }

  /** Moment of a push on the whole face, its lower edge taken as on the floor: the safe side. */
  overturning(push: Push): Value<"moment"> {
    return notionalMoment.of(this.#pushed(push));
  }

  /** What the push on the whole face comes to. */
  pushed(push: Push): Value<"force"> {
    return notionalForce.of(this.#pushed(push));
  }

  /** How many times over friction holds the face where it stands; missing where nobody measured it. */
  sliding(push: Push): Value<"factor"> {
    const what = "friction of its feet on this floor";
    const μ = this.face.reader.value(`${this.path}.friction`, "factor", what, this.label);
    return slidingFactor.of({ μ, m: this.mass, F: this.pushed(push) });
  }

  /** What it is fixed to; undefined where nothing is written, a placeholder and `none` included. */
  get fixedTo(): string | undefined {
    return affirmed(this.face.reader.data(`${this.path}.fixed-to`));
  }

  #pushed({ low, high }: Push): Parameters<typeof notionalMoment.of>[0] {
    const above = this.face.reader.value(
      `${this.face.path}.height-above`,
      "length",
      "height of the lower edge above the floor",
      this.face.label,
    );
    const h = sum([above, this.face.height], "length", "h");
    return {
      b: this.face.width,
      h,
      c: plain(4, "length", "height where the push changes"),
      q1: tabled(low, "areal-load", sourceOf(low), "push up to 4 m"),
      q2: tabled(high, "areal-load", sourceOf(high), "push above 4 m"),
    };
  }

  /** Panels and ballast at their distance from the edge the face would tip over; the base at half its depth. */
  restoring(edge: Edge, ballast: Value<"mass"> = this.ballast): Value<"moment"> {
    return restoringMoment.of({
      m: this.face.mass,
      x: this.#arm("toe", "distance of the panels' centre from the toe", edge),
      ms: this.baseMass,
      xs: times(this.depth, 0.5, "½"),
      mb: ballast,
      xb: this.ballastArm(edge),
    });
  }

  factor(push: Push, edge: Edge): Value<"factor"> {
    return overturningFactor.of({ Mr: this.restoring(edge), Mo: this.overturning(push) });
  }

  /** Ballast that gives the factor over this edge, everything else as it is. */
  ballastFor(push: Push, factor: number, edge: Edge): Value<"mass"> {
    return ballastNeeded.of({
      γ: tabled(factor, "factor", "overturning-1.5", "required factor"),
      Mo: this.overturning(push),
      Mr: this.restoring(edge, counted(0, "no ballast", "mass")),
      xb: this.ballastArm(edge),
    });
  }

  get depth(): Value<"length"> {
    return this.#value("depth", "length", "depth of the base");
  }

  ballastArm(edge: Edge): Value<"length"> {
    return this.#arm("ballast-arm", "distance of the ballast from the toe", edge);
  }

  #arm(key: string, what: string, edge: Edge): Value<"length"> {
    const x = this.#value(key, "length", what);
    return edge === "toe" ? x : armBehind.of({ d: this.depth, x });
  }

  get pressure(): Value<"areal-load"> {
    return deckPressure.of({ m: this.mass, A: this.footprint });
  }

  /** The area it stands on, as it is written. */
  get footprint(): Value<"area"> {
    const what = "footprint on the deck";
    return areaOf(
      this.#value("deck.footprint.1", "length", what),
      this.#value("deck.footprint.2", "length", what),
      what,
    );
  }

  /** Its width, or that of the face where none is written. */
  get baseWidth(): Value<"length"> {
    const { reader, width } = this.face;
    return reader.optional(`${this.path}.width`, "length", "width of the base", this.label) ?? width;
  }

  /** The area the base covers: its width, or that of the face where none is written, by its depth. */
  get baseArea(): Value<"area"> {
    return areaOf(this.baseWidth, this.depth, "the base");
  }

  /** Feet in two rows of as many. What each of more rows bears depends on the deck below, so it is missing. */
  get feet(): Value<"count"> {
    const [count, rows] = ["count", "rows"].map((key) => this.face.reader.data(`${this.path}.feet.${key}`));
    const gap = (key: string, what: string): Value<"count"> =>
      missing("count", { path: `${this.path}.feet.${key}`, what, of: this.label });
    const because = (text: string): Value<"count"> =>
      missing("count", { path: `${this.path}.feet`, what: "what a foot bears", because: `${this.label}: ${text}` });
    if (typeof count !== "number") return gap("count", "number of feet");
    if (rows === undefined && count > 4) return gap("rows", "number of rows of feet");
    if (typeof rows === "number" && rows !== 2)
      return because(
        `its feet stand in ${rows === 1 ? "one row" : `${rows} rows`}; what each bears can be told of two rows only, and is for an engineer to say.`,
      );
    if (count % 2 === 1)
      return because("two rows of its feet are not alike, so what each foot bears is for an engineer to say.");
    return counted(count, "feet");
  }

  /** Distance of the centre of all that stands on the base from the toe. */
  get centre(): Value<"length"> {
    return centreOfWeight.of({ Mr: this.restoring("toe"), m: this.mass });
  }

  /** The heaviest foot under the push, feet in two rows at the edges of the base, the weight where it really is. */
  footLoad(push: Push): Value<"force"> {
    const { mass: m, depth: d } = this;
    const x = this.centre;
    const e = greatestOf([x, armBehind.of({ d, x })], "length", "e");
    return footLoad.of({ m, n: this.feet, Mo: this.overturning(push), d, e });
  }

  get deckRating(): Value<"areal-load"> {
    return this.#value("deck.rating", "areal-load", "deck rating");
  }

  get footRating(): Value<"force"> {
    const rating = this.#value("deck.foot-rating", "mass", "deck rating under one foot");
    return rating.known && rating.kind === "mass"
      ? { ...(times(rating, GRAVITY, "g") as Known), kind: "force" }
      : { ...rating, kind: "force" };
  }

  #value<const K extends "length" | "mass" | "areal-load">(key: string, kind: K, what: string): Value<K> {
    return this.face.reader.value(`${this.path}.${key}`, kind, what, this.label);
  }
}
