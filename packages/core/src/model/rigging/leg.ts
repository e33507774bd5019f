import { bridleLegLength, bridleTension, difference, dropOf, legAngle, sum, type Value } from "@plumbmark/calc";
import { asMass } from "../reading/as-mass.js";
import { Assembly, type AssemblyRating } from "./assembly.js";
import { wayToPoint } from "./bar-place.js";
import type { Hang } from "./hang.js";
import { ratingOf } from "./letter.js";

/** One leg of a bridle, from the apex over the bar up to the structure. */
export class Leg {
  readonly path: string;
  readonly label: string;
  readonly assembly: Assembly;

  constructor(
    readonly hang: Hang,
    readonly side: "left" | "right",
  ) {
    this.path = `${hang.path}.bridle.${side}`;
    this.label = `The ${side} leg of ${hang.label.replace(/^Hang/u, "hang")}`;
    this.assembly = new Assembly(hang.bar.build.reader, `${this.path}.assembly`, this.label, hang.bar.build.practice);
  }

  get rise(): Value<"length"> {
    return this.#length("rise");
  }

  /** As it is written, else as it follows from the point it goes up to. */
  get run(): Value<"length"> {
    return this.writtenRun ?? this.runByPoint ?? this.#length("run");
  }

  get writtenRun(): Value<"length"> | undefined {
    return this.hang.bar.build.reader.optional(`${this.path}.run`, "length", "run", this.label);
  }

  get other(): Leg {
    return new Leg(this.hang, this.side === "left" ? "right" : "left");
  }

  /** Its straight way. */
  get length(): Value<"length"> {
    return bridleLegLength.of({ V: this.rise, H: this.run });
  }

  /** Height of what it bears on above the floor: its own, else that of the bar's hangs. */
  get bearingHeight(): Value<"length"> {
    const { bar } = this.hang;
    const what = "height of the face that the leg's hardware bears on";
    return bar.build.reader.optional(`${this.path}.bearing-height`, "length", what, this.label) ?? bar.bearingHeight;
  }

  /** From the apex, as it follows from its own rise, down to the middle of the bar. */
  get apexDrop(): Value<"length"> {
    const down = dropOf.of({ up: this.bearingHeight, h: this.hang.bar.height });
    return difference(down, this.rise, "length", "way from the apex");
  }

  /** How far its point is from over its hang, along the structure; undefined where it is not known. */
  get runByPoint(): Value<"length"> | undefined {
    return wayToPoint(this)?.run;
  }

  /** The side of its hang its point is on, by the survey; undefined where it is not known, or right above. */
  get sideByPoint(): "left" | "right" | undefined {
    return wayToPoint(this)?.side;
  }

  /** What the structure bears at its end when a load is caught: as the letter says, else its rating. */
  get catching(): Value<"mass"> {
    return this.hang.bar.letter.point(this.hang, `.${this.side}`)?.catching ?? this.structure;
  }

  /** Degrees from horizontal. */
  get angle(): Value<"angle"> {
    return legAngle.of({ V: this.rise, H: this.run });
  }

  /** Tension, as a mass, when the bridle carries `load`. */
  tension(load: Value): Value<"mass"> {
    const { other } = this;
    return bridleTension.of({ W: load, V1: this.rise, H1: this.run, V2: other.rise, H2: other.run });
  }

  get structure(): Value<"mass"> {
    const { bar } = this.hang;
    const path = `${this.path}.structure`;
    const own: Value | undefined = bar.build.reader.optional(path, "mass", "structure rating", this.label);
    return ratingOf(own && asMass(own), bar.letter.point(this.hang, `.${this.side}`), path, this.label);
  }

  /** What the structure bears at its end: the tension and, added plainly, what the leg itself weighs: the safe side. */
  onStructure(tension: Value): Value<"mass"> {
    return sum([tension, this.assembly.mass], "mass", "W");
  }

  /** What it is held against, and what of a tension counts there. */
  get ratings(): readonly AssemblyRating[] {
    return [
      { what: "weakest part", allowed: this.assembly.weakest, of: (tension) => tension },
      { what: "structure", allowed: this.structure, of: (tension) => this.onStructure(tension) },
    ];
  }

  #length(key: "rise" | "run"): Value<"length"> {
    return this.hang.bar.build.reader.value(`${this.path}.${key}`, "length", key, this.label);
  }
}
