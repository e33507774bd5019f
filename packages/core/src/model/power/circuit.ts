import {
  circuitLoad,
  continuousRating,
  greatestOf,
  inrush,
  type Known,
  loadCurrent,
  panelsThatFit,
  type SocketLayout,
  shareOf,
  sum,
  type Value,
} from "@plumbmark/calc";
import { isPlaceholder } from "../../document/nothing-written.js";
import { placeName } from "../../document/place-name.js";
import { once } from "../reading/once.js";
import { continuousShareOf } from "./continuous.js";
import type { Device } from "./device.js";
import { faultLoopAllowed } from "./fault-loop.js";
import { legsOf, type PhaseLeg } from "./legs.js";
import { neutralOf } from "./neutral.js";
import { currentAtHalfFactor, loadsBeside, otherLoadOf } from "./other-load.js";
import type { PowerDesign } from "./power-design.js";
import { peakRiddenBy } from "./rides-through.js";
import type { Run } from "./run.js";
import { wiringBreaker } from "./wiring.js";

/** One circuit of the venue. */
export class Circuit {
  /** Its place in the document: `power.circuits.stage-4`. */
  readonly path: string;
  /** What messages call it: `Circuit stage-4`. */
  readonly label: string;

  constructor(
    /** The build it belongs to. */
    readonly build: PowerDesign,
    /** Its name in the document. */
    readonly name: string,
  ) {
    this.path = `power.circuits.${name}`;
    this.label = `Circuit ${name}`;
  }

  /** Whether it is fed with three phases. */
  get threePhase(): boolean {
    return this.build.reader.has(`${this.path}.supply.three-phase`);
  }

  /** Whether it is fed with two lines and no neutral. */
  get betweenLines(): boolean {
    return this.build.reader.has(`${this.path}.supply.line-to-line`);
  }

  /** Place of the venue its outlet is at; undefined when it is not written down. */
  get outletAt(): string | undefined {
    return this.build.reader.text(`${this.path}.at`);
  }

  /** Supply it is taken from with others; undefined when it is not written down. */
  get from(): string | undefined {
    return this.build.reader.text(`${this.path}.from`);
  }

  /** Leg it is on, of a circuit between a line and neutral. */
  get leg(): string | undefined {
    return this.build.reader.text(`${this.path}.leg`);
  }

  /** Pair of lines it is between, `AB`. */
  get lines(): string | undefined {
    return this.build.reader.text(`${this.path}.supply.legs`);
  }

  /** Its supply voltage, in volts; between the legs where there are several. */
  get voltage(): Value<"voltage"> {
    const { reader } = this.build;
    for (const key of ["line-to-line", "three-phase"]) {
      const found = reader.quantities.get(`${this.path}.supply.${key}`);
      if (found) return found as Known<"voltage">;
    }
    return reader.value(`${this.path}.supply`, "voltage", "supply voltage", this.label);
  }

  /** Rating of its breaker, in amperes. */
  get breaker(): Value<"current"> {
    return this.build.reader.value(`${this.path}.breaker`, "current", "breaker rating", this.label);
  }

  /** Conductor of the building wiring. */
  get conductor(): Value<"conductor"> {
    return this.build.reader.value(
      `${this.path}.wiring.conductor`,
      "conductor",
      "conductor of the building wiring",
      this.label,
    );
  }

  /** Largest breaker its building wiring may be on. */
  get wiringBreaker(): Value<"current"> {
    return wiringBreaker(this);
  }

  /** Runs that are fed from it. */
  get runs(): readonly Run[] {
    return once(this, "runs", () => this.build.runs.filter((run) => run.circuit === this));
  }

  /** Places and devices it says it serves, as they are compared. */
  get serves(): readonly string[] {
    return once(this, "serves", () =>
      this.build.reader
        .list(`${this.path}.serves`)
        .flatMap((each) => (typeof each === "string" && !isPlaceholder(each) ? [placeName(each)] : [])),
    );
  }

  /** Devices on it. One that two circuits serve counts on both: the safe side, until it is said which. */
  get devices(): readonly Device[] {
    return this.build.devices.filter((device) => !device.takesNone && device.circuits.includes(this));
  }

  /** Whether it is said what else is on it, be it nothing. */
  get saysOtherLoad(): boolean {
    return this.build.reader.has(`${this.path}.other-load`);
  }

  /** How it is controlled: `constant`, `relay`, `dimmer` or `non-dim`; undefined when it is not written down. */
  get control(): string | undefined {
    return this.build.reader.text(`${this.path}.control`);
  }

  /** How its sockets are laid; undefined when it is not written down. */
  get layout(): SocketLayout | undefined {
    const written = this.build.reader.text(`${this.path}.layout`);
    return written === "ring" || written === "radial" ? written : undefined;
  }

  /** Everything on it, in volt-amperes. */
  get load(): Value<"apparent-power"> {
    return circuitLoad.of({ s: [...this.runs.flatMap((run) => run.loads), ...loadsBeside(this)] });
  }

  /** Of a three-phase circuit the current of its fullest leg. */
  get current(): Value<"current"> {
    return this.threePhase
      ? greatestOf(Object.values(this.legs), "current", "I")
      : loadCurrent.of({ S: this.load, V: this.voltage });
  }

