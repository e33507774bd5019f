import type { Value } from "@plumbmark/calc";
import { type Approval, approvalOf } from "../approval/approval.js";
import { type LocalLink, leads } from "../document/body/links.js";
import type { Markdown } from "../document/body/markdown.js";
import type { Quote } from "../document/body/quotes.js";
import type { Section } from "../document/body/sections.js";
import type { Task } from "../document/body/tasks.js";
import type { Mistake } from "../document/mistake.js";
import { choices, nearest } from "../document/nearest.js";
import type { Place } from "../document/place.js";
import type { Implausible } from "../document/plausible.js";
import type { Part } from "../repository/parts.js";
import { isSchedule, scheduleNamed, scheduleNames } from "../takeoff/names.js";
import { Takeoff } from "../takeoff/takeoff.js";
import { type BuildWaiver, waiversIn } from "../waivers/of-build.js";
import { type CordMass, cordMasses } from "./cabling/cord-masses.js";
import { type Joint, jointsOf } from "./cabling/joints.js";
import { type Jumpers, jumpersOf } from "./cabling/jumpers.js";
import { type Meeting, meetingsOf } from "./cabling/meetings.js";
import { Chain, ProcessorLoad } from "./data/chain.js";
import { type DrawingLink, drawingLinks, drawingNames } from "./drawing-names.js";
import { Face } from "./faces/face.js";
import type { Panel } from "./faces/panels.js";
import { Fixings } from "./faces/wall.js";
import { Lifting } from "./lifting/lifting.js";
import { type Active, activesOf } from "./picture/actives.js";
import { type Lettering, letteringOf } from "./picture/lettering.js";
import { Picture } from "./picture/picture.js";
import { Circuit } from "./power/circuit.js";
import { checkServed, type Device, devicesOf } from "./power/device.js";
import { Run } from "./power/run.js";
import { type Supply, suppliesOf } from "./power/supply.js";
import { Prose } from "./prose.js";
import { type Ahead, statedAhead } from "./reading/ahead.js";
import { asMass } from "./reading/as-mass.js";
import type { BuildContext } from "./reading/build-context.js";
import { type Confirmation, confirmationAt } from "./reading/confirmed.js";
import { once, onceAcross, shareOnce } from "./reading/once.js";
import { type Paper, paperAt } from "./reading/paper.js";
import { partsUsed } from "./reading/parts-used.js";
import { partName, partValue, type Reader } from "./reading/reader.js";
import { LOOKED_AT, note } from "./reading/reads.js";
import { checkReferences } from "./reading/references.js";
import { Bar } from "./rigging/bar.js";
import { type SharedThing, sharedThings } from "./shared/shared-thing.js";
import type { SharedName } from "./shared/use.js";
import { type Stay, stayOf } from "./stock/bookings.js";
import { type InspectedItem, inspectedItems, inspectedUntil } from "./stock/inspected.js";
import { type LotUse, lotUsesOf } from "./stock/lot-use.js";
import { type StockMistakes, stockMistakesIn } from "./stock/mistakes.js";
import type { CountedDesign } from "./values/counted-design.js";
import { computed, valueEntries, valueEntriesUnder } from "./values/index.js";
import { feedWay } from "./venue/feed-way.js";
import { type Floor, floorOf } from "./venue/floor.js";
import type { FeedWay } from "./venue/needed.js";
import { checkVenue, Venue } from "./venue/venue.js";
import { type Filming, filmingOf } from "./viewing/camera.js";
import { type Dimming, dimmingOf } from "./viewing/dimming.js";
import { Viewing } from "./viewing/viewing.js";

/** A part or a survey that a build rests on, with what is wrong with how it is written. */
export interface Mistaken {
  /** Where the document names it. */
  readonly path: string;
  readonly label: string;
  readonly file: string;
  readonly mistakes: readonly Mistake[];
}

/** One build document with everything computed from it, lazily, each value with its working. */
export class Build implements CountedDesign {
  /** The document as a whole: an empty path. */
  readonly path = "";
  /** What messages call it. */
  readonly label = "The build";
  readonly #prose: Prose;

