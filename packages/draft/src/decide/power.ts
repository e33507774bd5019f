import { mates, plugFits } from "@plumbmark/calc";
import type { CheckEntry, Data, Part } from "@plumbmark/core";
import { type Brief, partsOfKind } from "../brief.js";
import { grouped, keyOf, type Mapping, mappingOf, textOf, wholeAt } from "../data.js";
import {
  assignCircuits,
  type CircuitAssignment,
  type CircuitRoom,
  MOST_CIRCUITS_EXACT,
} from "../search/assign-circuits.js";
import { divide } from "../search/divide.js";
import type { GridCell } from "../search/grid.js";
import type { VenueCircuit } from "../venue/facts.js";
import { cellsText } from "../write/cells.js";
import { lengthAsWritten } from "../write/length.js";
import { hangsOnBar, keptLengths, lengthFor, type Need, tooShort, wayToFace } from "./cables.js";
import { type Decided, type Decision, decided, fallen, type Scheme } from "./decision.js";
import { interleaved } from "./order.js";
import { placesOfDevices } from "./picture.js";
import { FACE, sizeIn } from "./size.js";
import { noFeedTold, noTwoTold } from "./unfed.js";

/** Rules a run is judged by. Devices and what is not known of a circuit are judged of the whole. */
const RUN_RULES = [
  "power.circuit-load",
  "power.cord-ampacity",
  "power.inrush",
  "power.leakage",
  "power.plug-fits",
  "power.run-current",
  "power.voltage-drop",
] as const;
const CABLE_RULES = ["connectors.", "power.plug-fits", "power.cord-type", "power.run-current"] as const;

/** Rules on a jumper that say something of its part alone. */
const JUMPER_RULES = ["connectors.", "power.cord-type"] as const;

export interface PowerWish {
  /** Whether every other panel is on another circuit, so that a trip leaves half of them lit. */
  readonly apart: boolean;
}

const endOf = (part: Part, index: number): string | undefined => {
  const end = (part.data.connectors as readonly Data[] | undefined)?.[index];
  return typeof end === "string" ? end : textOf(end, "type");
};

const panelEnd = (panel: Part | undefined, socket: string): string | undefined => {
  const end = keyOf(panel?.data.connectors, socket);
  return typeof end === "string" ? end : textOf(end, "type");
};

const under = (path: string, { at }: CheckEntry): boolean => at.path === path || at.path.startsWith(`${path}.`);

/** Cables that fit between two ends by the tables; the rules say which of them may be used. */
const fitting = (
  brief: Brief,
  from: (end: string) => boolean | undefined,
  to: string | undefined,
  kind: "power-cable" | "data-cable",
): readonly Part[] =>
  partsOfKind(brief, kind).filter((part) => {
    const [first, second] = [endOf(part, 0), endOf(part, 1)];
    return (
      first !== undefined &&
      second !== undefined &&
      to !== undefined &&
      from(first) === true &&
      mates(second, to) === true
    );
  });

/** Cables for lines through panels: what feeds the first, what joins the others, and what closes a loop. */
export const cablesBetween = (brief: Brief, panel: string, kind: "power" | "data") => {
  const part = brief.catalogue.parts.get(panel);
  const [into, out] = [panelEnd(part, `${kind}-in`), panelEnd(part, `${kind}-out`)];
  const cable = kind === "power" ? "power-cable" : "data-cable";
  const meets = (one: string | undefined) => (end: string) => one !== undefined && mates(end, one);
  return {
    feeds: (port: string | undefined) =>
      fitting(brief, kind === "power" ? (end) => port !== undefined && plugFits(end, port) : meets(port), into, cable),
    jumpers: fitting(brief, meets(out), into, cable),
    returns: (port: string | undefined) => fitting(brief, meets(port), out, cable),
  };
};

/**
 * The jumper between panels in cable order: of the cables that fit, with the shortest length each is kept in that reaches
 * every step by the rule on jumpers, the first that no other rule has anything against, else the first that fits.
 */
