import { exposureOf, type Known, refreshesExposed, type Value } from "@plumbmark/calc";
import type { Face } from "../faces/face.js";
import type { FacesDesign } from "../faces/faces-design.js";

/** A face before the camera that films it. */
export class Filming {
  readonly path: string;
  readonly label: string;

  constructor(
    readonly build: FacesDesign,
    readonly face: Face,
  ) {
    this.path = face.path;
    this.label = face.label;
  }

  /** Frame rate of the camera, Hz. */
  get rate(): Value<"frequency"> {
    return this.build.reader.value("camera.rate", "frequency", "frame rate", "The camera");
  }

  /** Exposure of a frame, s: as written, or by the angle of the shutter. */
  get exposure(): Value<"time"> {
    const shutter: Value = this.build.reader.value("camera.shutter", "time", "shutter", "The camera");
    return shutter.known && (shutter as Known).kind === "angle"
      ? exposureOf.of({ a: shutter, r: this.rate })
      : (shutter as Value<"time">);
  }

  /** Refresh rate of the panels, Hz. */
  get refresh(): Value<"frequency"> {
    return this.face.alike("refresh", "frequency", "refresh rate");
  }

  /** Whole refreshes in one exposure. */
  get refreshes(): Value<"count"> {
    return refreshesExposed.of({ f: this.refresh, t: this.exposure });
  }
}

/** Every face before the camera; none where nobody films, or nothing is written of a camera. */
export const filmingOf = (build: FacesDesign): readonly Filming[] => {
  const { reader } = build;
  return !reader.has("camera") || reader.isNone("camera") ? [] : build.faces.map((face) => new Filming(build, face));
};
