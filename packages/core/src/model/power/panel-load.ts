import { apparentPower, type Value } from "@plumbmark/calc";
import type { Panel } from "../faces/panels.js";
import { partValue } from "../reading/reader.js";

/** Watts or volt-amperes as written → VA. */
const asApparent = (value: Value, factor: Value): Value =>
  value.kind === "apparent-power" ? value : apparentPower.of({ P: value, pf: factor });

/** What one panel draws. */
export const panelLoad = ({ part, face }: Panel): Value => {
  const power = partValue(part, "power.maximum", "power", "maximum power", face.named);
  return asApparent(power, partValue(part, "power.factor", "factor", "power factor", face.named));
};
