import type { Place } from "../document/place.js";
import { START } from "../document/place.js";
import { type Data, join, type Placed } from "../document/yaml/yaml.js";
import { agree } from "./agreement.js";
import { type Survey, surveyData } from "./survey.js";

type Group = Record<string, Data>;

const isGroup = (data: Data | undefined): data is Group =>
  data !== null && typeof data === "object" && !Array.isArray(data);

/** What a build writes and its survey says otherwise. */
export interface Contradiction {
  /** Path in the build. */
  readonly path: string;
  /** Path in the survey. */
  readonly stated: string;
  readonly own: Data;
  readonly says: Data;
}

/** A build with what its survey states. */
export interface Completion {
  readonly placed: Placed;
  /** Paths in the survey, by the path in the build of what comes from there. */
  readonly stated: ReadonlyMap<string, string>;
  /** Groups of the build that describe something of the venue, and where the survey describes it. */
  readonly described: ReadonlyMap<string, string>;
  readonly contradictions: readonly Contradiction[];
}

/** A copy of a group that shares what is in it; it has no prototype, so no key can reach one. */
const copied = (group: Group): Group => Object.assign(Object.create(null), group) as Group;

/** What is written at some steps of a build; undefined when nothing is. */
function at(data: Data | undefined, ...steps: readonly string[]): Data | undefined {
  let here = data;
  for (const step of steps) here = isGroup(here) && Object.hasOwn(here, step) ? here[step] : undefined;
  return here ?? undefined;
}

const names = (data: Data | undefined): readonly string[] => (isGroup(data) ? Object.keys(data) : []);

const textAt = (data: Data | undefined, ...steps: readonly string[]): string | undefined => {
  const found = at(data, ...steps);
  return typeof found === "string" ? found : undefined;
};

class Completing {
  readonly data: Group;
  /** Groups that were made here: what the build writes stays as it is, and what nothing is laid into is shared with it. */
  readonly #own = new Set<Data>();
  readonly places: Map<string, Place>;
  readonly keys: Map<string, Place>;
  readonly stated = new Map<string, string>();
  readonly described = new Map<string, string>();
  readonly contradictions: Contradiction[] = [];

  constructor(
    private readonly placed: Placed,
    readonly survey: Survey,
  ) {
    this.data = copied(placed.data as Group);
    this.places = new Map(placed.places);
    this.keys = new Map(placed.keys);
  }

  /** Place of what a build says that makes it rest on the survey. */
  #anchor(path: string): Place {
    return this.placed.places.get(path) ?? this.placed.places.get("venue") ?? START;
  }

  /**
   * Lays what the survey has at a path into the build. Its value wins; one that is written otherwise is told.
   * @param anchor path of what the build says for it
   * @param but keys of it that say nothing of the build
   */
  lay(to: readonly string[], from: readonly string[], anchor: string, but: readonly string[] = []): void {
    this.described.set(to.join("."), from.join("."));
    const found = surveyData(this.survey, ...from);
    if (found === undefined) return;
    const left = isGroup(found)
      ? Object.fromEntries(Object.entries(found).filter(([key]) => !but.includes(key)))
      : found;
    this.#put(to, left, from.join("."), this.#anchor(anchor));
  }

  #put(to: readonly string[], data: Data, from: string, place: Place): void {
    if (isGroup(data)) {
      for (const [key, inner] of Object.entries(data)) this.#put([...to, key], inner, join(from, key), place);
      return;
    }
    const path = to.join(".");
    const own = at(this.data, ...to);
    const kind = (this.survey.values.get(from) ?? this.survey.values.get(join(from, 1)))?.kind;
    if (own !== undefined && !agree(own, data, kind)) this.contradictions.push({ path, stated: from, own, says: data });
    let here = this.data;
    for (const [index, step] of to.slice(0, -1).entries()) {
      const inner = here[step];
      if (!isGroup(inner)) this.#mark(to.slice(0, index + 1).join("."), place);
      here = this.#ownIn(here, step);
    }
    here[to.at(-1) as string] = data;
    this.#mark(path, place);
    this.stated.set(path, from);
  }

  /** The group at a key, one of our own. */
  #ownIn(group: Group, key: string): Group {
    const inner = group[key];
    if (isGroup(inner) && this.#own.has(inner)) return inner;
    const made = copied(isGroup(inner) ? inner : {});
    this.#own.add(made);
    group[key] = made;
    return made;
  }

  /** What is put in has the place of what the build says for it; what was there keeps its own. */
  #mark(path: string, place: Place): void {
    if (!this.places.has(path)) this.places.set(path, place);
    if (!this.keys.has(path)) this.keys.set(path, place);
  }

  /** Something that is stated twice over in the build, and has to agree in the second place, too. */
  hold(path: readonly string[], from: readonly string[]): void {
    const [own, says] = [at(this.data, ...path), surveyData(this.survey, ...from)];
    const stated = from.join(".");
    if (own === undefined || says === undefined) return;
    const kind = this.survey.values.get(stated)?.kind;
    if (!agree(own, says, kind)) this.contradictions.push({ path: path.join("."), stated, own, says });
  }
}

