import type { Value } from "@plumbmark/calc";
import type { Build } from "./build.js";

/** Every computed value of a build, by the path it is quoted with. */
export function valuesOf(build: Build): ReadonlyMap<string, Value> {
  const values = new Map<string, Value>();
  const put = (path: string, own: Readonly<Record<string, Value>>): void => {
    for (const [key, value] of Object.entries(own)) values.set(`${path}.${key}`, value);
  };
  for (const face of build.faces)
    put(face.path, {
      "panel-count": face.panelCount,
      width: face.width,
      height: face.height,
      "pixels-wide": face.pixelsWide,
      "pixels-high": face.pixelsHigh,
      pitch: face.pitch,
      mass: face.mass,
      "power-maximum": face.powerMaximum,
    });
  for (const circuit of build.circuits)
    put(circuit.path, {
      load: circuit.load,
      current: circuit.current,
      "continuous-rating": circuit.continuousRating(),
    });
  for (const run of build.runs)
    put(run.path, { current: run.current, "voltage-drop": run.voltageDrop, "voltage-at-end": run.voltageAtEnd });
  for (const chain of build.chains)
    put(chain.path, { panels: chain.panelCount, pixels: chain.pixels, capacity: chain.stated });
  for (const bar of build.bars) {
    put(bar.path, { load: bar.load });
    for (const hang of bar.hangs) put(hang.path, { reaction: hang.reaction });
  }
  return values;
}
