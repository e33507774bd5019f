import {
  CHARACTER_ADVANCE,
  capHeight,
  capPixels,
  characterAngle,
  counted,
  lineCharacters,
  missing,
  tabled,
  type Value,
} from "@plumbmark/calc";
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

  /** Characters of its longest line; undefined where it is not written down. */
  get characters(): Value<"count"> | undefined {
    const written = this.build.reader.data(`${this.path}.characters`);
    return typeof written === "number" ? counted(written, "characters of the longest line") : undefined;
  }

  /**
   * Characters the face has room for on a line.
   * @param advance width of a character in heights of a capital
   */
  room(advance: number = CHARACTER_ADVANCE): Value<"count"> {
    const source = advance === CHARACTER_ADVANCE ? "core-font-metrics" : "house";
    const k = tabled(advance, "factor", source, "width of a character in heights of a capital");
    return lineCharacters.of({ x: this.face.pixelsWide, k, n: this.capPixels });
  }

  /** Angle a capital fills at the eye of the farthest viewer. */
  get angle(): Value<"angle"> {
    return characterAngle.of({ h: this.capHeight, d: this.build.viewing.farthestFrom(this.face) });
  }
}

/** Text of every face that is meant to show some. */
export const letteringOf = (build: ViewingDesign): readonly Lettering[] =>
  build.faces.filter((face) => build.reader.has(`${face.path}.text`)).map((face) => new Lettering(build, face));
