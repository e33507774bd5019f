import type { PowerDesign } from "../power/power-design.js";
import { under, type ValueEntry } from "./entries.js";

/** What each device draws, by its place in the document; `first` is the word its path begins with. */
export const deviceValues =
  (first: "data" | "picture") =>
  ({ devices }: PowerDesign): readonly ValueEntry[] =>
    devices
      .filter(({ takesNone, path }) => !takesNone && path.startsWith(`${first}.`))
      .flatMap((device) =>
        under(device.path, {
          load: () => device.load,
          inrush: () => device.inrush,
          leakage: () => device.leakage,
        }),
      );
