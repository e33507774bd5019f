import type { Value } from "@plumbmark/calc";
import type { Reader } from "../reading/reader.js";

/** Who looks at the faces from where, and how bright they are meant to be. */
export class Viewing {
  constructor(readonly reader: Reader) {}

  get nearest(): Value<"length"> {
    return this.reader.value("audience.nearest", "length", "distance of the nearest viewer", "The audience");
  }

  get farthest(): Value<"length"> {
    return this.reader.value("audience.farthest", "length", "distance of the farthest viewer", "The audience");
  }

  get target(): Value<"luminance"> {
    return this.reader.value("light.target", "luminance", "target luminance", "The light");
  }
}
