import {
  continuousRating,
  greatestOf,
  type Known,
  leastOf,
  legCurrents,
  legImbalance,
  missing,
  sum,
  type Value,
} from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";
import { continuousShareOf } from "./continuous.js";
import { Generator } from "./generator.js";
import type { PhaseLeg } from "./legs.js";
import type { PowerDesign } from "./power-design.js";

const PAIRS = ["AB", "BC", "CA"] as const;
type Pair = (typeof PAIRS)[number];

const total = (values: readonly Value[]): Value<"current"> => sum(values, "current", "I");

/** A supply that several circuits are taken from. */
export class Supply {
  readonly path: string;
  readonly label: string;

  constructor(
    readonly build: PowerDesign,
    readonly name: string,
    readonly circuits: readonly Circuit[],
  ) {
    const own = `power.supplies.${name}`;
    this.path = !build.reader.has(own) ? `${circuits[0]?.path}.from` : own;
    this.label = `Supply ${name}`;
  }

  /** Its system as it is written. */
  get system(): string | undefined {
    return this.build.reader.text(`power.supplies.${this.name}.system`);
  }

  /** Two legs of opposite phase: as written, else as its circuits look. */
  get splitPhase(): boolean {
    return this.system === undefined ? this.guessedSplit : this.system === "split-phase";
  }

  /** Nobody says what it is, 240 V stands between its lines in us practice and nothing is on C. */
  get guessedSplit(): boolean {
    if (this.system !== undefined) return false;
    const lines = this.circuits.filter((circuit) => circuit.lines !== undefined);
    const onC = this.circuits.some(
      (circuit) => circuit.threePhase || circuit.leg === "C" || circuit.lines?.includes("C"),
    );
    return this.build.practice === "us" && !onC && lines.some(({ voltage }) => voltage.known && voltage.value === 240);
  }

  /** Whether a circuit of it says which legs it is on; without that there is nothing to balance. */
  get saysLegs(): boolean {
    return this.circuits.some(
      (circuit) => circuit.threePhase || circuit.leg !== undefined || circuit.lines !== undefined,
    );
  }

  /** The generator it is, where it is one. */
  get generator(): Generator | undefined {
    const path = `power.supplies.${this.name}.generator`;
    return this.build.reader.data(path) === undefined ? undefined : new Generator(this, path);
  }

  /**
   * Current of each leg, A: loads between lines by vector sum on three phase, plainly on split phase, where they are in
   * phase with the legs; circuits on one leg and legs of three-phase circuits are added plainly, the safe side.
   */
  get legs(): Readonly<Partial<Record<PhaseLeg, Value<"current">>>> {
    if (this.system === "single-phase") return { A: total(this.circuits.map(({ current }) => current)) };
    const names: readonly PhaseLeg[] = this.splitPhase ? ["A", "B"] : ["A", "B", "C"];
    const gaps = this.circuits
      .filter((circuit) => !circuit.threePhase && circuit.leg === undefined && circuit.lines === undefined)
      .map((circuit) => ({ path: `${circuit.path}.leg`, what: "leg", of: circuit.label }));
    if (gaps.length > 0) return Object.fromEntries(names.map((leg) => [leg, missing("current", ...gaps)]));
    const between = this.#between();
    return Object.fromEntries(names.map((leg) => [leg, total([between[leg], ...this.#plain(leg)])]));
  }

  get imbalance(): Value<"ratio"> {
    return legImbalance.of({ I: Object.values(this.legs) });
  }

  /** Current of its fullest leg. */
  get current(): Value<"current"> {
    return greatestOf(Object.values(this.legs), "current", "I");
  }

  get breaker(): Value<"current"> {
    return this.build.reader.value(`power.supplies.${this.name}.breaker`, "current", "breaker rating", this.label);
  }

  get continuousShare(): Known {
    return continuousShareOf(this.build, `power.supplies.${this.name}`);
  }

  continuousRating(share: Known = this.continuousShare): Value<"current"> {
    return continuousRating.of({ In: this.breaker, share });
  }

  /** Most that a leg of it carries continuously: by its breaker and, of a generator, by what that gives. */
  get most(): Value<"current"> {
    const { generator } = this;
    const rating = this.continuousRating();
    return generator ? leastOf([rating, generator.legGives], "current", "I") : rating;
  }

  #pair(pair: Pair): readonly Value<"current">[] {
    return this.circuits.filter((circuit) => circuit.lines === pair).map(({ current }) => current);
  }

  #between(): Readonly<Record<PhaseLeg, Value<"current">>> {
    if (this.splitPhase) {
      const both = total(this.#pair("AB"));
      return { A: both, B: both, C: total([]) };
    }
    const [AB, BC, CA] = PAIRS.map((pair) => total(this.#pair(pair))) as [Value, Value, Value];
    return legCurrents({ AB, BC, CA });
  }

  #plain(leg: PhaseLeg): readonly Value<"current">[] {
    return this.circuits.flatMap((circuit) =>
      circuit.threePhase ? [circuit.legs[leg]] : circuit.leg === leg ? [circuit.current] : [],
    );
  }
}

/** Supplies that a circuit names, each with its circuits. */
export function suppliesOf(build: PowerDesign): readonly Supply[] {
  const names = [...new Set(build.circuits.flatMap(({ from }) => (from === undefined ? [] : [from])))];
  return names.map(
    (name) =>
      new Supply(
        build,
        name,
        build.circuits.filter(({ from }) => from === name),
      ),
  );
}
