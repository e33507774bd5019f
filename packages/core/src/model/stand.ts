import {
  counted,
  deckPressure,
  footLoad,
  GRAVITY,
  gapsOf,
  type Known,
  missing,
  notionalMoment,
  overturningFactor,
  restoringMoment,
  sum,
  tabled,
  times,
  type Value,
} from "@plumbmark/calc";
import type { Face } from "./face.js";

const plain = (value: number, kind: "length" | "area", what: string): Known => tabled(value, kind, "geometry", what);

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

  /** Moment of a push on the whole face, its lower edge taken as on the floor: the safe side. Pa below and above 4 m. */
  overturning(low: number, high: number): Value<"moment"> {
    const above = this.face.reader.value(
      `${this.face.path}.height-above`,
      "length",
      "height of the lower edge above the floor",
      this.face.label,
    );
    const h = sum([above, this.face.height], "length", "h");
    return notionalMoment.of({
      b: this.face.width,
      h,
      c: plain(4, "length", "height where the push changes"),
      q1: tabled(low, "areal-load", "messe-stand-building", "push up to 4 m"),
      q2: tabled(high, "areal-load", "messe-stand-building", "push above 4 m"),
    });
  }

  get ballastArm(): Value<"length"> {
    return this.#value("ballast-arm", "length", "distance of the ballast from the toe");
  }

  /** Panels at their distance from the toe, ballast at its own; the base itself counts at half its depth. */
  get restoring(): Value<"moment"> {
    return this.#restoring(this.ballast);
  }

  /** What would be left of it without any ballast. */
  get restoringWithout(): Value<"moment"> {
    return this.#restoring(counted(0, "no ballast", "mass"));
  }

  #restoring(ballast: Value<"mass">): Value<"moment"> {
    const toe = this.#value("toe", "length", "distance of the panels' centre from the toe");
    const face = restoringMoment.of({ m: this.face.mass, x: toe, mb: ballast, xb: this.ballastArm });
    const half = times(this.#value("depth", "length", "depth of the base"), 0.5, "½");
    const own = restoringMoment.of({
      m: this.#value("mass", "mass", "mass of the base"),
      x: half,
      mb: counted(0, "ballast counted before", "mass"),
      xb: half,
    });
    return sum([face, own], "moment", "M_r");
  }

  factor(low: number, high: number): Value<"factor"> {
    return overturningFactor.of({ Mr: this.restoring, Mo: this.overturning(low, high) });
  }

  get pressure(): Value<"areal-load"> {
    const [x, y] = [
      this.#value("deck.footprint.1", "length", "footprint on the deck"),
      this.#value("deck.footprint.2", "length", "footprint on the deck"),
    ];
    const gaps = gapsOf([x, y]);
    const A: Value =
      gaps.length > 0
        ? missing("area", ...gaps)
        : plain((x as Known).value * (y as Known).value, "area", "footprint on the deck");
    return deckPressure.of({ m: this.mass, A });
  }

  /** The heaviest foot under the push, feet in two rows the depth of the base apart. */
  footLoad(low: number, high: number): Value<"force"> {
    const count = this.face.reader.data(`${this.path}.feet.count`);
    const n: Value =
      typeof count === "number"
        ? counted(count, "feet")
        : missing("count", { path: `${this.path}.feet.count`, what: "number of feet", of: this.label });
    return footLoad.of({
      m: this.mass,
      n,
      Mo: this.overturning(low, high),
      d: this.#value("depth", "length", "depth of the base"),
    });
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
