import {
  conductorResistance,
  connectorCurrent,
  counted,
  dropShare,
  endVoltage,
  farEndDrop,
  loadCurrent,
  missing,
  type Segment,
  segmentDrops,
  sum,
  type Value,
} from "@plumbmark/calc";
import type { Part } from "../../repository/parts.js";
import { surveyNames } from "../../venue/survey.js";
import { Cable, type End, endOf } from "../cabling/cable.js";
import { type Panel, panelsAt } from "../faces/panels.js";
import { lengthsOwned } from "../reading/lengths-owned.js";
import { once } from "../reading/once.js";
import { partGap, partOptional, partValue } from "../reading/reader.js";
import { type FeedWay, neededFor } from "../venue/needed.js";
import type { Circuit } from "./circuit.js";
import { type Cord, cordOf, cordRating, plugFuse } from "./cord.js";
import { runVoltage } from "./legs.js";
import { panelLoad } from "./panel-load.js";
import type { PowerDesign } from "./power-design.js";
import { feederDropOf, noFeederDrop, wiringDrop } from "./wiring-drop.js";

/** Panels powered one after another from one feed. */
export class Run {
  /** Its place in the document: `power.runs.P1`. */
  readonly path: string;
  /** What messages call it: `Run P1`. */
  readonly label: string;
  /** Its panels, in cable order. */
  readonly panels: readonly Panel[] | undefined;
  /** The cable from the circuit to the first panel. */
  readonly feed: Cable;
  /** The cable from one panel to the next. */
  readonly jumper: Cable;

  constructor(
    /** The build it belongs to. */
    readonly build: PowerDesign,
    /** Its name in the document. */
    readonly name: string,
  ) {
    this.path = `power.runs.${name}`;
    this.label = `Run ${name}`;
    this.panels = panelsAt(build, `${this.path}.panels`);
    this.feed = new Cable(
      build.reader,
      `${this.path}.feed`,
      `The feed of run ${name}`,
      "power-cable",
      () => this.reach,
      () => lengthsOwned(build, `${this.path}.feed`),
    );
    this.jumper = new Cable(build.reader, `${this.path}.jumper`, `The jumper of run ${name}`, "power-cable");
    const from = build.reader.text(`${this.path}.from`);
    if (from !== undefined && !build.circuits.some((each) => each.name === from))
      build.reader.unknown(`${this.path}.from`, from, `There is no circuit \`${from}\`.`, [
        ...build.circuits.map((each) => each.name),
        ...(build.reader.venue ? surveyNames(build.reader.venue.survey, "circuits") : []),
      ]);
  }

  /** The circuit it is fed from; undefined when it names none that exists. */
  get circuit(): Circuit | undefined {
    return once(this, "circuit", () => {
      const from = this.build.reader.text(`${this.path}.from`);
      return this.build.circuits.find((each) => each.name === from);
    });
  }

  /** The way its feed takes, where the venue was surveyed. */
  get feedWay(): FeedWay | undefined {
    return once(this, "feed way", () => this.build.wayOfRun(this));
  }

  /** Length its feed needs; undefined where only a straight line is known, or nothing. */
  get reach(): Value<"length"> | undefined {
    const { feedWay: way } = this;
    return way && way.how !== "straight" ? neededFor(this.build, "power.feed-reach", way.length) : undefined;
  }

  /** How many panels it has. */
  get panelCount(): Value {
    return this.panels
      ? counted(this.panels.length, `panels of run ${this.name}`)
      : missing("count", { path: `${this.path}.panels`, what: "panels in cable order", of: this.label });
  }

  /** Load of every panel in cable order; a run whose panels are not written down has a missing load. */
  get loads(): readonly Value[] {
    if (!this.panels)
      return [
        missing("apparent-power", { path: `${this.path}.panels`, what: "panels in cable order", of: this.label }),
      ];
    return this.panels.map((panel) => once(panel.face, `load of ${panel.part?.name ?? ""}`, () => panelLoad(panel)));
  }

  /** A current each panel's part states, panel by panel. */
  perPanel(path: string, what: string): readonly Value[] {
    if (!this.panels)
      return [missing("current", { path: `${this.path}.panels`, what: "panels in cable order", of: this.label })];
    return this.panels.map(({ part, face }) => partValue(part, path, "current", what, face.named));
  }

  /** Legs of a three-phase circuit it is on: `AB` between two lines, `A` on one leg and neutral. */
  get legs(): string | undefined {
    return this.build.reader.text(`${this.path}.legs`);
  }

  /** The voltage at its feed, in volts. */
  get voltage(): Value<"voltage"> {
    const { circuit } = this;
    return circuit
      ? runVoltage(this, circuit)
      : missing("voltage", { path: `${this.path}.from`, what: "circuit it is fed from", of: this.label });
  }

  /** The current of each panel, in amperes, in cable order. */
  get taps(): readonly Value[] {
    return once(this, "taps", () => this.#tapsOf(this.loads));
  }

  /** Panels that are alike draw alike: worked out once for each kind. */
  #tapsOf(loads: readonly Value[]): readonly Value[] {
    const { voltage } = this;
    const drawn = new Map(loads.map((load) => [load, undefined as Value | undefined]));
    for (const load of drawn.keys()) drawn.set(load, loadCurrent.of({ S: load, V: voltage }));
    return loads.map((load) => drawn.get(load) as Value);
  }

  /** The current of the whole run, in amperes: its first segment carries it. */
  get current(): Value<"current"> {
    return sum(this.taps, "current", "I");
  }

