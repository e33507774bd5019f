import {
  type Beam,
  counted,
  gapsOf,
  type HungBeam,
  hangBeam,
  type Known,
  lineMass,
  type Missing,
  missing,
  momentValue,
  type PointLoad,
  panelsMass,
  reactionValue,
  sections,
  sum,
  tabled,
  times,
  type UniformLoad,
  type Value,
} from "@plumbmark/calc";
import { asMass } from "./as-mass.js";
import { Assembly, type AssemblyPart } from "./assembly.js";
import type { Build } from "./build.js";
import type { Face } from "./face.js";
import { Leg } from "./leg.js";
import { BarSection } from "./section.js";
import { type SlackCases, slackCases } from "./slack.js";
import { type Span, spansOf } from "./spans.js";

interface Carried {
  readonly path: string;
  readonly face: Face;
  /** Place on the bar of the left edge of the columns it carries. */
  readonly from: Value;
  /** Columns this bar carries, 0 at the audience's left; all of them when none are named. */
  readonly columns: readonly number[];
}

/** A bar made ready to be solved: kilograms and metres, hangs in rising order. */
export type Hanging =
  | { readonly known: true; readonly beam: Beam; readonly order: readonly Hang[]; readonly inputs: readonly Known[] }
  | Missing;

/** `1..4` → 0, 1, 2, 3. */
function columnsOf(face: Face, written: string | undefined): readonly number[] {
  const [first, last] = (written ?? `1..${face.columns}`).split("..").map(Number);
  return Array.from({ length: face.columns }, (_, column) => column).filter(
    (column) => column + 1 >= (first as number) && column + 1 <= (last ?? (first as number)),
  );
}

/** Panels and extras of the columns carried; extras are taken as shared evenly over the columns. */
function carriedMass({ face, columns }: Carried): Value<"mass"> {
  if (columns.length === face.columns) return face.mass;
  const count = face.cells.filter((cell) => columns.includes(cell.column)).length;
  const extras = face.extras.map((each) =>
    times(each, columns.length / face.columns, `${columns.length} ÷ ${face.columns}`),
  );
  return sum(
    [panelsMass.of({ n: counted(count, `panels of ${face.name} on this bar`), m: face.panelMass }), ...extras],
    "mass",
    "m",
  );
}

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

  get at(): Value<"length"> {
    return this.bar.build.reader.value(`${this.path}.at`, "length", "place on the bar", this.label);
  }

  get bridled(): boolean {
    return this.bar.build.reader.data(`${this.path}.bridle`) !== undefined;
  }

  /** Parts of the assembly in load order; undefined when none is written down. */
  get assembly(): readonly AssemblyPart[] | undefined {
    return this.bar.build.reader.data(`${this.path}.assembly`) === undefined ? undefined : this.ownAssembly.parts;
  }

  /** What it hangs by itself, without the legs of a bridle. */
  get ownAssembly(): Assembly {
    return new Assembly(this.bar.build.reader, `${this.path}.assembly`, this.label);
  }

  /** Legs of a bridle; none of a plumb drop. */
  get legs(): readonly Leg[] {
    return this.bridled ? [new Leg(this, "left"), new Leg(this, "right")] : [];
  }

  get structure(): Value<"mass"> {
    return asMass(this.bar.build.reader.value(`${this.path}.structure`, "mass", "structure rating", this.label));
  }

  /** The least WLL of the assembly; missing when a part of it has none. */
  get weakest(): Value<"mass"> {
    return this.ownAssembly.weakest;
  }

  /** What its load is held against, in words; what a bridle carries is held against its legs. */
  get ratings(): readonly (readonly [string, Value])[] {
    const own: readonly (readonly [string, Value])[] = [
      ["weakest part", this.weakest],
      ["structure", this.structure],
    ];
    return this.bridled ? own.filter((_, index) => index === 0 && this.assembly !== undefined) : own;
  }

  /** Everything that bears its load: its own assembly, and the legs of a bridle with their tension. */
  get strands(): readonly {
    readonly assembly: Assembly;
    readonly load: (reaction: Value) => Value;
    readonly path: string;
    readonly label: string;
  }[] {
    const own = { assembly: this.ownAssembly, load: (reaction: Value) => reaction, path: this.path, label: this.label };
    const legs = this.legs.map((leg) => ({
      assembly: leg.assembly,
      load: (reaction: Value) => leg.tension(reaction),
      path: leg.path,
      label: leg.label,
    }));
    return this.bridled && this.assembly === undefined ? legs : [own, ...legs];
  }

  /** Its reaction in the worst case of one other hang slack; undefined with fewer than three hangs. */
  get slackReaction(): Value<"mass"> | undefined {
    const { slackCases } = this.bar;
    if (!slackCases) return undefined;
    if (!slackCases.known) return { ...slackCases, kind: "mass" };
    return slackCases.worst.find(({ hang }) => hang.name === this.name)?.reaction;
  }

  /** The hang that is slack in that case. */
  get slackened(): Hang | undefined {
    const { slackCases } = this.bar;
    return slackCases?.known ? slackCases.worst.find(({ hang }) => hang.name === this.name)?.slackened : undefined;
  }

  get reaction(): Value<"mass"> {
    return (
      (this.bar.reactions.get(this.name) as Value<"mass"> | undefined) ??
      missing("mass", { path: this.path, what: "reaction", of: this.label })
    );
  }
}

