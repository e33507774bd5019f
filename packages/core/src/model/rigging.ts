import { type Beam, counted, lineMass, hangBeam, leastOf, type Known, missing, type PointLoad, reactionValue, sections, sum, tabled, times, type UniformLoad, type Value, gapsOf, GRAVITY } from "@plumbmark/calc";
import type { Data } from "../document/yaml.js";
import type { Part } from "../repository/parts.js";
import type { Build } from "./build.js";
import type { Face } from "./face.js";
import { partValue } from "./reader.js";

interface Carried {
  readonly face: Face;
  readonly from: Value;
}

/** A rating or load written as a mass or a force → kilograms. */
const asMass = (value: Value): Value => (value.known && value.kind === "force" ? { ...(times(value, 1 / GRAVITY, "1 ÷ 9.80665 m/s²") as Known), kind: "mass" } : value);

/** One suspension point of a bar. */
export class Hang {
  readonly path: string;
  readonly label: string;

  constructor(
    readonly bar: Bar,
    readonly name: string,
  ) {
    this.path = `${bar.path}.hangs.${name}`;
    this.label = `Hang ${name} of bar ${bar.name}`;
  }

  get at(): Value {
    return this.bar.build.reader.value(`${this.path}.at`, "length", "place on the bar", this.label);
  }

  get bridled(): boolean {
    return this.bar.build.reader.data(`${this.path}.bridle`) !== undefined;
  }

  /** Parts of the assembly in load order; undefined when none is written down. */
  get assembly(): readonly { readonly name: string; readonly part: Part | undefined; readonly path: string }[] | undefined {
    const list = this.bar.build.reader.data(`${this.path}.assembly`) as readonly Data[] | undefined;
    return list?.map((entry, index) => {
      const name = typeof entry === "string" ? entry : String((entry as Record<string, Data>).part);
      return { name, part: this.bar.build.reader.parts.get(name), path: `${this.path}.assembly.${index + 1}` };
    });
  }

  get structure(): Value {
    return asMass(this.bar.build.reader.value(`${this.path}.structure`, "mass", "structure rating", this.label));
  }

  /** The least WLL of the assembly; missing when a part of it has none. */
  get weakest(): Value {
    const parts = this.assembly;
    if (!parts || parts.length === 0) return missing("mass", { path: `${this.path}.assembly`, what: "assembly", of: this.label });
    return leastOf(parts.map(({ part, name }) => asMass(partValue(part, "wll", "mass", "WLL", `${this.label}: ${name}`))), "mass", "WLL");
  }

  get reaction(): Value {
    return this.bar.reactions.get(this.name) ?? missing("mass", { path: this.path, what: "reaction", of: this.label });
  }
}

/** The pipe a face hangs on. */
export class Bar {
  readonly path: string;
  readonly label: string;
  readonly hangs: readonly Hang[];
  #reactions: ReadonlyMap<string, Value> | undefined;

  constructor(
    readonly build: Build,
    readonly name: string,
  ) {
    this.path = `rigging.bars.${name}`;
    this.label = `Bar ${name}`;
    this.hangs = build.reader.keys(`${this.path}.hangs`).map((hang) => new Hang(this, hang));
  }

  get carries(): readonly Carried[] {
    const { reader } = this.build;
    const written = reader.data(`${this.path}.carries`);
    const base = `${this.path}.carries`;
    const paths = Array.isArray(written) ? written.map((_, index) => `${base}.${index + 1}`) : written ? [base] : [];
    return paths.flatMap((path) => {
      const face = this.build.faces.find((each) => each.name === reader.text(`${path}.face`));
      return face ? [{ face, from: reader.value(`${path}.from`, "length", "left edge of the face on the bar", this.label) }] : [];
    });
  }

  get length(): Value {
    return this.build.reader.value(`${this.path}.length`, "length", "length", this.label);
  }

  get massPerLength(): Value {
    const name = this.build.reader.text(`${this.path}.section`);
    if (name === undefined) return missing("mass-per-length", { path: `${this.path}.section`, what: "section", of: this.label });
    const part = this.build.reader.parts.get(name);
    if (part?.quantities.has("mass")) return part.quantities.get("mass") as Known;
    const section = sections.get(typeof part?.data.section === "string" ? part.data.section : name);
    return section ? tabled(section.massPerMetre, "mass-per-length", section.source, section.name) : missing("mass-per-length", { path: `${this.path}.section`, what: "section", because: `${this.label}: the section ${name} is neither in the built-in table nor in the catalogue.` });
  }

  get selfMass(): Value {
    return lineMass.of({ ρ: this.massPerLength, L: this.length, n: counted(1, "bar") });
  }

  /** Masses the bar carries, each with its place: face, cables, other. */
  get masses(): readonly Value[] {
    const { reader } = this.build;
    const other = reader.quantities.get(`${this.path}.other-load`);
    return [...this.carries.map(({ face }) => face.mass), ...this.cables.map(({ mass }) => mass), this.selfMass, ...(other ? [other] : [])];
  }