  /** What passes the first jumper: everything behind the first panel. */
  get currentBehind(): Value<"current"> {
    return sum(this.taps.slice(1), "current", "I");
  }

  /** What protects its cords: the fuse in the plug of its feed, else the breaker of its circuit, A. */
  get protection(): Value<"current"> | undefined {
    return plugFuse(this.feed) ?? this.circuit?.breaker;
  }

  /** Feed and, where there is more than one panel, jumper. */
  get cords(): readonly Cord[] {
    const feed = cordOf(this.feed, this.current, this.build);
    return (this.panels?.length ?? 0) > 1 ? [feed, cordOf(this.jumper, this.currentBehind, this.build)] : [feed];
  }

  /** Kinds of panel on the run. Each counts as if it stood first, where the whole current passes: the safe side. */
  get kinds(): readonly (Part | undefined)[] {
    return [...new Set((this.panels ?? []).map(({ part }) => part))];
  }

  /** Supply range of every kind of panel on the run. */
  get supplyRanges(): readonly { readonly low: Value<"voltage">; readonly high: Value<"voltage"> }[] {
    const of = (part: Part | undefined, half: string): Value<"voltage"> =>
      partValue(part, half, "voltage", "supply range", this.label);
    return this.kinds.map((part) => ({ low: of(part, "supply.1"), high: of(part, "supply.2") }));
  }

  /** Every piece a current passes, with its rating: cords, their connectors, and the panels that pass it on. */
  get ratings(): readonly { readonly what: string; readonly rating: Value; readonly current: Value }[] {
    const kinds = this.panels ? this.kinds : [undefined];
    const sockets = (name: "power-in" | "power-out", current: Value) =>
      kinds.map((panel) => ({
        what: `${name} of the panel`,
        rating: this.#connector(
          endOf((panel?.data.connectors as Record<string, never> | undefined)?.[name]),
          panel,
          `connectors.${name}`,
          `connector ${name}`,
        ),
        current,
      }));
    const through = kinds.flatMap(
      (panel) => partOptional(panel, "through-current", "current", "through current") ?? [],
    );
    const [feed, jumper] = [
      { cable: this.feed, name: "feed", current: this.current },
      { cable: this.jumper, name: "jumper", current: this.currentBehind },
    ].map(({ cable, name, current }) => {
      const [from, to] = cable.ends;
      return [
        {
          what: `plug of the ${name}`,
          rating: this.#connector(from, cable.part, "connectors", "connector at the source end"),
          current,
        },
        {
          what: `panel end of the ${name}`,
          rating: this.#connector(to, cable.part, "connectors", "connector at the panel end"),
          current,
        },
        { what: `cord of the ${name}`, rating: cordRating(cable), current },
      ];
    }) as [{ what: string; rating: Value; current: Value }[], { what: string; rating: Value; current: Value }[]];
    const fuse = plugFuse(this.feed);
    const fused = fuse ? [{ what: "fuse in the plug", rating: fuse as Value, current: this.current as Value }] : [];
    const first = [...fused, ...feed, ...sockets("power-in", this.current)];
    if ((this.panels?.length ?? 0) < 2) return first;
    return [
      ...first,
      ...jumper,
      ...sockets("power-out", this.currentBehind),
      ...through.map((rating) => ({ what: "first panel to the next", rating, current: this.currentBehind })),
    ];
  }

  #connector(end: End | undefined, part: Part | undefined, path: string, what: string): Value {
    if (end) return connectorCurrent(end.id, this.build.practice);
    return missing(
      "current",
      part ? partGap(part, path, what) : { path: `${this.feed.path}.part`, what: "part", of: this.feed.label },
    );
  }

  /** Drop of every piece in order: building wiring, feed, jumpers. */
  get drops(): readonly Value<"voltage">[] {
    return once(this, "drops", () => this.#drops());
  }

  #drops(): readonly Value<"voltage">[] {
    const segment = (cable: Cable, tap: Value): Segment => ({
      resistance: conductorResistance(cable.conductor),
      length: cable.length,
      tap,
    });
    // A panel is a load of two wires, whatever the supply: there and back.
    const own = this.taps.map((tap, index) => segment(index === 0 ? this.feed : this.jumper, tap));
    return [wiringDrop(this), ...segmentDrops(own)];
  }

  /** Voltage lost at the last panel: building wiring, feed and every jumper. */
  get voltageDrop(): Value<"voltage"> {
    return farEndDrop.of({ dv: this.drops });
  }

  /** Voltage lost before the circuit's breaker, as written; none when it is not. */
  get feederDrop(): Value<"voltage"> | undefined {
    return feederDropOf(this);
  }

  /** Voltage lost in all, the feeder among it; missing while the feeder's is not written. */
  get dropInAll(): Value<"voltage"> {
    return sum([this.feederDrop ?? noFeederDrop(this), this.voltageDrop], "voltage", "ΔV");
  }

  /** The voltage drop of the branch as a share of the supply voltage. */
  get dropShare(): Value<"ratio"> {
    return dropShare.of({ dv: this.voltageDrop, V: this.voltage });
  }

  /** The voltage drop with what is lost before the branch, as a share of the supply voltage. */
  get shareInAll(): Value<"ratio"> {
    return dropShare.of({ dv: this.dropInAll, V: this.voltage });
  }

  /** Supply voltage less every drop that is known; a feeder drop that is not written is the supply's own affair. */
  get voltageAtEnd(): Value<"voltage"> {
    return endVoltage.of({ V: this.voltage, dv: this.feederDrop ? this.dropInAll : this.voltageDrop });
  }
}
