import { capHeight, capPixels, characterAngle, counted, missing, type Value } from "@plumbmark/calc";
import type { Face } from "../faces/face.js";
import type { ViewingDesign } from "../viewing/viewing-design.js";

/** The text a face is meant to show. */
export class Lettering {
  readonly path: string;
  readonly label: string;

  constructor(
    readonly build: ViewingDesign,
    readonly face: Face,
  ) {
    this.path = `${face.path}.text`;
    this.label = `The text of face ${face.name}`;
  }

  get lines(): Value<"count"> {
    const lines = this.build.reader.data(`${this.path}.lines`);
    return typeof lines === "number"
      ? counted(lines, "lines of text")
      : missing("count", { path: `${this.path}.lines`, what: "lines of text shown at once", of: this.label });
  }

  /** Pixels of a capital. */
  get capPixels(): Value<"pixels"> {
    return capPixels.of({
      y: this.face.pixelsHigh,
      l: this.lines,
      c: this.build.reader.value(
        `${this.path}.cap-height`,
        "ratio",
        "capital height as a share of the line pitch",
        this.label,
      ),
    });
  }

  get capHeight(): Value<"length"> {
    return capHeight.of({ n: this.capPixels, p: this.face.pitch });
  }

  /** Angle a capital fills at the eye of the farthest viewer. */
  get angle(): Value<"angle"> {
    return characterAngle.of({ h: this.capHeight, d: this.build.viewing.farthestFrom(this.face) });
  }
}

/** Text of every face that is meant to show some. */
export const letteringOf = (build: ViewingDesign): readonly Lettering[] =>
  build.faces
    .filter((face) => build.reader.data(`${face.path}.text`) !== undefined)
    .map((face) => new Lettering(build, face));