export function jumperFor(
  brief: Brief,
  scheme: Scheme,
  parts: readonly Part[],
  cells: readonly GridCell[],
  kind: "power" | "data",
): { readonly jumper: Mapping } | { readonly fallen: CheckEntry | undefined } {
  const panels = `${FACE} ${cellsText(cells)}`;
  let worst: CheckEntry | undefined;
  let fits: Mapping | undefined;
  for (const part of parts) {
    const kept = keptLengths(part, brief).map(({ text }) => text);
    for (const length of kept.length > 0 ? kept : SHORT_JUMPERS) {
      const jumper = { part: part.name, length };
      const matter =
        kind === "power"
          ? { power: { runs: { P1: { jumper, panels } } } }
          : { data: { chains: { D1: { jumper, panels } } } };
      const { venue, faces } = scheme.matter;
      const asked = brief.desk.ask({ ...grouped({ venue, faces }), rigging: rigged(brief), ...matter });
      if (cells.length > 1 && asked.checks("data.jumper-reach").length > 0) continue;
      const bad = asked
        .fails("connectors.")
        .find(({ at }) => at.path.endsWith(".jumper") || !at.path.includes(".feed"));
      worst ??= bad;
      if (bad) break;
      // What is made for it is taken before what merely fits: which cord may lie on a stage is the practice's.
      if (!asked.checks(...JUMPER_RULES).some(({ at }) => at.path.endsWith(".jumper"))) return { jumper };
      fits ??= jumper;
      break;
    }
  }
  return fits ? { jumper: fits } : { fallen: worst };
}

/** Lengths of what is cut to length. */
const SHORT_JUMPERS = ["0.6 m", "0.9 m", "1.2 m", "1.5 m", "2 m", "3 m"] as const;

const wayFrom = (brief: Brief, { at }: VenueCircuit) => wayToFace(brief, at ?? placesOfDevices(brief).processor, 0);

/** A cable to a face with its length, as far as it can be told. */
export function cableTo(brief: Brief, scheme: Scheme, part: Part, need: Need | undefined): Mapping {
  const length = lengthFor(brief, part, need);
  const size = sizeIn(brief, scheme);
  const flown = (brief.wish.support ?? "flown") === "flown";
  const hangs =
    length === undefined && flown && size
      ? hangsOnBar(scheme.columns * size.width, scheme.rows * size.height, brief.system)
      : undefined;
  return grouped({ part: part.name, length, hangs });
}

interface Cabled {
  readonly circuit: VenueCircuit;
  readonly feed: Mapping;
}

/** Circuits a wish may be fed from: those it names, else all there are. */
export const circuitsFor = ({ wish, facts }: Pick<Brief, "wish" | "facts">): readonly VenueCircuit[] =>
  wish.powerFrom.length === 0 ? facts.circuits : facts.circuits.filter(({ name }) => wish.powerFrom.includes(name));

/** What a build writes of a circuit: nothing of what its survey states. */
const writtenOf = ({ surveyed }: Brief, { data }: VenueCircuit): Mapping => (surveyed === undefined ? data : {});

const lineOf = (brief: Brief, circuits: readonly VenueCircuit[]): Mapping =>
  Object.fromEntries(circuits.map((circuit) => [circuit.name, writtenOf(brief, circuit)])) as Mapping;

/** A row of panels, one stretch of it on each circuit: every circuit is asked about at once. */
function sideBySide(
  scheme: Scheme,
  stretches: readonly {
    readonly circuit: VenueCircuit;
    readonly feed: Mapping;
    readonly jumper: Mapping;
    readonly panels: number;
  }[],
  circuits: Mapping,
): Mapping {
  let at = 0;
  const runs = Object.fromEntries(
    stretches.map(({ circuit, feed, jumper, panels }, index) => {
      const cells = Array.from({ length: panels }, (_, column) => ({ row: 0, column: at + column }));
      at += panels;
      return [`P${index + 1}`, { from: circuit.name, feed, jumper, panels: `${FACE} ${cellsText(cells)}` }];
    }),
  );
  const face = { ...mappingOf(keyOf(scheme.matter.faces, FACE)), columns: Math.max(1, at), rows: 1 };
  return grouped({
    venue: scheme.matter.venue,
    "on-site": scheme.matter["on-site"],
    faces: { [FACE]: face },
    power: { circuits, runs } as Data,
  });
}