const GENERAL = ["practice", "exposure", "on-stage"];

function layGeneral(completing: Completing): void {
  for (const key of GENERAL) completing.lay([key], [key], "venue");
  for (const key of ["nearest", "farthest", "eye-height"])
    completing.lay(["audience", key], ["audience", key], "venue");
  completing.lay(["light", "ambient"], ["light", "ambient"], "venue");
}

/** Circuits that a run is fed from or the build says something of, and the supplies they are taken from. */
function layPower(completing: Completing): void {
  const { data, survey } = completing;
  const runs = names(at(data, "power", "runs"));
  const named = new Map<string, string>();
  for (const run of runs) {
    const from = textAt(data, "power", "runs", run, "from");
    if (from !== undefined && !named.has(from)) named.set(from, `power.runs.${run}.from`);
  }
  for (const circuit of names(at(data, "power", "circuits"))) named.set(circuit, `power.circuits.${circuit}`);
  const supplies = new Map<string, string>();
  for (const [circuit, anchor] of named) {
    if (surveyData(survey, "circuits", circuit) !== undefined)
      completing.lay(["power", "circuits", circuit], ["circuits", circuit], anchor);
    const supply = textAt(completing.data, "power", "circuits", circuit, "from");
    if (supply !== undefined) supplies.set(supply, anchor);
  }
  for (const [supply, anchor] of supplies)
    if (surveyData(survey, "supplies", supply) !== undefined)
      completing.lay(["power", "supplies", supply], ["supplies", supply], anchor);
}

/** Structure and point a hang names; undefined when the survey has no such point. */
export function pointNamed(survey: Survey, text: string | undefined): readonly [string, string] | undefined {
  const [structure, point, more] = (text ?? "").split(".");
  if (structure === undefined || point === undefined || more !== undefined) return undefined;
  return surveyData(survey, "structure", structure, "points", point) === undefined ? undefined : [structure, point];
}

/** A point of the survey that something of a bar is held at. */
interface HeldAt {
  /** Where the build names it, from the hangs of the bar: a hang, or a leg of its bridle. */
  readonly steps: readonly [string, ...string[]];
  /** As a letter calls it: `H1`, `H1.left`. */
  readonly name: string;
  readonly point: readonly [string, string];
}

/** The points that hangs of a bar and the legs of their bridles name. */
function pointsOf({ data, survey }: Completing, bar: string): readonly HeldAt[] {
  const hangs = ["rigging", "bars", bar, "hangs"];
  return names(at(data, ...hangs))
    .flatMap((hang): readonly Omit<HeldAt, "point">[] => [
      { steps: [hang], name: hang },
      ...["left", "right"].map((side) => ({ steps: [hang, "bridle", side] as const, name: `${hang}.${side}` })),
    ])
    .flatMap((held) => {
      const point = pointNamed(survey, textAt(data, ...hangs, ...held.steps, "point"));
      return point ? [{ ...held, point }] : [];
    });
}

/** The structure a bar hangs under, and where the build says so. */
function structureOf(completing: Completing, bar: string): readonly [string, string] | undefined {
  const { data, survey } = completing;
  const path = `rigging.bars.${bar}`;
  const under = textAt(data, "rigging", "bars", bar, "under");
  if (under !== undefined)
    return surveyData(survey, "structure", under) === undefined ? undefined : [under, `${path}.under`];
  const [first] = pointsOf(completing, bar);
  return first && [first.point[0], `${path}.hangs.${first.steps.join(".")}.point`];
}