  /** Feeds and jumpers of the faces it carries. A feed whose hanging length is not stated counts whole: the safe side. */
  get cables(): readonly { readonly mass: Value; readonly face: Face; readonly column: number }[] {
    const faces = this.carries.map(({ face }) => face);
    return [...this.build.runs, ...this.build.chains].flatMap(({ panels, feed, jumper }) => {
      const first = panels?.[0];
      if (!first || !faces.includes(first.face)) return [];
      const hanging = this.build.reader.quantities.get(`${feed.path}.hangs`) ?? feed.length;
      const cables = [{ rate: feed.massPerLength, length: hanging, count: 1 }, ...((panels?.length ?? 0) > 1 ? [{ rate: jumper.massPerLength, length: jumper.length, count: (panels?.length ?? 1) - 1 }] : [])];
      return cables.map(({ rate, length, count }) => ({ mass: lineMass.of({ ρ: rate, L: length, n: counted(count, "cables") }), face: first.face, column: first.cell.column }));
    });
  }

  get load(): Value {
    if (this.carries.length === 0) return missing("mass", { path: `${this.path}.carries`, what: "what it carries", of: this.label });
    return sum(this.masses, "mass", "m");
  }

  get structure(): Value {
    const whole = this.build.reader.quantities.get(`${this.path}.structure`);
    if (whole) return asMass(whole);
    if (this.hangs.length === 0) return missing("mass", { path: `${this.path}.hangs`, what: "hangs", of: this.label });
    return sum(this.hangs.map((hang) => hang.structure), "mass", "W");
  }

  /** Reaction of every hang: loads where the columns really are, on level supports; a slack hang carries nothing. */
  get reactions(): ReadonlyMap<string, Value> {
    this.#reactions ??= this.#solve();
    return this.#reactions;
  }

  #solve(): ReadonlyMap<string, Value> {
    const places = this.hangs.map((hang) => hang.at);
    const carried = this.carries;
    const needed = [this.load, this.length, ...places, ...carried.flatMap(({ face, from }) => [from, face.width])];
    const gaps = gapsOf(needed);
    const all = (value: (index: number) => Value): ReadonlyMap<string, Value> => new Map(this.hangs.map((hang, index) => [hang.name, value(index)]));
    if (gaps.length > 0) return all(() => missing("mass", ...gaps));
    const because = (text: string): Value => missing("mass", { path: this.path, what: "reactions", because: `${this.label}: ${text}` });
    const order = places.map((place, index) => ({ at: (place as Known).value, index })).sort((a, b) => a.at - b.at);
    const beam: Beam = { length: (this.length as Known).value, supports: order.map(({ at }) => at), uniform: this.#uniform(carried), points: this.#points(carried) };
    try {
      const hung = hangBeam(beam);
      if (!hung.stable) return all(() => because(`it does not hang still, ${hung.because}.`));
      const inputs = needed.filter((each): each is Known => each.known);
      return all((index) => {
        const sorted = order.findIndex((each) => each.index === index);
        if (hung.slack.includes(sorted)) return { known: true, value: 0, kind: "mass", origin: { from: "counted", what: "a hang found slack" } };
        const taut = order.map((_, each) => each).filter((each) => !hung.slack.includes(each));
        return reactionValue(hung.solved, taut.indexOf(sorted), inputs);
      });
    } catch (error) {
      if (error instanceof RangeError) return all(() => because(`${error.message}.`));
      throw error;
    }
  }

  #uniform(carried: readonly Carried[]): readonly UniformLoad[] {
    const self = (this.massPerLength as Known).value;
    const loads: UniformLoad[] = [{ from: 0, to: (this.length as Known).value, perMetre: self }];
    for (const { face, from } of carried) {
      const width = (face.panelValue("size.1", "length", "size") as Known).value;
      const start = (from as Known).value;
      const extras = (sum(face.extras, "mass") as Known).value / (width * face.columns);
      for (let column = 0; column < face.columns; column += 1) {
        const panels = face.cells.filter((cell) => cell.column === column).length;
        loads.push({ from: start + column * width, to: start + (column + 1) * width, perMetre: (panels * (face.panelMass as Known).value) / width + extras });
      }
    }
    return loads;
  }

  #points(carried: readonly Carried[]): readonly PointLoad[] {
    const other = this.build.reader.quantities.get(`${this.path}.other-load`);
    const middle = (this.length as Known).value / 2;
    const cables = this.cables.map(({ mass, face, column }) => {
      const width = (face.panelValue("size.1", "length", "size") as Known).value;
      const from = carried.find((each) => each.face === face)?.from as Known;
      return { at: from.value + (column + 0.5) * width, load: (mass as Known).value };
    });
    return other ? [...cables, { at: middle, load: other.value }] : cables;
  }
}