/** The feed of each circuit: of the cables that fit, the first no rule has anything against. */
function feedsOf(brief: Brief, scheme: Scheme, circuits: readonly VenueCircuit[], jumper: Mapping) {
  const { feeds } = cablesBetween(brief, scheme.panel, "power");
  const options = circuits.flatMap((circuit) =>
    feeds(textOf(circuit.data, "outlet")).map((part) => ({
      circuit,
      part,
      feed: cableTo(brief, scheme, part, wayFrom(brief, circuit)),
      jumper,
      panels: 1,
    })),
  );
  if (options.length === 0)
    return { cabled: [] as readonly Cabled[], fails: [] as readonly CheckEntry[], short: undefined };
  const checks = brief.desk
    .ask({ rigging: rigged(brief), ...sideBySide(scheme, options, lineOf(brief, circuits)) })
    .checks(...CABLE_RULES);
  const against = (index: number) => checks.filter((check) => under(`power.runs.P${index + 1}`, check));
  const failing = (index: number) =>
    against(index).filter(({ outcome, level }) => outcome === "fails" && level === "shall");
  const cabled = circuits.flatMap((circuit) => {
    const own = options
      .flatMap((option, index) =>
        option.circuit === circuit && failing(index).length === 0 ? [{ ...option, index }] : [],
      )
      .filter(({ part }) => tooShort(brief, part, wayFrom(brief, circuit)) === undefined);
    const [best] = own.sort((a, b) => against(a.index).length - against(b.index).length);
    return best ? [{ circuit, feed: best.feed }] : [];
  });
  const fits = options.flatMap((option, index) => (failing(index).length === 0 ? [option] : []));
  const [short] = fits.flatMap(({ part, circuit }) => {
    const [longest, need] = [tooShort(brief, part, wayFrom(brief, circuit)), wayFrom(brief, circuit)];
    return longest === undefined || !need
      ? []
      : [
          `${part.name} is kept in ${longest} at most; the way from circuit ${circuit.name} is ${lengthAsWritten(need.metres, brief.system)}, and a cable is to have slack.`,
        ];
  });
  return { cabled, fails: fits.length > 0 ? [] : options.flatMap((_, index) => failing(index)), short };
}

/** What of the rigging decides how a cable is judged. */
export const rigged = ({ wish }: Pick<Brief, "wish">): Mapping => grouped({ "over-people": wish.overPeople ?? true });

/** Circuits serve the places devices stand at: the emptiest that is there, else the smallest that is left. */
function served(brief: Brief, circuits: readonly VenueCircuit[], by: ReadonlyMap<string, string>): Mapping {
  return Object.fromEntries(
    circuits.map((each) => {
      const own = [...by].filter(([, circuit]) => circuit === each.name).map(([place]) => place);
      const data = writtenOf(brief, each);
      return [each.name, own.length === 0 ? data : { ...data, serves: own }];
    }),
  ) as Mapping;
}

const placesOf = (brief: Brief): readonly string[] => [...new Set(Object.values(placesOfDevices(brief)))];

/** Devices that stand at a place, each with a plug of its own. */
const devicesAt = (brief: Brief, scheme: Scheme, place: string): number => {
  const path = (keyOf(scheme.matter.picture, "path") as readonly Data[] | undefined) ?? [];
  const there = path.filter((each) => textOf(each, "place") === place).length;
  return there + (placesOfDevices(brief).processor === place ? 1 : 0);
};

interface Rooms {
  readonly rooms: readonly CircuitRoom[];
  readonly circuits: Mapping;
}