  /** The same at a power factor of 0.5 of its other load; undefined where no watts of it are written. */
  get currentAtHalfFactor(): Value<"current"> | undefined {
    return currentAtHalfFactor(this);
  }

  /** Current of each leg of a three-phase circuit. */
  get legs(): Readonly<Record<PhaseLeg, Value<"current">>> {
    return legsOf(this);
  }

  /** The most its neutral carries; undefined where nothing is between a leg of it and neutral. */
  get neutral(): Value<"current"> | undefined {
    return neutralOf(this);
  }

  /** Connector family of the outlet, as the table names it. */
  get outlet(): string | undefined {
    return this.build.reader.text(`${this.path}.outlet`);
  }

  /** How many outlets the circuit has; undefined when it is not written down. */
  get outletCount(): number | undefined {
    const count = this.build.reader.data(`${this.path}.outlets`);
    return typeof count === "number" ? count : undefined;
  }

  /** Whether a residual device is written down. */
  get hasResidual(): boolean {
    return this.saysResidual && !this.build.reader.isNone(`${this.path}.residual`);
  }

  /** Whether it is said if it has a residual device. */
  get saysResidual(): boolean {
    return this.build.reader.has(`${this.path}.residual`);
  }

  /** Trip rating of its residual device, in amperes. */
  get residual(): Value<"current"> {
    return this.build.reader.value(
      `${this.path}.residual`,
      "current",
      "trip rating of the residual device",
      this.label,
    );
  }

  /** Standing leakage of every panel and device on the circuit. */
  get leakage(): Value<"current"> {
    return sum(
      [
        ...this.runs.flatMap((run) => run.perPanel("power.leakage", "leakage current")),
        ...this.devices.map(({ leakage }) => leakage),
      ],
      "current",
      "Il",
    );
  }

  /** Impedance of the loop a fault to earth goes round, at the outlet, Ω. */
  get faultLoop(): Value<"resistance"> {
    const what = "earth-fault loop impedance at the outlet";
    return this.build.reader.value(`${this.path}.wiring.fault-loop`, "resistance", what, this.label);
  }

  /** Trip curve of the breaker, where one is written, be it one there is or not. */
  get curve(): string | undefined {
    const written = this.build.reader.data(`${this.path}.curve`);
    return written === undefined || typeof written === "string" ? written : JSON.stringify(written);
  }

  /** Inrush current the breaker is written to ride through. */
  get ridesThrough(): Value | undefined {
    const what = "inrush current the breaker rides through";
    return this.build.reader.optional(`${this.path}.rides-through`, "current", what, this.label);
  }

  /**
   * How many of its panels a rating lets, beside what else is on it; undefined where they are not all alike, and of three
   * phases, where it depends on the legs.
   */
  panelsWithin(rating: Value<"current">): number | undefined {
    const [one, ...others] = this.runs.flatMap((run) => run.loads);
    if (this.threePhase || one === undefined || others.some((each) => each !== one)) return undefined;
    const So = sum(loadsBeside(this), "apparent-power", "So");
    const found = panelsThatFit.of({ Ic: rating, V: this.voltage, So, s: one });
    return found.known ? found.value : undefined;
  }

  /** Peak of a switch-on current its breaker rides through, A; `multiple` is the house's of the rating, 0 for none. */
  peakRidden(multiple = 0): Value<"current"> {
    return peakRiddenBy(this, multiple);
  }

  /** Greatest earth-fault loop impedance for its breaker to open in 0.4 s, Ω. */
  get faultLoopAllowed(): Value<"resistance"> {
    return faultLoopAllowed(this);
  }

  /**
   * Switch-on current, A peak: of all runs together, or of the largest where they are switched on one after another; of
   * the devices; and of the other load, which is missing while there is one and its inrush is not written.
   */
  get inrush(): Value<"current"> {
    const runs = this.runs.map((run) => inrush.of({ i: run.perPanel("power.inrush", "inrush current") }));
    const stepped = runs.length > 0 && this.build.reader.data(`${this.path}.stepped`) === true;
    const panels = stepped ? [greatestOf(runs, "current", "Ip")] : runs;
    const devices = this.devices.map((device) => device.inrush);
    return sum([...panels, ...devices, ...this.#otherInrush()], "current", "Ip");
  }

  #otherInrush(): readonly Value<"current">[] {
    const { reader } = this.build;
    const path = `${this.path}.other-inrush`;
    if (otherLoadOf(this) === undefined && !reader.has(path)) return [];
    return [reader.value(path, "current", "inrush current of the other load", this.label)];
  }

  /** Share of the breaker's rating that may be carried for hours. */
  get continuousShare(): Known {
    return continuousShareOf(this.build, this.path);
  }

  /** Current over the continuous rating. */
  get share(): Value<"ratio"> {
    return shareOf(this.current, this.continuousRating());
  }

  /** What it may carry for hours, in amperes: the breaker times the continuous share. */
  continuousRating(share: Known = this.continuousShare): Value<"current"> {
    return continuousRating.of({ In: this.breaker, share });
  }
}
