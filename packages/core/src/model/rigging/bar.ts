import {
  type Beam,
  counted,
  dropOf,
  gapsOf,
  type HungBeam,
  hangBeam,
  type Known,
  lineMass,
  type Missing,
  missing,
  momentValue,
  sections,
  sum,
  tabled,
  type Value,
} from "@plumbmark/calc";
import { asMass } from "../reading/as-mass.js";
import { once } from "../reading/once.js";
import { partOptional } from "../reading/reader.js";
import { type HangingCable, hangingCables } from "./bar-cables.js";
import {
  type CarriedFace,
  carriedMass,
  carriedOf,
  type OtherLoad,
  otherLoadsOf,
  pointsOn,
  uniformOn,
} from "./bar-loads.js";
import { offUpstage, planPlaceOf, structureOfBar } from "./bar-place.js";
import { type BarCases, casesOf, type Stillness, stillness, type WorstMoment } from "./cases.js";
import { deepestUnder, heaviestColumn, isShared, leastLimit } from "./column-loads.js";
import { Hang } from "./hang.js";
import { Letter } from "./letter.js";
import { type Loss, lossesOf } from "./losses.js";
import { reactionIn } from "./reaction.js";
import type { RiggingDesign } from "./rigging-design.js";
import { SecondSuspension } from "./second.js";
import { BarSection } from "./section.js";
import { type Span, spansOf } from "./spans.js";
import { type TableLimits, tableLimitsOf } from "./table-limits.js";

type Hung = (HungBeam & { readonly stable: true; readonly known: true }) | Missing;

/** A bar made ready to be solved: kilograms and metres, hangs in rising order. */
export type HangingBar =
  | { readonly known: true; readonly beam: Beam; readonly order: readonly Hang[]; readonly inputs: readonly Known[] }
  | Missing;

/** The pipe a face hangs on. */
export class Bar {
  /** Its place in the document: `rigging.bars.header`. */
  readonly path: string;
  /** What messages call it: `Bar header`. */
  readonly label: string;
  /** Its hangs, as they are written. */
  readonly hangs: readonly Hang[];

  constructor(
    /** The build it belongs to. */
    readonly build: RiggingDesign,
    /** Its name in the document. */
    readonly name: string,
  ) {
    this.path = `rigging.bars.${name}`;
    this.label = `Bar ${name}`;
    this.hangs = build.reader.keys(`${this.path}.hangs`).map((hang) => new Hang(this, hang));
  }

  /** Faces it carries, and where. */
  get carries(): readonly CarriedFace[] {
    return once(this, "carries", () => carriedOf(this));
  }

  /** Its length, in metres. */
  get length(): Value<"length"> {
    return this.build.reader.value(`${this.path}.length`, "length", "length", this.label);
  }

  /** Its own mass per length, in kilograms per metre. */
  get massPerLength(): Value<"mass-per-length"> {
    const name = this.build.reader.text(`${this.path}.section`);
    if (name === undefined)
      return missing("mass-per-length", { path: `${this.path}.section`, what: "section", of: this.label });
    const part = this.build.reader.parts.get(name);
    const own = partOptional(part, "mass", "mass-per-length", "mass per length");
    if (own) return own;
    const section = sections.get(typeof part?.data.section === "string" ? part.data.section : name);
    return section
      ? tabled(section.massPerMetre, "mass-per-length", section.source, section.name)
      : missing("mass-per-length", {
          path: `${this.path}.section`,
          what: "section",
          because: `${this.label}: the section ${name} is neither in the built-in table nor in the catalogue.`,
        });
  }

  /** Its own mass, in kilograms. */
  get selfMass(): Value<"mass"> {
    return lineMass.of({ ρ: this.massPerLength, L: this.length, n: counted(1, "bar") });
  }

  /** Masses the bar carries, each with its place: face, cables, other. */
  get masses(): readonly Value<"mass">[] {
    return [
      ...this.carries.map(carriedMass),
      ...this.cables.map(({ mass }) => mass),
      this.selfMass,
      ...this.otherLoads.map(({ mass }) => mass),
    ];
  }