/** What each circuit can take, by the model's figures and the rules on runs. */
function roomsOf(
  brief: Brief,
  scheme: Scheme,
  cabled: readonly Cabled[],
  jumper: Mapping,
  circuits: Mapping,
  devices: ReadonlyMap<string, number>,
  most: number,
  limits: Map<string, number>,
): Rooms {
  const { desk } = brief;
  const base = { data: scheme.matter.data as Data, picture: scheme.matter.picture as Data };
  const row = (panels: (each: Cabled) => number): Mapping => ({
    ...base,
    ...sideBySide(
      scheme,
      cabled.map((each) => ({ ...each, jumper, panels: panels(each) })).filter(({ panels: n }) => n > 0),
      circuits,
    ),
  });
  const [none, one] = [desk.ask({ ...base, ...sideBySide(scheme, [], circuits) }), desk.ask(row(() => 1))];
  // Runs side by side are asked about all at once, and halved all at once.
  const wanted = cabled.filter(({ circuit }) => !limits.has(circuit.name));
  const low = new Map(wanted.map(({ circuit }) => [circuit.name, 0]));
  const high = new Map(wanted.map(({ circuit }) => [circuit.name, most]));
  const tries = new Map(wanted.map(({ circuit }) => [circuit.name, most]));
  while (wanted.some(({ circuit: { name } }) => (low.get(name) as number) < (high.get(name) as number))) {
    const going = wanted.filter(({ circuit: { name } }) => (low.get(name) as number) < (high.get(name) as number));
    const failing = desk
      .ask({
        ...base,
        ...sideBySide(
          scheme,
          going.map((each) => ({ ...each, jumper, panels: tries.get(each.circuit.name) as number })),
          circuits,
        ),
      })
      .fails(...RUN_RULES);
    for (const [index, { circuit }] of going.entries()) {
      const { name } = circuit;
      const tried = tries.get(name) as number;
      const bad = failing.some(
        (check) => under(`power.runs.P${index + 1}`, check) || under(`power.circuits.${name}`, check),
      );
      if (bad) high.set(name, tried - 1);
      else low.set(name, tried);
      tries.set(name, Math.ceil(((low.get(name) as number) + (high.get(name) as number)) / 2));
    }
  }
  for (const { circuit } of wanted) limits.set(circuit.name, low.get(circuit.name) as number);
  const rooms = cabled.map(({ circuit }): CircuitRoom => {
    const path = `power.circuits.${circuit.name}`;
    const [rating, carried, with1] = [
      one.known(`${path}.continuous-rating`),
      none.known(`${path}.current`),
      one.known(`${path}.current`),
    ];
    const limit = limits.get(circuit.name) as number;
    const taken = brief.free?.circuit(circuit.name).amounts.I ?? 0;
    const plugged = (brief.free?.outlets(circuit.name).amounts.n ?? 0) + (devices.get(circuit.name) ?? 0);
    const outlets = Math.max(0, (wholeAt(circuit.data, "outlets") ?? 1) - plugged);
    const leg = textOf(circuit.data, "leg") ?? textOf(circuit.data.supply, "legs");
    const legs = leg === undefined ? {} : { leg };
    // Where the breaker is not known the longest run by the other rules counts, and the draft says what is not known.
    if (rating === undefined || carried === undefined || with1 === undefined || !(with1 > carried))
      return {
        name: circuit.name,
        rating: Math.max(limit, 1),
        carried: 0,
        perPanel: 1,
        outlets,
        mostInRun: limit,
        ...legs,
      };
    return {
      name: circuit.name,
      rating,
      carried: carried + taken,
      perPanel: with1 - carried,
      outlets,
      mostInRun: limit,
      ...legs,
    };
  });
  return { rooms, circuits };
}

interface Found {
  readonly assignment: CircuitAssignment;
  readonly exact: boolean;
  readonly circuits: Mapping;
  readonly rooms: readonly CircuitRoom[];
}

const better = (one: Found, other: Found | undefined): boolean => {
  if (!other) return true;
  const [a, b] = [one.assignment, other.assignment];
  return a.circuits.length !== b.circuits.length ? a.circuits.length < b.circuits.length : a.fullest < b.fullest - 1e-9;
};

/** Who serves the places of devices: every way where there are few, else the smallest circuits first. */
function servings(brief: Brief, circuits: readonly VenueCircuit[]): readonly ReadonlyMap<string, string>[] {
  let all: ReadonlyMap<string, string>[] = [new Map()];
  for (const place of placesOf(brief)) {
    const there = circuits.filter(({ at }) => at === place);
    const others = brief.facts.circuits.filter(({ at }) => at === place);
    const nowhere = circuits.filter(({ at }) => at === undefined);
    // Where the survey has none at the place, one whose outlets may be anywhere comes before one that is elsewhere.
    const able = ([there, others, nowhere].find((each) => each.length > 0) ?? circuits).slice(0, 4);
    if (able.length === 0) continue;
    all = all.flatMap((by) => able.map(({ name }) => new Map([...by, [place, name]])));
  }
  return all.slice(0, MOST_CIRCUITS_EXACT);
}

