import {
  asymmetryMultiplier,
  type Coupling,
  couplingMultiplier,
  distanceMultiplier,
  frequencyMultiplier,
  gapsOf,
  greatestOf,
  horizontalMultiplier,
  type Kind,
  type Known,
  leastOf,
  loadConstant,
  missing,
  type NioshForm,
  recommendedWeight,
  tabled,
  times,
  type Value,
  verticalMultiplier,
} from "@plumbmark/calc";
import type { RiggingDesign } from "../rigging/rigging-design.js";
import { type LiftedPiece, piecesOf } from "./lifted.js";

const factor = (value: number, what: string): Known => tabled(Math.max(0, value), "factor", "niosh-94-110", what);

/** What the equation asks for at the start or the end of the lift, metres and degrees. */
interface End {
  readonly where: string;
  readonly height: number;
  readonly reach: number;
  readonly turn: number;
}

/** More cannot take hold of one piece; the schema says the same. */
const MOST_PEOPLE = 20;

/** How pieces are lifted by hand. */
export class Lifting {
  readonly path = "rigging.lifting";
  readonly label = "The lift by hand";

  constructor(readonly build: RiggingDesign) {}

  /** Everything that is lifted by hand in one piece. */
  get pieces(): readonly LiftedPiece[] {
    return piecesOf(this.build);
  }

  get heaviest(): Value<"mass"> {
    return greatestOf(
      this.pieces.map(({ mass }) => mass),
      "mass",
      "m",
    );
  }

  get people(): number | undefined {
    return this.build.reader.count(`${this.path}.people`, MOST_PEOPLE) || undefined;
  }

  /** Recommended weight limit of one person; of start and end of the lift the lower. */
  get limit(): Value<"mass"> {
    const [from, to, reach, turn, time] = [
      this.#value("from", "length", "height the lift starts at"),
      this.#value("to", "length", "height the lift ends at"),
      this.#value("reach", "length", "horizontal reach of the lift"),
      this.#value("turn", "angle", "angle the body turns"),
      this.#value("for", "time", "time that is lifted for"),
    ];
    const { reader } = this.build;
    const [reachEnd, turnEnd] = [
      reader.optional(`${this.path}.reach-end`, "length", "reach at the end of the lift", this.label) ?? reach,
      reader.optional(`${this.path}.turn-end`, "angle", "turn of the body at the end of the lift", this.label) ?? turn,
    ];
    const [grip, rate] = [reader.text(`${this.path}.grip`), reader.data(`${this.path}.rate`)];
    const gaps = [
      ...gapsOf([from, to, reach, turn, time, reachEnd, turnEnd]),
      ...(grip === undefined ? [{ path: `${this.path}.grip`, what: "grip", of: this.label }] : []),
      ...(typeof rate === "number"
        ? []
        : [{ path: `${this.path}.rate`, what: "number of lifts a minute", of: this.label }]),
    ];
    if (gaps.length > 0) return missing("mass", ...gaps);
    const of = (value: Value): number => (value as Known).value;
    const end = {
      where: "end",
      height: of(to),
      reach: of(reachEnd),
      turn: of(turnEnd),
    };
    const start = { where: "start", height: of(from), reach: of(reach), turn: of(turn) };
    const common = {
      distance: Math.abs(end.height - start.height),
      grip: grip as Coupling,
      // The table is read where the lift starts, for its end, too (94-110, p. 15).
      often: frequencyMultiplier(rate as number, of(time), start.height, this.#form),
    };
    return leastOf([this.#limitAt(start, common), this.#limitAt(end, common)], "mass", "RWL");
  }

  get #form(): NioshForm {
    return this.build.practice === "us" ? "us" : "metric";
  }

  #limitAt(
    end: End,
    common: { readonly distance: number; readonly grip: Coupling; readonly often: number },
  ): Value<"mass"> {
    const form = this.#form;
    const at = `at the ${end.where} of the lift`;
    return recommendedWeight.of({
      LC: tabled(loadConstant[form], "mass", "niosh-94-110", "load constant"),
      HM: factor(horizontalMultiplier(end.reach, form), `horizontal multiplier ${at}`),
      VM: factor(verticalMultiplier(end.height, form), `vertical multiplier ${at}`),
      DM: factor(distanceMultiplier(common.distance, form), "distance multiplier"),
      AM: factor(asymmetryMultiplier(end.turn), `asymmetry multiplier ${at}`),
      FM: factor(common.often, "frequency multiplier"),
      CM: factor(couplingMultiplier(common.grip, end.height, form), `coupling multiplier ${at}`),
    });
  }

  /** Limit of all who lift, shared evenly (common practice: the equation is for one person). */
  limitOf(people: number): Value<"mass"> {
    return times(this.limit, people, `${people} people`);
  }

  #value<const K extends Kind>(key: string, kind: K, what: string): Value<K> {
    return this.build.reader.value(`${this.path}.${key}`, kind, what, this.label);
  }
}