  /**
   * @param markdown the body
   * @param like a build of the same front matter and of the same repository, whose body alone was another: everything
   * that does not come from the body is shared with it, so that it is worked out once
   */
  constructor(
    /** The front matter as it is written, by path. */
    readonly reader: Reader,
    markdown: Markdown,
    /** What it is given of the repository: its file, the house standard, the day. */
    readonly context: BuildContext,
    like?: Build,
  ) {
    this.#prose = new Prose(markdown);
    // What it refers to was looked for, and complained of, when the other was made.
    if (like) {
      shareOnce(like, this);
      return;
    }
    for (const part of ["faces", "circuits", "runs", "processor", "chains", "bars", "picture"] as const)
      void this[part];
    checkVenue(this);
    checkReferences(reader, context.stock);
    checkServed(this);
  }

  /** Its faces, as they are written. */
  get faces(): readonly Face[] {
    return once(this, "faces", () => this.reader.keys("faces").map((name) => new Face(this.reader, name)));
  }

  /** Its circuits. */
  get circuits(): readonly Circuit[] {
    return once(this, "circuits", () => this.reader.keys("power.circuits").map((name) => new Circuit(this, name)));
  }

  /** Its runs: panels powered one after another from one feed. */
  get runs(): readonly Run[] {
    return once(this, "runs", () => this.reader.keys("power.runs").map((name) => new Run(this, name)));
  }

  /** The part that is its processor; undefined when none is named, or none of that name exists. */
  get processor(): Part | undefined {
    return once(this, "processor", () => this.reader.part("data.processor.part", ["processor"]));
  }

  /** Its chains: panels sent data one after another from one port. */
  get chains(): readonly Chain[] {
    return once(this, "chains", () => this.reader.keys("data.chains").map((name) => new Chain(this, name)));
  }

  /** Its bars. */
  get bars(): readonly Bar[] {
    return once(this, "bars", () => this.reader.keys("rigging.bars").map((name) => new Bar(this, name)));
  }

  /** Raster, rate, depth, the path of the picture, and where each face is on the raster. */
  get picture(): Picture {
    return once(this, "picture", () => new Picture(this));
  }

  /** Distances of the audience and the luminance aimed at. */
  get viewing(): Viewing {
    return once(this, "viewing", () => new Viewing(this.reader));
  }

  /** The venue it stands in, and what of that it uses. */
  get venue(): Venue {
    return once(this, "venue", () => new Venue(this));
  }

  /** The body; that it is looked at is noted, since it can change while the front matter stays. */
  get prose(): Prose {
    note(LOOKED_AT.body);
    return this.#prose;
  }

  /** The body, as a tree. */
  get markdown(): Markdown {
    note(LOOKED_AT.text);
    return this.prose.markdown;
  }

  /** The whole text of the document. */
  get text(): string {
    note(LOOKED_AT.text);
    return this.#prose.markdown.text;
  }

  /** The headings of its body, with their places. */
  get sections(): readonly Section[] {
    return this.prose.sections;
  }

  /** The author's mistakes: in the YAML, against the schema, in what is referred to. */
  get mistakes(): readonly Mistake[] {
    note(LOOKED_AT.mistakes);
    return [...this.context.mistakes, ...this.reader.mistakes];
  }

  /** What is written and is not of the size its field has, in the document and in the parts it names. */
  get implausible(): readonly { readonly of: string; readonly path: string; readonly found: Implausible }[] {
    const own = this.reader.implausible.map((found) => {
      const stated = this.reader.venue?.statedAt(found.path);
      const of = stated ? `The survey (${stated.file}:${stated.line}): ` : "";
      return { of, path: found.path, found };
    });
    const parts = partsUsed(this.reader).flatMap(({ part, path }) =>
      part.implausible.map((found) => ({ of: `The part ${part.name} (${part.file}): `, path, found })),
    );
    return [...own, ...parts];
  }

  /** Cords it names whose part states a mass per length, with what a table gives for such a cord. */
  get cordMasses(): readonly CordMass[] {
    return cordMasses(this.reader);
  }

  /** Mistakes of the holdings in what they say of the lots and items it takes. */
  get stockMistakes(): readonly StockMistakes[] {
    return stockMistakesIn(this.reader, this.context.stock);
  }

