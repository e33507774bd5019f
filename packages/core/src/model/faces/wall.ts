import {
  counted,
  fixingLever,
  fixingShare,
  fixingShear,
  fixingTension,
  GRAVITY,
  type Known,
  missing,
  times,
  type Value,
} from "@plumbmark/calc";
import type { Face } from "../faces/face.js";
import type { DesignSource } from "../reading/design-source.js";
import { Statement } from "../rigging/statement.js";

/** What holds a face to its wall. */
export class Fixings extends Statement {
  constructor(
    build: DesignSource,
    readonly face: Face,
  ) {
    super(build, `${face.path}.fixings`, `The fixings of face ${face.name}`);
  }

  /** Fixings of the top row that take the load at worst: two, or the only one there is. */
  get taking(): Value<"count"> {
    const [count, rows] = [this.#number("count", "number of fixings"), this.#number("rows", "rows of fixings")];
    if (!count.known) return count;
    if (!rows.known) return rows;
    if (rows.value > count.value)
      return missing("count", {
        path: `${this.path}.rows`,
        what: "rows of fixings",
        because: `${this.label}: there are more rows than fixings.`,
      });
    const inRow = Math.floor(count.value / rows.value);
    // A face that is not alike on both sides of its middle may leave all of it to one.
    return counted(Math.min(inRow, this.face.isEven ? 2 : 1), "fixings of the top row that may take it all");
  }

  /** Whether what comes loose falls on somebody: a lower edge overhead, or a height that is not written down. */
  get overhead(): boolean {
    return this.face.overhead || !this.build.reader.has(`${this.face.path}.height-above`);
  }

  /** From the lowest row to the top one. */
  get apart(): Value<"length"> {
    return this.#length("apart", "lever arm of the top row");
  }

  get tension(): Value<"force"> {
    const { face } = this;
    const e = fixingLever.of({
      d: face.panelValue("depth", "length", "depth"),
      o: this.#length("stand-off", "distance of the panels' backs from the wall"),
    });
    return fixingTension.of({ m: face.mass, e, z: this.apart, n: this.taking });
  }

  get shear(): Value<"force"> {
    return fixingShear.of({ m: this.face.mass, n: this.taking });
  }

  /** Pull and shear against what one fixing may carry, together. */
  get share(): Value<"ratio"> {
    return fixingShare.of({
      T: this.tension,
      Ta: this.#allowable("tension", "allowable pull of one fixing"),
      V: this.shear,
      Va: this.#allowable("shear", "allowable shear of one fixing"),
    });
  }

  #allowable(key: string, what: string): Value<"force"> {
    const found: Value = this.build.reader.value(`${this.path}.allowable.${key}`, "force", what, this.label);
    return found.known && found.kind === "mass"
      ? { ...(times(found, GRAVITY, "g") as Known), kind: "force" }
      : { ...found, kind: "force" };
  }

  #length(key: string, what: string): Value<"length"> {
    return this.build.reader.value(`${this.path}.${key}`, "length", what, this.label);
  }

  #number(key: string, what: string): Value<"count"> {
    const count = this.build.reader.count(`${this.path}.${key}`, 10_000);
    return count > 0 ? counted(count, what) : missing("count", { path: `${this.path}.${key}`, what, of: this.label });
  }
}
