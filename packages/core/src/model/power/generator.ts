import {
  circuitLoad,
  generatorGives,
  generatorLeg,
  greatestOf,
  missing,
  tabled,
  times,
  type Value,
} from "@plumbmark/calc";
import { type Paper, paperAt } from "../reading/paper.js";
import type { Circuit } from "./circuit.js";
import type { Supply } from "./supply.js";

const LEGS: Readonly<Record<string, number>> = { "single-phase": 1, "split-phase": 2, "three-phase": 3 };

/** A generating set that circuits are taken from. */
export class Generator {
  readonly label: string;
  /** The same in the middle of a sentence. */
  readonly named: string;

  constructor(
    readonly supply: Supply,
    readonly path: string,
  ) {
    this.label = `Generator ${supply.name}`;
    this.named = `generator ${supply.name}`;
  }

  get circuits(): readonly Circuit[] {
    return this.supply.circuits;
  }

  /** A word of it, `stands` or `housing`; undefined where none is written. */
  word(key: "stands" | "housing" | "class"): string | undefined {
    return this.supply.build.reader.text(`${this.path}.${key}`);
  }

  /** Everything on it, VA. */
  get load(): Value<"apparent-power"> {
    return circuitLoad.of({ s: this.circuits.map(({ load }) => load) });
  }

  /** Load of its fullest circuit, VA: the largest that one breaker switches on. */
  get largest(): Value<"apparent-power"> {
    return greatestOf(
      this.circuits.map(({ load }) => load),
      "apparent-power",
      "S",
    );
  }

  /** What it gives, its active power read as VA. */
  get gives(): Value<"apparent-power"> {
    return generatorGives.of({
      Sr: this.#value("rated", "apparent-power", "rated apparent power"),
      pf: this.#value("factor", "factor", "rated power factor"),
    });
  }

  /** How many legs it has; undefined where its system is not written. */
  get legs(): number | undefined {
    return LEGS[this.supply.system ?? ""];
  }

  /** What one of its legs gives, A. */
  get legGives(): Value<"current"> {
    const path = `power.supplies.${this.supply.name}.system`;
    if (this.legs === undefined) return missing("current", { path, what: "system", of: this.supply.label });
    return generatorLeg.of({
      Sg: this.gives,
      n: tabled(this.legs, "count", "electrical-definition", "legs"),
      V: greatestOf(
        this.circuits.map((circuit) => this.#legVoltage(circuit)),
        "voltage",
        "V",
      ),
    });
  }

  /** Largest load its maker lets be switched on at once, VA. */
  get step(): Value<"apparent-power"> {
    return this.#value("step", "apparent-power", "largest load it takes at once");
  }

  /** How far it is from the nearest opening of a building. */
  get fromOpenings(): Value<"length"> {
    return this.#value("from-openings", "length", "distance to the nearest door, window or air inlet");
  }

  /** What is on paper of its earthing; undefined where nothing is. */
  get earthing(): Paper | undefined {
    return paperAt(this.supply.build, `${this.path}.earthing`);
  }

  /** Between a leg and neutral, from the voltage of a circuit: one between lines has more. */
  #legVoltage({ threePhase, betweenLines, voltage }: Circuit): Value<"voltage"> {
    if (threePhase || (betweenLines && this.legs === 3)) return times(voltage, 1 / Math.sqrt(3), "1 ÷ √3");
    return betweenLines && this.legs === 2 ? times(voltage, 1 / 2, "1 ÷ 2") : voltage;
  }

  #value<K extends "apparent-power" | "factor" | "length">(key: string, kind: K, what: string): Value<K> {
    return this.supply.build.reader.value(`${this.path}.${key}`, kind, what, this.label);
  }
}