  /** Other mass on the bar in all; undefined where none is written. */
  get otherLoad(): Value<"mass"> | undefined {
    const all = this.otherLoads.map(({ mass }) => mass);
    return all.length > 1 ? sum(all, "mass", "m") : all[0];
  }

  /** Other masses on the bar, each with its place where one is written. */
  get otherLoads(): readonly OtherLoad[] {
    return once(this, "other loads", () => otherLoadsOf(this));
  }

  /** Those of them without a place: level they count in the middle, at worst where they are worst. */
  get unplaced(): readonly OtherLoad[] {
    return this.otherLoads.filter(({ at }) => at === undefined);
  }

  /** Feeds, jumpers and return cables of the faces it carries. */
  get cables(): readonly HangingCable[] {
    return once(this, "cables", () => hangingCables(this));
  }

  /** Mass of everything on it, itself included, in kilograms. */
  get load(): Value<"mass"> {
    if (this.carries.length === 0)
      return missing("mass", { path: `${this.path}.carries`, what: "what it carries", of: this.label });
    return sum(this.masses, "mass", "m");
  }

  /** What the structure bears in all: the bar with what it carries, the hardware it hangs by, the second suspension. */
  get onStructure(): Value<"mass"> {
    const { second } = this;
    return sum([this.load, ...this.hangs.map(({ ownMass }) => ownMass), ...(second ? [second.mass] : [])], "mass", "W");
  }

  /** The letter on the structure it hangs from. */
  get letter(): Letter {
    return once(this, "letter", () => {
      const own = `${this.path}.letter`;
      return new Letter(this.build, !this.build.reader.has(own) ? undefined : own);
    });
  }

  /** Where it is along the structure above it, from the end at the audience's left; undefined where that is not known. */
  get planPlace(): ReturnType<typeof planPlaceOf> {
    return once(this, "plan place", () => planPlaceOf(this));
  }

  /** The structure of the survey it hangs under; undefined where it names none. */
  get under(): string | undefined {
    return structureOfBar(this);
  }

  /** How far a place upstage is from below its structure; undefined where that is not surveyed. */
  offUpstage(upstage: Value<"length">): Value<"length"> | undefined {
    return offUpstage(this, upstage);
  }

  /** Its second suspension; undefined where none is written down. */
  get second(): SecondSuspension | undefined {
    return !this.build.reader.has(`${this.path}.second`) ? undefined : new SecondSuspension(this);
  }

  /** Height of its middle above the floor. */
  get height(): Value<"length"> {
    return this.build.reader.value(`${this.path}.height`, "length", "height of the middle of the bar", this.label);
  }

  /** Height of what its hangs bear on above the floor. */
  get bearingHeight(): Value<"length"> {
    const what = "height of the face that hardware bears on";
    return this.build.reader.value(`${this.path}.bearing-height`, "length", what, this.label);
  }

  /** From what its hangs bear on down to its middle. */
  get drop(): Value<"length"> {
    return dropOf.of({ up: this.bearingHeight, h: this.height });
  }

  /** What the heaviest column of a face on it weighs, with all that hangs under the same place. */
  heaviestColumn(carried: CarriedFace): Value<"mass"> {
    return heaviestColumn(this, carried);
  }

  /** Most panels under one place of it, of a face and of what hangs with it, and the most their makers let. */
  depthUnder(carried: CarriedFace): {
    readonly panels: Value<"count">;
    readonly limit: Value<"count">;
    readonly shared: boolean;
  } {
    return {
      panels: deepestUnder(this, carried),
      limit: leastLimit(this, carried),
      shared: isShared(this, carried),
    };
  }

  /** The greatest shear in the bar at worst, as a mass. */
  get worstShear(): Value<"mass"> {
    const { cases } = this;
    return cases.known ? cases.shear : { ...cases, kind: "mass" };
  }

  /** What its maker's load table lets this span carry; missing where the case is none of the table's. */
  get tableLimits(): TableLimits {
    return once(this, "table limits", () => tableLimitsOf(this));
  }

  /** What becomes of it when it loses each hang. */
  get losses(): readonly Loss[] | Missing {
    return once(this, "losses", () => lossesOf(this));
  }

