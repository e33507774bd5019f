import { acuityDistance, METRES_PER_MM, practiceDistance, tabled } from "@plumbmark/calc";
import type { Design } from "../design.js";
import { under, type ValueEntry } from "./entries.js";
import { settingNumber } from "./setting.js";

/** Of every face what its viewers see; `viewing.` and the name of the face. */
export const viewingValues = (build: Design): readonly ValueEntry[] => {
  const metres = settingNumber(build, "viewing.pitch", "metres-per-mm") ?? METRES_PER_MM;
  const k = tabled(metres, "factor", "practice", "metres for each millimetre of pitch");
  const text = new Map(build.lettering.map((each) => [each.face, each]));
  const { nearest, farthest, target } = build.viewing;
  return [
    ...build.dimming.flatMap(({ face, luminance, drive, steps }) =>
      under(`viewing.${face.name}`, {
        "nearest-acuity-distance": () => acuityDistance.of({ p: face.pitch }),
        "nearest-by-practice": () => practiceDistance.of({ p: face.pitch, k }),
        "cap-pixels": () => text.get(face)?.capPixels,
        "cap-height": () => text.get(face)?.capHeight,
        angle: () => text.get(face)?.angle,
        characters: () => text.get(face)?.room(settingNumber(build, "viewing.text", "advance")),
        luminance: () => luminance,
        "drive-level": () => drive,
        "grey-steps": () => steps,
      }),
    ),
    ...build.filming.flatMap(({ face, refresh, refreshes }) =>
      under(`viewing.${face.name}`, { refresh: () => refresh, "refreshes-exposed": () => refreshes }),
    ),
    ...under("camera", {
      rate: () => build.filming[0]?.rate,
      exposure: () => build.filming[0]?.exposure,
    }),
    ...under("audience", { nearest: () => nearest, farthest: () => farthest }),
    ...under("light", { target: () => target }),
  ];
};
