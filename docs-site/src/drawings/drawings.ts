import { faceDrawings } from "./face/face-drawing.js";
import { hangPlot } from "./hang-plot/hang-plot.js";
import { planView } from "./hang-plot/plan-view.js";
import { oneLine } from "./one-line.js";
import { picturePath } from "./picture-path.js";
import { rasterDrawing } from "./raster.js";
import type { Drawing, DrawingSubject } from "./shared/drawing.js";
import { sightlines } from "./sightlines.js";
import { standDrawing } from "./stand.js";

/** Every drawing of a build, in the order a crew needs them. */
export function drawingsOf(subject: DrawingSubject): readonly Drawing[] {
  const { build } = subject;
  const all = [
    ...build.bars.flatMap((bar) => [hangPlot(bar, subject), planView(bar, subject)]),
    ...build.faces.map((face) => standDrawing(face, subject)),
    ...build.faces.flatMap((face) => faceDrawings(face, subject)),
    ...build.circuits.map((circuit) => oneLine(circuit, subject)),
    picturePath(subject),
    rasterDrawing(subject),
    ...build.faces.map((face) => sightlines(face, subject)),
  ];
  return all.filter((each) => each !== undefined);
}
