import { missing, sum, type Value } from "@plumbmark/calc";
import type { Face } from "../faces/face.js";
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

  /** Distance of the nearest viewer from a face: the audience's, and how far upstage the face is. */
  nearestTo(face: Face): Value<"length"> {
    return this.#from(this.nearest, "audience.nearest", face);
  }

  /** Distance of the farthest viewer from a face. */
  farthestFrom(face: Face): Value<"length"> {
    return this.#from(this.farthest, "audience.farthest", face);
  }

  /** A survey tells distances from where places are measured, so a face has to say where it is; a build those from its faces. */
  #from(distance: Value<"length">, path: string, face: Face): Value<"length"> {
    const { upstage } = face;
    if (upstage) return sum([distance, upstage], "length", "d");
    if (!this.reader.venue?.states(path)) return distance;
    return missing("length", { path: `${face.path}.upstage`, what: "distance upstage", of: face.label });
  }

  get target(): Value<"luminance"> {
    return this.reader.value("light.target", "luminance", "target luminance", "The light");
  }
}
