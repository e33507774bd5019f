import { difference, missing, sum, type Value } from "@plumbmark/calc";
import { asMass } from "../reading/as-mass.js";
import { once } from "../reading/once.js";
import type { PointUsed } from "../venue/venue.js";
import { Assembly, type AssemblyPart, type AssemblyRating } from "./assembly.js";
import type { Bar } from "./bar.js";
import { placeByPoint, pointOfHang } from "./bar-place.js";
import type { WorstCase } from "./cases.js";
import { type Grip, gripsOf } from "./grip.js";
import { Leg } from "./leg.js";
import { ratingOf } from "./letter.js";

/** One suspension point of a bar. */
export class Hang {
  /** Its place in the document: `rigging.bars.header.hangs.H1`. */
  readonly path: string;
  /** What messages call it: `Hang H1`. */
  readonly label: string;

  constructor(
    /** The bar it holds. */
    readonly bar: Bar,
    /** Its name in the document. */
    readonly name: string,
  ) {
    this.path = `${bar.path}.hangs.${name}`;
    this.label = `Hang ${name} of bar ${bar.name}`;
  }

  /** Its distance from the left end of the bar, in metres: as written, else as it follows from the point it hangs from. */
  get at(): Value<"length"> {
    const written = this.bar.build.reader.has(`${this.path}.at`);
    const found = written ? undefined : this.atByPoint;
    if (found) return found;
    return this.bar.build.reader.value(`${this.path}.at`, "length", "place on the bar", this.label);
  }

  /** The same as it follows from its point and the place of the bar; undefined where either is not known. */
  get atByPoint(): Value<"length"> | undefined {
    return once(this, "at by point", () => placeByPoint(this));
  }

  /** How far the place that is written is from where its point is; undefined where one of them is not known. */
  get fromPoint(): Value<"length"> | undefined {
    const written = this.bar.build.reader.optional(`${this.path}.at`, "length", "place on the bar", this.label);
    const { atByPoint } = this;
    if (!written?.known || !atByPoint) return undefined;
    if (!atByPoint.known) return atByPoint;
    const [near, far] = written.value < atByPoint.value ? [written, atByPoint] : [atByPoint, written];
    return difference(far, near, "length", "Δ");
  }

  /** Structure and point of the survey it hangs from; undefined where it names none. */
  get point(): PointUsed | undefined {
    const found = pointOfHang(this);
    return found && { structure: found[0], point: found[1] };
  }

  /** Whether it is a bridle of two legs instead of one drop. */
  get bridled(): boolean {
    return this.bar.build.reader.has(`${this.path}.bridle`);
  }

  /** Parts of the assembly in load order; undefined when none is written down. */
  get assembly(): readonly AssemblyPart[] | undefined {
    return !this.bar.build.reader.has(`${this.path}.assembly`) ? undefined : this.ownAssembly.parts;
  }

  /** What it hangs by itself, without the legs of a bridle. */
  get ownAssembly(): Assembly {
    return new Assembly(this.bar.build.reader, `${this.path}.assembly`, this.label, this.bar.build.practice);
  }

  /** Legs of a bridle; none of a plumb drop. */
  get legs(): readonly Leg[] {
    return this.bridled ? [new Leg(this, "left"), new Leg(this, "right")] : [];
  }

  /** What the structure is stated to carry at this point, as a mass in kilograms. */
  get structure(): Value<"mass"> {
    const path = `${this.path}.structure`;
    const own: Value | undefined = this.bar.build.reader.optional(path, "mass", "structure rating", this.label);
    return ratingOf(own && asMass(own), this.bar.letter.point(this), path, this.label);
  }

  /** What the structure bears here when a load is caught: as the letter says, else its rating. */
  get catching(): Value<"mass"> {
    return this.bar.letter.point(this)?.catching ?? this.structure;
  }

  /** The least WLL of the assembly; missing when a part of it has none. */
  get weakest(): Value<"mass"> {
    return this.ownAssembly.weakest;
  }

  /** What it weighs itself: its assembly and the legs of a bridle; missing when a part has no mass. */
  get ownMass(): Value<"mass"> {
    return sum(
      this.strands.map(({ assembly }) => assembly.mass),
      "mass",
      "m",
    );
  }

  /** What the structure bears above it: what it carries, and what it weighs itself. */
  onStructure(carried: Value): Value<"mass"> {
    return sum([carried, this.ownMass], "mass", "W");
  }

  /** What its load is held against; what a bridle carries is held against its legs. */
  get ratings(): readonly AssemblyRating[] {
    const weakest: AssemblyRating = { what: "weakest part", allowed: this.weakest, of: (carried) => carried };
    if (this.bridled) return this.assembly === undefined ? [] : [weakest];
    return [weakest, { what: "structure", allowed: this.structure, of: (carried) => this.onStructure(carried) }];
  }

  /** Everything that bears its load: its own assembly, and the legs of a bridle with their tension. */
  get strands(): readonly {
    readonly assembly: Assembly;
    readonly load: (reaction: Value) => Value;
    readonly path: string;
    readonly label: string;
  }[] {
    const own = { assembly: this.ownAssembly, load: (reaction: Value) => reaction, path: this.path, label: this.label };
    const legs = this.legs.map((leg) => ({
      assembly: leg.assembly,
      load: (reaction: Value) => leg.tension(reaction),
      path: leg.path,
      label: leg.label,
    }));
    return this.bridled && this.assembly === undefined ? legs : [own, ...legs];
  }

  /** What takes hold of the bar and of the structure at the ends of what it hangs by. */
  get grips(): readonly Grip[] {
    return gripsOf(this);
  }

  /** What it carries while the bar is level, as a mass in kilograms. */
  get reaction(): Value<"mass"> {
    return (
      (this.bar.reactions.get(this.name) as Value<"mass"> | undefined) ??
      missing("mass", { path: `${this.path}.at`, what: "place on the bar", of: this.label })
    );
  }

  /** The same by its other name: level, beside `worst`. */
  get level(): Value<"mass"> {
    return this.reaction;
  }

  /** What it carries at worst, and the case that governs in words. */
  get worst(): WorstCase {
    const { cases } = this.bar;
    const found = cases.known ? cases.worst.find(({ hang }) => hang.name === this.name) : undefined;
    if (found) return found;
    const reaction = cases.known ? this.reaction : { ...cases, kind: "mass" as const };
    return { hang: this, reaction, when: "" };
  }
}
