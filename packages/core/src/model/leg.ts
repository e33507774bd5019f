import { bridleTension, legAngle, type Value } from "@plumbmark/calc";
import { asMass } from "./as-mass.js";
import { Assembly } from "./assembly.js";
import type { Hang } from "./rigging.js";

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
    this.assembly = new Assembly(hang.bar.build.reader, `${this.path}.assembly`, this.label);
  }

  get rise(): Value<"length"> {
    return this.#length("rise");
  }

  get run(): Value<"length"> {
    return this.#length("run");
  }

  get other(): Leg {
    return new Leg(this.hang, this.side === "left" ? "right" : "left");
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
    return asMass(this.hang.bar.build.reader.value(`${this.path}.structure`, "mass", "structure rating", this.label));
  }

  get ratings(): readonly (readonly [string, Value])[] {
    return [
      ["weakest part", this.assembly.weakest],
      ["structure", this.structure],
    ];
  }

  #length(key: "rise" | "run"): Value<"length"> {
    return this.hang.bar.build.reader.value(`${this.path}.${key}`, "length", key, this.label);
  }
}
