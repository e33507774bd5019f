import { driveLevel, greySteps, type Value } from "@plumbmark/calc";
import type { Face } from "../faces/face.js";
import type { ViewingDesign } from "./viewing-design.js";

/** How far a face is dimmed for the target, and what is left of its grey steps. */
export class Dimming {
  readonly path: string;
  readonly label: string;

  constructor(
    readonly build: ViewingDesign,
    readonly face: Face,
  ) {
    this.path = face.path;
    this.label = face.label;
  }

  get target(): Value<"luminance"> {
    return this.build.viewing.target;
  }

  get luminance(): Value<"luminance"> {
    return this.face.alike("luminance", "luminance", "luminance");
  }

  get drive(): Value<"ratio"> {
    return driveLevel.of({ t: this.target, L: this.luminance });
  }

  /** Grey steps left when the picture is scaled down. */
  get steps(): Value<"count"> {
    return greySteps.of({ s: this.drive, b: this.build.picture.depth });
  }
}

export const dimmingOf = (build: ViewingDesign): readonly Dimming[] =>
  build.faces.map((face) => new Dimming(build, face));