  /** What the structure above is stated to carry, as a mass in kilograms. */
  get structure(): Value<"mass"> {
    const what = "load the structure is stated to carry";
    const whole: Value | undefined = this.build.reader.optional(`${this.path}.structure`, "mass", what, this.label);
    if (whole) return asMass(whole);
    if (this.hangs.length === 0) return missing("mass", { path: `${this.path}.hangs`, what: "hangs", of: this.label });
    return sum(
      this.hangs.map((hang) => hang.structure),
      "mass",
      "W",
    );
  }

  /** Reaction of every hang: loads where the columns really are, on level supports; a slack hang carries nothing. */
  get reactions(): ReadonlyMap<string, Value> {
    return once(this, "reactions", () => this.#solve());
  }

  /** The beam to solve; missing when something is not written down. */
  get hanging(): HangingBar {
    return once(this, "hanging", () => this.#prepare());
  }

  #prepare(): HangingBar {
    const carried = this.carries;
    const needed: readonly Value[] = [
      this.load,
      this.length,
      ...this.hangs.map((hang) => hang.at),
      ...carried.flatMap(({ face, from }) => [from, face.width]),
      ...this.otherLoads.flatMap(({ at }) => (at ? [at] : [])),
    ];
    const gaps = gapsOf(needed);
    if (gaps.length > 0) return missing("mass", ...gaps);
    const place = (hang: Hang): number => (hang.at as Known).value;
    const order = [...this.hangs].sort((a, b) => place(a) - place(b));
    const beam: Beam = {
      length: (this.length as Known).value,
      supports: order.map(place),
      uniform: uniformOn(this),
      points: pointsOn(this),
    };
    return { known: true, beam, order, inputs: needed.filter((each): each is Known => each.known) };
  }

  /** The bar hanging level on all its hangs; missing, with the reason, when it cannot be solved or does not hang still. */
  get hung(): Hung {
    return once(this, "hung", () => this.#hang());
  }

  #hang(): Hung {
    const { hanging } = this;
    if (!hanging.known) return hanging;
    const because = (text: string): Missing =>
      missing("mass", { path: `${this.path}.hangs`, what: "hangs", because: `${this.label}: ${text}` });
    try {
      const hung = hangBeam(hanging.beam);
      if (!hung.stable) return because(`it does not hang still, ${hung.because}.`);
      if (hung.neutral)
        return because(
          "it does not hang still, the middle of the load is right under one hang and the others carry nothing.",
        );
      return { ...hung, known: true };
    } catch (error) {
      if (error instanceof RangeError) return because(`${error.message}.`);
      throw error;
    }
  }

  #solve(): ReadonlyMap<string, Value> {
    const { hanging, hung } = this;
    if (!hanging.known || !hung.known) return new Map(this.hangs.map(({ name }) => [name, hung as Missing]));
    const names = hanging.order.map(({ name }) => name);
    return new Map(names.map((name, index) => [name, reactionIn(hung, index, hanging.inputs, { names })]));
  }

  /** Its cross-section with strength and stiffness. */
  get section(): BarSection {
    const name = this.build.reader.text(`${this.path}.section`);
    return new BarSection(name === undefined ? undefined : this.build.reader.parts.get(name), name, this.label);
  }

  /** The greatest bending moment in the bar, level on all its hangs. */
  get moment(): Value<"moment"> {
    const { hanging, hung } = this;
    return hanging.known && hung.known
      ? (momentValue(hung.solved, hanging.inputs) as Known<"moment">)
      : { ...(hung as Missing), kind: "moment" };
  }

  /** Its spans between hangs and beyond them, with how far they sag. */
  get spans(): readonly Span[] {
    return once(this, "spans", () => spansOf(this));
  }

  /** Whether it hangs still at all: whether the middle of what it carries lies between its outer hangs. */
  get stillness(): Stillness {
    return once(this, "stillness", () => stillness(this));
  }

  /** What its hangs carry and how it is bent at worst: over every balance, or over the length errors that are allowed. */
  get cases(): BarCases {
    return once(this, "cases", () => casesOf(this));
  }

  /** The greatest bending moment at worst, and the case in words. */
  get worstMoment(): WorstMoment {
    const { cases } = this;
    return cases.known ? cases.bending : { moment: { ...cases, kind: "moment" }, when: "" };
  }
}