/** What hardware bears on lies at one height where both ends of the structure do. */
function layHeight(completing: Completing, to: readonly string[], structure: string, anchor: string): void {
  const ends = ["from", "to"].map((end) => completing.survey.values.get(`structure.${structure}.${end}.up`));
  const [one, other] = ends;
  if (one && other && Math.abs(one.value - other.value) < 1e-9)
    completing.lay([...to, "bearing-height"], ["structure", structure, "from", "up"], anchor);
}

const LETTER = ["by", "licence", "on", "file", "counted", "other-loads", "until"];

function layBar(completing: Completing, bar: string): void {
  const { data, survey } = completing;
  const found = structureOf(completing, bar);
  if (!found) return;
  const [structure, anchor] = found;
  const [to, from] = [
    ["rigging", "bars", bar],
    ["structure", structure],
  ] as const;
  completing.lay([...to, "structure"], [...from, "structure"], anchor);
  for (const key of ["flange", "pipe"]) completing.lay([...to, key], [...from, key], anchor);
  layHeight(completing, to, structure, anchor);
  if (isGroup(at(data, ...to, "second"))) completing.lay([...to, "second", "girth"], [...from, "girth"], anchor);
  const points = pointsOf(completing, bar);
  const states = surveyData(survey, ...from, "letter") !== undefined && points.length > 0;
  if (states) {
    completing.lay([...to, "letter"], [...from, "letter"], anchor);
    for (const key of LETTER) completing.hold(["rigging", "letter", key], [...from, "letter", key]);
  }
  for (const held of points) layPoint(completing, bar, held, states);
}

function layPoint(
  completing: Completing,
  bar: string,
  { steps, name: held, point: [structure, point] }: HeldAt,
  states: boolean,
): void {
  const to = ["rigging", "bars", bar];
  const from = ["structure", structure, "points", point];
  const anchor = `rigging.bars.${bar}.hangs.${steps.join(".")}.point`;
  completing.lay([...to, "hangs", ...steps, "structure"], [...from, "structure"], anchor);
  // The end of a leg may be at another height than the hangs of its bar.
  if (steps.length > 1) layHeight(completing, [...to, "hangs", ...steps], structure, anchor);
  for (const key of ["structure", "catch"]) {
    if (states) completing.lay([...to, "letter", "points", held, key], [...from, key], anchor);
    for (const name of [held, `${bar}.${held}`])
      completing.hold(["rigging", "letter", "points", name, key], [...from, key]);
  }
}

/** What a face stands on or is fixed to. */
function layFace(completing: Completing, face: string): void {
  const { data, survey } = completing;
  const to = ["faces", face];
  const on = textAt(data, ...to, "on");
  if (on === undefined) return;
  const anchor = `faces.${face}.on`;
  // Of a face without a base or fixings nobody has said yet what holds it.
  const isWritten = (key: string): boolean => isGroup(at(data, ...to, key));
  if (textAt(data, ...to, "support") === "wall") {
    if (isWritten("fixings") && surveyData(survey, "walls", on) !== undefined)
      completing.lay([...to, "fixings"], ["walls", on], anchor);
    return;
  }
  if (!isWritten("base") || surveyData(survey, "floors", on) === undefined) return;
  for (const key of ["rating", "foot-rating"])
    completing.lay([...to, "base", "deck", key], ["floors", on, key], anchor);
}

/** A build with everything it leaves to its venue. The survey's value wins; what the build says otherwise is told. */
export function completedBy(placed: Placed, survey: Survey): Completion {
  const completing = new Completing(placed, survey);
  layGeneral(completing);
  layPower(completing);
  for (const bar of names(at(completing.data, "rigging", "bars"))) layBar(completing, bar);
  for (const face of names(at(completing.data, "faces"))) layFace(completing, face);
  const { data, places, keys, stated, described, contradictions } = completing;
  return { placed: { ...placed, data, places, keys }, stated, described, contradictions };
}