/** The reaction of one hang, counted from the left, as a value; a slack hang carries nothing. */
export function reactionIn(
  hung: HungBeam & { readonly stable: true },
  index: number,
  inputs: readonly Known[],
): Known<"mass"> {
  if (hung.slack.includes(index))
    return { known: true, value: 0, kind: "mass", origin: { from: "counted", what: "a hang found slack" } };
  const taut = hung.reactions.map((_, each) => each).filter((each) => !hung.slack.includes(each));
  return reactionValue(hung.solved, taut.indexOf(index), inputs) as Known<"mass">;
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
      return face
        ? [
            {
              path,
              face,
              from: reader.value(`${path}.from`, "length", "left edge of the face on the bar", this.label),
              columns: columnsOf(face, reader.text(`${path}.columns`)),
            },
          ]
        : [];
    });
  }

  get length(): Value<"length"> {
    return this.build.reader.value(`${this.path}.length`, "length", "length", this.label);
  }

  get massPerLength(): Value<"mass-per-length"> {
    const name = this.build.reader.text(`${this.path}.section`);
    if (name === undefined)
      return missing("mass-per-length", { path: `${this.path}.section`, what: "section", of: this.label });
    const part = this.build.reader.parts.get(name);
    if (part?.quantities.has("mass")) return part.quantities.get("mass") as Known<"mass-per-length">;
    const section = sections.get(typeof part?.data.section === "string" ? part.data.section : name);
    return section
      ? tabled(section.massPerMetre, "mass-per-length", section.source, section.name)
      : missing("mass-per-length", {
          path: `${this.path}.section`,
          what: "section",
          because: `${this.label}: the section ${name} is neither in the built-in table nor in the catalogue.`,
        });
  }

  get selfMass(): Value<"mass"> {
    return lineMass.of({ ρ: this.massPerLength, L: this.length, n: counted(1, "bar") });
  }

  /** Masses the bar carries, each with its place: face, cables, other. */
  get masses(): readonly Value[] {
    const { reader } = this.build;
    const other = reader.quantities.get(`${this.path}.other-load`);
    return [
      ...this.carries.map(carriedMass),
      ...this.cables.map(({ mass }) => mass),
      this.selfMass,
      ...(other ? [other] : []),
    ];
  }

  /** Feeds and jumpers of the faces it carries. A feed whose hanging length is not stated counts whole: the safe side. */
  get cables(): readonly { readonly mass: Value; readonly face: Face; readonly column: number }[] {
    const carried = this.carries;
    return [...this.build.runs, ...this.build.chains].flatMap(({ panels, feed, jumper }) => {
      const first = panels?.[0];
      if (!first || !carried.some(({ face, columns }) => face === first.face && columns.includes(first.cell.column)))
        return [];
      const hanging = this.build.reader.quantities.get(`${feed.path}.hangs`) ?? feed.length;
      const cables = [
        { rate: feed.massPerLength, length: hanging, count: 1 },
        ...((panels?.length ?? 0) > 1
          ? [{ rate: jumper.massPerLength, length: jumper.length, count: (panels?.length ?? 1) - 1 }]
          : []),
      ];
      return cables.map(({ rate, length, count }) => ({
        mass: lineMass.of({ ρ: rate, L: length, n: counted(count, "cables") }),
        face: first.face,
        column: first.cell.column,
      }));
    });
  }

  get load(): Value<"mass"> {
    if (this.carries.length === 0)
      return missing("mass", { path: `${this.path}.carries`, what: "what it carries", of: this.label });
    return sum(this.masses, "mass", "m");
  }

  get structure(): Value<"mass"> {
    const whole = this.build.reader.quantities.get(`${this.path}.structure`);
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
    this.#reactions ??= this.#solve();
    return this.#reactions;
  }

  /** The beam to solve; missing when something is not written down. */
  get hanging(): Hanging {
    const carried = this.carries;
    const needed = [
      this.load,
      this.length,
      ...this.hangs.map((hang) => hang.at),
      ...carried.flatMap(({ face, from }) => [from, face.width]),
    ];
    const gaps = gapsOf(needed);
    if (gaps.length > 0) return missing("mass", ...gaps);
    const place = (hang: Hang): number => (hang.at as Known).value;
    const order = [...this.hangs].sort((a, b) => place(a) - place(b));
    const beam: Beam = {
      length: (this.length as Known).value,
      supports: order.map(place),
      uniform: this.#uniform(carried),
      points: this.#points(carried),
    };
    return { known: true, beam, order, inputs: needed.filter((each): each is Known => each.known) };
  }

  /** The bar hanging level on all its hangs; missing, with the reason, when it cannot be solved or does not hang still. */
  get hung(): (HungBeam & { readonly stable: true; readonly known: true }) | Missing {
    const { hanging } = this;
    if (!hanging.known) return hanging;
    const because = (text: string): Missing =>
      missing("mass", { path: this.path, what: "reactions", because: `${this.label}: ${text}` });
    try {
      const hung = hangBeam(hanging.beam);
      return hung.stable ? { ...hung, known: true } : because(`it does not hang still, ${hung.because}.`);
    } catch (error) {
      if (error instanceof RangeError) return because(`${error.message}.`);
      throw error;
    }
  }

  #solve(): ReadonlyMap<string, Value> {
    const { hanging, hung } = this;
    if (!hanging.known || !hung.known) return new Map(this.hangs.map(({ name }) => [name, hung as Missing]));
    return new Map(hanging.order.map(({ name }, index) => [name, reactionIn(hung, index, hanging.inputs)]));
  }

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

  get spans(): readonly Span[] {
    return spansOf(this);
  }

  /** Each hang slack in turn; undefined with fewer than three hangs. */
  get slackCases(): SlackCases | undefined {
    return slackCases(this);
  }

  #uniform(carried: readonly Carried[]): readonly UniformLoad[] {
    const self = (this.massPerLength as Known).value;
    const loads: UniformLoad[] = [{ from: 0, to: (this.length as Known).value, perMetre: self }];
    for (const { face, from, columns } of carried) {
      const width = (face.panelValue("size.1", "length", "size") as Known).value;
      const start = (from as Known).value;
      const extras = (sum(face.extras, "mass") as Known).value / (width * face.columns);
      for (const [place, column] of columns.entries()) {
        const panels = face.cells.filter((cell) => cell.column === column).length;
        loads.push({
          from: start + place * width,
          to: start + (place + 1) * width,
          perMetre: (panels * (face.panelMass as Known).value) / width + extras,
        });
      }
    }
    return loads;
  }

  #points(carried: readonly Carried[]): readonly PointLoad[] {
    const other = this.build.reader.quantities.get(`${this.path}.other-load`);
    const middle = (this.length as Known).value / 2;
    const cables = this.cables.map(({ mass, face, column }) => {
      const width = (face.panelValue("size.1", "length", "size") as Known).value;
      const holder = carried.find((each) => each.face === face && each.columns.includes(column)) as Carried;
      return {
        at: (holder.from as Known).value + (holder.columns.indexOf(column) + 0.5) * width,
        load: (mass as Known).value,
      };
    });
    return other ? [...cables, { at: middle, load: other.value }] : cables;
  }
}