  /** Parts it names, the survey of its venue, and the holdings it takes from, that are written with a mistake: nothing can rest on them. */
  get mistaken(): readonly Mistaken[] {
    const parts = partsUsed(this.reader).map(({ part, path }) => ({
      ...{ path, label: `The part ${part.name}`, file: part.file, mistakes: part.mistakes },
    }));
    const survey = this.reader.venue?.survey;
    const surveyed = survey
      ? [{ path: "venue", label: `The survey ${survey.name}`, file: survey.file, mistakes: survey.mistakes }]
      : [];
    const holdings = this.stockMistakes.map((each) => ({ path: "", label: "The stock list", ...each }));
    return [...parts, ...surveyed, ...holdings].filter(({ mistakes }) => mistakes.length > 0);
  }

  /** Who approved it, and whether it is still what they approved. */
  get approval(): Approval {
    return once(this.prose, "approval", () => approvalOf(this));
  }

  /** Waivers of the document; what they excuse is told once the other rules have been asked. */
  get waivers(): readonly BuildWaiver[] {
    return waiversIn(this);
  }

  /** Figures quoted in the prose. */
  get quotes(): readonly Quote[] {
    return this.prose.quotes;
  }

  /** Links that are to be replaced by a schedule; without such a schedule `mend` says which there are. */
  get scheduleLinks(): readonly { readonly name: string; readonly place: Place; readonly mend: string | undefined }[] {
    return this.quotes.flatMap(({ of, place }) => {
      const name = scheduleNamed(of);
      if (name === undefined) return [];
      return [{ name, place, mend: isSchedule(name) ? undefined : choices(scheduleNames, name) }];
    });
  }

  /** The path of a value nearest to a misspelt one, if one is near enough to be meant. */
  nearestValue(path: string): string | undefined {
    return nearest(path, [...this.values.keys()]);
  }

  /** Names of the drawings it has. */
  get drawings(): readonly string[] {
    return drawingNames(this);
  }

  /** Links of the prose to drawings. */
  get drawingLinks(): readonly DrawingLink[] {
    return drawingLinks(this);
  }

  /** The value with this path, computed alone: a text quotes a few of many. */
  valueAt(path: string): Value | undefined {
    const first = path.split(".", 1)[0] as string;
    const entries = () => once(this, `entries under ${first}`, () => new Map(valueEntriesUnder(this, first)));
    return onceAcross(this, `value ${path}`, () => entries().get(path)?.());
  }

  /** The values whose paths begin with a word. */
  valuesUnder(first: string): ReadonlyMap<string, Value> {
    return once(this, `values under ${first}`, () => computed(valueEntriesUnder(this, first)));
  }

  /** Every computed value by the path it is quoted with. */
  get values(): ReadonlyMap<string, Value> {
    return once(this, "values", () => computed(valueEntries(this)));
  }

  /** Processor, sources and converters, each with what it draws and the circuit it is on. */
  get devices(): readonly Device[] {
    return once(this, "devices", () => devicesOf(this));
  }

  /** What is stated, signed or confirmed on a day that is still to come. */
  get statedAhead(): readonly Ahead[] {
    return statedAhead(this);
  }

  /** Who has confirmed something, at a path of the document. */
  confirmation(path: string): Confirmation {
    return confirmationAt(this.reader, path);
  }

  /** What a licensed person has put on paper, at a path of the document; undefined where nothing is. */
  paper(path: string): Paper | undefined {
    return paperAt(this, path);
  }

  /** First and last day on site; without a last one it stays; undefined when they are not written or no days. */
  get stay(): Stay | undefined {
    return stayOf(this.reader.data("on-site"));
  }

  /** Supplies that circuits say they are taken from. */
  get supplies(): readonly Supply[] {
    return suppliesOf(this);
  }

  /** Quantities counted from the design. */
  get takeoff(): Takeoff {
    return once(this, "takeoff", () => new Takeoff(this));
  }

  /** The way of the feed of a run, from its circuit's outlet to its first panel; undefined where the venue was not surveyed. */
  readonly wayOfRun = (run: Run): FeedWay | undefined => {
    const { circuit } = run;
    const gap = circuit
      ? { path: `${circuit.path}.at`, what: "place its outlet is at", of: circuit.label }
      : { path: `${run.path}.from`, what: "circuit it is fed from", of: run.label };
    return feedWay(this, circuit?.outletAt, gap, run.panels?.[0]);
  };

