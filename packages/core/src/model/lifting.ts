import {
  asymmetryMultiplier,
  type Coupling,
  couplingMultiplier,
  distanceMultiplier,
  gapsOf,
  greatestOf,
  horizontalMultiplier,
  type Known,
  loadConstant,
  missing,
  type NioshForm,
  recommendedWeight,
  tabled,
  times,
  type Value,
  verticalMultiplier,
} from "@plumbmark/calc";
import type { Build } from "./build.js";

const factor = (value: number, what: string): Known => tabled(Math.max(0, value), "factor", "niosh-94-110", what);

/** How the heaviest piece is lifted by hand. */
export class Lifting {
  readonly path = "rigging.lifting";
  readonly label = "The lift by hand";

  constructor(readonly build: Build) {}

  /** The heaviest single panel; pieces already locked together are not lifted by hand. */
  get heaviest(): Value<"mass"> {
    return greatestOf(
      this.build.faces.map(({ panelMass }) => panelMass),
      "mass",
      "m",
    );
  }

  get people(): number | undefined {
    const people = this.build.reader.data(`${this.path}.people`);
    return typeof people === "number" ? people : undefined;
  }

  /** Recommended weight limit of one person; of start and end of the lift the lower. Lifts are taken as rare. */
  get limit(): Value<"mass"> {
    const [from, to, reach, turn] = [
      this.#value("from", "length", "height the lift starts at"),
      this.#value("to", "length", "height the lift ends at"),
      this.#value("reach", "length", "horizontal reach of the lift"),
      this.#value("turn", "angle", "angle the body turns"),
    ];
    const grip = this.build.reader.text(`${this.path}.grip`);
    const gaps = [
      ...gapsOf([from, to, reach, turn]),
      ...(grip === undefined ? [{ path: `${this.path}.grip`, what: "grip", of: this.label }] : []),
    ];
    if (gaps.length > 0) return missing("mass", ...gaps);
    const [start, end] = [(from as Known).value, (to as Known).value];
    const form: NioshForm = this.build.practice === "us" ? "us" : "metric";
    const vertical = Math.min(verticalMultiplier(start, form), verticalMultiplier(end, form));
    const coupling = Math.min(couplingMultiplier(grip as Coupling, start), couplingMultiplier(grip as Coupling, end));
    return recommendedWeight.of({
      LC: tabled(loadConstant[form], "mass", "niosh-94-110", "load constant"),
      HM: factor(horizontalMultiplier((reach as Known).value, form), "horizontal multiplier"),
      VM: factor(vertical, "vertical multiplier"),
      DM: factor(distanceMultiplier(Math.abs(end - start), form), "distance multiplier"),
      AM: factor(asymmetryMultiplier((turn as Known).value), "asymmetry multiplier"),
      FM: factor(1, "frequency multiplier of one lift in five minutes, up to an hour"),
      CM: factor(coupling, "coupling multiplier"),
    });
  }

  /** Limit of all who lift, shared evenly (common practice: the equation is for one person). */
  limitOf(people: number): Value<"mass"> {
    return times(this.limit, people, `${people} people`);
  }

  #value<const K extends "length" | "angle">(key: string, kind: K, what: string): Value<K> {
    return this.build.reader.value(`${this.path}.${key}`, kind, what, this.label);
  }
}
