import { counted, faceArea, heat, panelPixels, times, type Value } from "@plumbmark/calc";
import type { Design } from "../design.js";
import type { Face } from "../faces/face.js";
import { under, type ValueEntry } from "./entries.js";

/** Volt-amperes are never below the watts behind them: counted as watts they are the safe side. */
export const asPower = (value: Value): Value<"power"> => ({ ...value, kind: "power" });

const panels = (face: Face): Value<"count"> => face.panelCount;

/** What all its panels draw when an ordinary picture is shown. */
export const typicalPower = (face: Face): Value<"power"> => {
  const each = asPower(face.panelValue("power.typical", "power", "typical power"));
  return times(each, face.cells.length) as Value<"power">;
};

export const areaOf = (face: Face): Value<"area"> =>
  faceArea.of({
    n: panels(face),
    w: face.panelValue("size.1", "length", "size"),
    h: face.panelValue("size.2", "length", "size"),
  });

export const pixelsOf = (face: Face): Value<"pixels"> =>
  panelPixels.of({
    n: panels(face),
    x: face.panelValue("pixels.1", "pixels", "pixels"),
    y: face.panelValue("pixels.2", "pixels", "pixels"),
  });

const valuesOfFace = (face: Face): readonly ValueEntry[] =>
  under(face.path, {
    columns: () => counted(face.columns, "columns"),
    rows: () => counted(face.rows, "rows"),
    "panel-count": () => face.panelCount,
    "tallest-column": () => face.tallestColumn,
    spares: () => (face.spares === undefined ? undefined : counted(face.spares, `spares of ${face.name}`)),
    width: () => face.width,
    height: () => face.height,
    area: () => areaOf(face),
    "pixels-wide": () => face.pixelsWide,
    "pixels-high": () => face.pixelsHigh,
    pixels: () => pixelsOf(face),
    pitch: () => face.pitch,
    mass: () => face.mass,
    "power-maximum": () => face.powerMaximum,
    "power-typical": () => typicalPower(face),
    heat: () => heat.of({ P: [asPower(face.powerMaximum)] }),
    trim: () => face.reader.optional(`${face.path}.trim`, "length", "trim", face.label),
  });

export const faceValues = ({ faces }: Design): readonly ValueEntry[] => faces.flatMap(valuesOfFace);