  /** The way between the processor and a panel; undefined where the venue was not surveyed. */
  readonly wayOfChain = (panel: Panel | undefined): FeedWay | undefined => {
    const gap = { path: "data.processor.place", what: "place", of: "The processor" };
    return feedWay(this, this.reader.text(gap.path), gap, panel);
  };

  /** The floor or deck of the venue a face says it stands on; undefined where it names none that was surveyed. */
  floorOf(face: Face): Floor | undefined {
    return floorOf(this, face);
  }

  /** Lots it takes panels from. */
  get lotUses(): readonly LotUse[] {
    return lotUsesOf(this);
  }

  /** What it uses of some kinds and others may use, too, with who does on its days. */
  shared(...kinds: readonly SharedName["of"][]): readonly SharedThing[] {
    return sharedThings(this, ...kinds);
  }

  /** Lifting gear it takes along, with the days those on the shelf were last inspected. */
  get inspectedItems(): readonly InspectedItem[] {
    return once(this, "inspected items", () => inspectedItems(this));
  }

  /** The day up to which an inspection of what it takes along has to be good; undefined without days on site. */
  get inspectedUntil(): string | undefined {
    return inspectedUntil(this);
  }

  /** What holds a face to its wall. */
  fixingsOf(face: Face): Fixings {
    return new Fixings(this, face);
  }

  /** The heaviest piece, and what those who lift it may lift. */
  get lifting(): Lifting {
    return new Lifting(this);
  }

  /** Parts of the second suspension with their WLL; none when nothing is written down. */
  get secondary(): readonly { readonly name: string; readonly rating: Value }[] {
    return this.reader
      .list("rigging.secondary")
      .map(partName)
      .map((name) => ({
        name,
        rating: asMass(partValue(this.reader.parts.get(name), "wll", "mass", "WLL", `The second suspension: ${name}`)),
      }));
  }

  /** Every joint of connectors at the panels. */
  get joints(): readonly Joint[] {
    return jointsOf(this);
  }

  /** Jumpers of every run and chain. */
  get jumpers(): readonly Jumpers[] {
    return jumpersOf(this);
  }

  /** Text of the faces that are meant to show some. */
  get lettering(): readonly Lettering[] {
    return letteringOf(this);
  }

  /** How far each face is dimmed. */
  get dimming(): readonly Dimming[] {
    return dimmingOf(this);
  }

  /** Each face before the camera that films it. */
  get filming(): readonly Filming[] {
    return once(this, "filming", () => filmingOf(this));
  }

  /** Links and images that lead to a file or a heading. */
  get links(): readonly LocalLink[] {
    return this.prose.links;
  }

  /** The same, and whether they lead somewhere; `leads` is undefined when that cannot be told. */
  get localLinks(): readonly (LocalLink & { readonly leads: boolean | undefined })[] {
    const titles = this.sections.map(({ title }) => title);
    return this.links.map((link) => ({
      ...link,
      leads: leads(link.url, this.context.file, this.context.linkTargets, titles),
    }));
  }

  /** Every task of the body. */
  get tasks(): readonly Task[] {
    return this.prose.tasks;
  }

  /** Text below a heading; undefined without the heading. */
  textUnder(title: string): string | undefined {
    return this.prose.textUnder(title);
  }

  /** Ports and pixels that are asked of the processor, against what it has. */
  get processorLoad(): ProcessorLoad {
    return new ProcessorLoad(this);
  }

  /** Connector families that meet at every joint. */
  get meetings(): readonly Meeting[] {
    return meetingsOf(this);
  }

  /** Processor, sources and converters, and where they stand. */
  get actives(): readonly Active[] {
    return activesOf(this);
  }

  /** The electrical practice it follows: its own, or that of the house standard. */
  get practice(): "us" | "iec" {
    return this.reader.text("practice") === "iec" ||
      (this.reader.text("practice") === undefined && this.context.standard.practice === "iec")
      ? "iec"
      : "us";
  }
}
