import { counted, designFactor, missing, tabled, times, type Value } from "@plumbmark/calc";
import type { Data } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";
import { asMass } from "../reading/as-mass.js";
import { partOptional, partValue } from "../reading/reader.js";
import type { Face } from "./face.js";
import { turnsStated } from "./turns.js";

/** What hangs the columns of a face from its bar. */
export class Attachment {
  readonly path: string;
  readonly label: string;
  /** Its name in the catalogue. */
  readonly name: string;
  readonly part: Part | undefined;

  constructor(readonly face: Pick<Face, "path" | "label" | "name" | "columns" | "reader">) {
    this.path = `${face.path}.hung-by`;
    this.label = `What hangs face ${face.name}`;
    const { reader } = face;
    this.name = reader.text(this.path) ?? reader.text(`${this.path}.part`) ?? "";
    const part = reader.parts.get(this.name);
    this.part = part?.kind === "attachment" ? part : undefined;
  }

  /** Columns one of them carries. */
  get columns(): Value<"count"> {
    const stated = this.part?.data.columns;
    return typeof stated === "number" && stated > 0
      ? tabled(stated, "count", "part", "columns one attachment carries")
      : partValue(this.part, "columns", "count", "number of columns one carries", this);
  }

  /** How many the columns need: whole ones, however few columns the last carries. */
  get needed(): Value<"count"> {
    const { columns } = this;
    if (!columns.known) return columns;
    return counted(Math.ceil(this.face.columns / columns.value - 1e-9), "attachments its columns need");
  }

  /** How many there are: as written, or as many as the columns need. */
  get count(): Value<"count"> {
    const written = this.face.reader.data(`${this.path}.count`);
    return typeof written === "number" ? counted(written, "attachments, as written") : this.needed;
  }

  /** What all of them weigh. */
  get mass(): Value<"mass"> {
    const { count } = this;
    const each = partValue(this.part, "mass", "mass", "mass", this);
    return count.known ? times(each, count.value, `${count.value}`) : missing("mass", ...count.gaps);
  }

  get wll(): Value<"mass"> {
    return asMass(partValue(this.part, "wll", "mass", "WLL", this));
  }

  get breaking(): Value<"mass"> {
    return asMass(partValue(this.part, "breaking", "mass", "breaking strength", this));
  }

  /** Distance from the middle of the bar to the panel's top. */
  get drop(): Value<"length"> {
    return partValue(this.part, "drop", "length", "distance from the bar to the panel's top", this);
  }

  /** Thinnest and thickest pipe it fits. */
  get fits(): readonly [Value<"length">, Value<"length">] {
    const one = partOptional(this.part, "fits", "length", "diameter of pipe it fits");
    if (one?.known) return [one, one];
    const what = "diameter of pipe it fits";
    return [partValue(this.part, "fits.1", "length", what, this), partValue(this.part, "fits.2", "length", what, this)];
  }

  /** Degrees a panel that hangs from it may be turned by; undefined where its part does not say. */
  get takesTurned(): readonly number[] | undefined {
    return turnsStated(this.part?.data["takes-turned"]);
  }

  /** Panels it is made for; undefined where its part does not say. */
  get takes(): readonly string[] | undefined {
    const takes: Data | undefined = this.part?.data.takes;
    if (typeof takes === "string") return [takes];
    return Array.isArray(takes) ? takes.filter((each): each is string => typeof each === "string") : undefined;
  }

  /** What one of them carries when a column weighs so much. */
  load(column: Value<"mass">): Value<"mass"> {
    const { columns } = this;
    return columns.known
      ? times(column, columns.value, `${columns.value}`)
      : missing("mass", ...columns.gaps, ...(column.known ? [] : column.gaps));
  }

  designFactor(load: Value): Value<"factor"> {
    return designFactor.of({ B: this.breaking, η: tabled(1, "factor", "arithmetic", "no termination"), W: load });
  }
}