/** Runs on circuits, feeds and jumpers: as few circuits as can be, then the fullest as empty as can be. */
export function powered(brief: Brief, scheme: Scheme, cells: readonly GridCell[], { apart }: PowerWish): Decided {
  const named = circuitsFor(brief);
  const { jumpers } = cablesBetween(brief, scheme.panel, "power");
  if (named.length === 0) return unfed(scheme, "No circuit of the venue is known, so nothing is fed yet.");
  const parts = apart ? interleaved(cells, scheme.rows) : [cells];
  const joined = jumperFor(
    brief,
    scheme,
    jumpers,
    parts.reduce((a, b) => (b.length > a.length ? b : a)),
    "power",
  );
  if ("fallen" in joined)
    return fallen(
      joined.fallen?.rule ?? "connectors.mate",
      joined.fallen?.says ??
        `The catalogue has no power jumper for ${scheme.panel} that reaches${apart ? " past a panel" : ""}.`,
    );
  const { jumper } = joined;
  const { cabled, fails, short } = feedsOf(brief, scheme, named, jumper);
  if (cabled.length === 0) {
    const says =
      fails[0]?.says ??
      short ??
      noFeedTold(named, scheme.panel, panelEnd(brief.catalogue.parts.get(scheme.panel), "power-in"));
    return fallen(fails[0]?.rule ?? "power.plug-fits", says);
  }
  const limits = new Map<string, number>();
  let best: Found | undefined;
  let room = 0;
  for (const by of servings(brief, named)) {
    const serving = [
      ...named,
      ...brief.facts.circuits.filter(
        ({ name }) => !named.some((each) => each.name === name) && [...by.values()].includes(name),
      ),
    ];
    const devices = new Map<string, number>();
    for (const [place, circuit] of by)
      devices.set(circuit, (devices.get(circuit) ?? 0) + devicesAt(brief, scheme, place));
    // A circuit that gives its outlets to devices is asked about with them on.
    const fresh = new Map([...limits].filter(([name]) => !devices.has(name)));
    const { rooms, circuits } = roomsOf(
      brief,
      scheme,
      cabled,
      jumper,
      served(brief, serving, by),
      devices,
      cells.length,
      fresh,
    );
    for (const [name, limit] of fresh) if (!devices.has(name)) limits.set(name, limit);
    const search = assignCircuits(rooms, cells.length, apart ? 2 : 1);
    room = Math.max(room, search.room);
    if (search.assignment) {
      const found = { assignment: search.assignment, exact: search.exact, circuits, rooms };
      if (better(found, best)) best = found;
    }
  }
  if (!best && apart && room >= cells.length)
    return fallen(
      "power.circuit-load",
      noTwoTold(
        named,
        cabled.map(({ circuit }) => circuit),
      ),
    );
  if (!best)
    return fallen(
      "power.circuit-load",
      room > 0
        ? `The circuits ${named.map(({ name }) => name).join(", ")} take ${room} panels; the face has ${cells.length}.`
        : `The circuits ${named.map(({ name }) => name).join(", ")} take no panel.${outletsTold(brief, scheme, named)}`,
      ...(room > 0 ? [`${room} panels are the most these circuits take.`] : []),
    );
  return withRuns(scheme, best, { cabled, jumper, cells, parts, apart });
}

/** Why circuits take no panel: where the outlets went of those whose outlets are all taken, else what is on them. */
function outletsTold(brief: Brief, scheme: Scheme, circuits: readonly VenueCircuit[]): string {
  const devices = placesOf(brief).reduce((sum, place) => sum + devicesAt(brief, scheme, place), 0);
  const told = circuits.flatMap(({ name, data }) => {
    const outlets = wholeAt(data, "outlets") ?? 1;
    const others = brief.free?.outlets(name).amounts.n ?? 0;
    if (outlets > others + devices) return [];
    return [`${name} has ${outlets}${others > 0 ? `, of which others take ${others}` : ""}`];
  });
  return told.length === 0
    ? " What is on them already leaves room for none, or a run of one is too much by another rule."
    : ` Outlets are what is short: ${told.join("; ")}; processor, source and what is between them take ${devices}.`;
}

function unfed(scheme: Scheme, why: string): Decided {
  return { ok: true, scheme: decided(scheme, {}, { what: "power", why, exact: true, figures: [] }) };
}

interface Laying {
  readonly cabled: readonly Cabled[];
  readonly jumper: Mapping;
  readonly cells: readonly GridCell[];
  readonly parts: readonly (readonly GridCell[])[];
  readonly apart: boolean;
}

/** How the panels lie on the legs of the supply; empty where the venue does not say on which leg its circuits are. */
function legsTold(rooms: readonly CircuitRoom[], { circuits }: CircuitAssignment): string {
  const legs = new Map<string, number>();
  for (const { leg } of rooms) if (leg !== undefined) legs.set(leg, 0);
  for (const { name, panels } of circuits) {
    const leg = rooms.find((each) => each.name === name)?.leg;
    if (leg !== undefined) legs.set(leg, (legs.get(leg) ?? 0) + panels);
  }
  // One circuit is on the leg it is on.
  if (legs.size < 2 || circuits.length < 2) return "";
  const told = [...legs].sort(([a], [b]) => (a < b ? -1 : 1)).map(([leg, panels]) => `${leg} ${panels}`);
  return ` Of the ways to do that it is the one that loads the legs most alike, in panels: ${told.join(", ")}.`;
}

/** Cuts the cable order into runs and writes them with the circuits that are used. */
function withRuns(scheme: Scheme, found: Found, laying: Laying): Decided {
  const { assignment, circuits, rooms, exact } = found;
  const { cabled, jumper, cells, parts, apart } = laying;
  // In two parts that lie between one another the order is that of the parts.
  const order = apart ? parts.flat() : cells;
  let at = 0;
  const runs: [string, Mapping][] = [];
  for (const { name, panels } of assignment.circuits) {
    const own = order.slice(at, at + panels);
    at += panels;
    const { mostInRun } = rooms.find((each) => each.name === name) as CircuitRoom;
    const feed = cabled.find(({ circuit }) => circuit.name === name)?.feed as Mapping;
    for (const piece of divide(own, mostInRun))
      runs.push([
        `P${runs.length + 1}`,
        grouped({
          from: name,
          feed,
          jumper: piece.length > 1 ? jumper : undefined,
          panels: `${FACE} ${cellsText(piece)}`,
        }),
      ]);
  }
  const used = Object.entries(circuits).filter(
    ([name, data]) => assignment.circuits.some((each) => each.name === name) || keyOf(data, "serves") !== undefined,
  );
  const names = assignment.circuits.map(({ name }) => name);
  const decision: Decision = {
    what: "power",
    why: apart
      ? `Every other ${scheme.rows > 1 ? "row" : "panel"} is on another circuit, ${names.join(" and ")}: when one trips, half stays lit.`
      : `${names.length === 1 ? `One circuit, ${names[0]},` : `${names.length} circuits, ${names.join(", ")},`} ${names.length === 1 ? "is" : "are"} the fewest that carry it, and the fullest is as empty as it can be.${legsTold(rooms, assignment)}`,
    exact,
    ...(exact ? {} : { gap: `Of the circuits the ${MOST_CIRCUITS_EXACT} with the most room were looked at.` }),
    figures: [
      ...names.map((name) => `power.circuits.${name}.share`),
      ...runs.map(([name]) => `power.runs.${name}.drop-share-in-all`),
    ],
  };
  const kept = used.filter(([, data]) => Object.keys(mappingOf(data)).length > 0);
  const circuitsKept = kept.length === 0 ? {} : { circuits: Object.fromEntries(kept) };
  const power = { ...circuitsKept, runs: Object.fromEntries(runs) } as Mapping;
  return { ok: true, scheme: decided(scheme, { power }, decision) };
}
