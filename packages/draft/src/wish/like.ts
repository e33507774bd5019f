import { type Build, choices, type Data, LIKE_IN_BUILD, nearest, readYaml, withLike } from "@plumbmark/core";
import { grouped, keyOf, type Mapping, mappingOf, textOf, textsOf } from "../data.js";
import { barsCarrying, type KeptNames, linesOfFace, namesIn } from "./keep-names.js";

/** What is asked for instead of what stands. */
export interface OtherSize {
  /** As written, `12 ft` or `at most 12 ft`. */
  readonly width?: string | undefined;
  readonly height?: string | undefined;
  /** The face that is meant, of a build that has several. */
  readonly face?: string | undefined;
}

/** Why no wish can be made of a build. */
export interface NotAlike {
  readonly says: string;
  readonly mend: string;
}

/** The line of a bar as a structure, where the venue was not surveyed: its hangs are the points there are. */
function structureOfBar(bar: Mapping, letter: Data | undefined): Mapping | undefined {
  const [up, length] = [keyOf(bar, "bearing-height"), keyOf(bar, "length")];
  if (up === undefined || length === undefined) return undefined;
  const points = Object.entries(mappingOf(bar.hangs)).map(([name, hang]) => {
    const stated = mappingOf(keyOf(keyOf(letter, "points"), name));
    return [
      name,
      grouped({ at: keyOf(hang, "at"), structure: keyOf(hang, "structure") ?? stated.structure, catch: stated.catch }),
    ];
  });
  const { points: _points, ...ofLetter } = mappingOf(letter);
  return grouped({
    from: { right: "0 m", upstage: "0 m", up },
    to: { right: length, upstage: "0 m", up },
    flange: bar.flange,
    pipe: bar.pipe,
    girth: keyOf(bar.second, "girth"),
    structure: bar.structure,
    points: Object.fromEntries(points) as Mapping,
    letter: Object.keys(ofLetter).length === 0 ? undefined : (ofLetter as Mapping),
  });
}

/** The front matter as it is written: what a survey states is not in it. */
function writtenIn(document: string): Mapping {
  const matter = /^\uFEFF?---\r?\n([\s\S]*?)\r?\n---/u.exec(document)?.[1];
  return matter === undefined ? {} : mappingOf(withLike(readYaml(matter), LIKE_IN_BUILD).data);
}

/** The face that is meant: the one there is, or the one that is named. */
function faceMeant(data: Mapping, asked: string | undefined): string | NotAlike {
  const names = Object.keys(mappingOf(data.faces));
  if (asked !== undefined && !names.includes(asked)) {
    const near = nearest(asked, names);
    return {
      says: `It has no face \`${asked}\`.`,
      mend: near === undefined ? choices(names, asked) : `Did you mean \`${near}\`?`,
    };
  }
  const [only, ...others] = names;
  if (asked !== undefined) return asked;
  if (only === undefined) return { says: "It has no face.", mend: "Write a wish: `plumbmark start wish NAME`." };
  return others.length === 0
    ? only
    : {
        says: `It has ${names.length} faces, ${names.join(", ")}, and one is laid out at a time.`,
        mend: `Say which: \`--face ${only}\`.`,
      };
}

/** Names of a build that a draft like it keeps; undefined where it does not have the face. */
export function namesKept(document: string, asked: string | undefined): KeptNames | undefined {
  const data = writtenIn(document);
  const meant = faceMeant(data, asked);
  return typeof meant === "string" ? namesIn(data, meant) : undefined;
}

/**
 * A wish for a face that stands in a build, in another size: its panel and lot, what holds it and where, what it shows,
 * what feeds it. It is written as anybody would write a wish, and read as one.
 */
export function wishLike(build: Build, document: string, name: string, size: OtherSize): Mapping | NotAlike {
  const data = writtenIn(document);
  const meant = faceMeant(data, size.face);
  if (typeof meant !== "string") return meant;
  const face = build.faces.find((each) => each.name === meant);
  const written = mappingOf(keyOf(data.faces, meant));
  const bar = barsCarrying(data, meant)[0]?.[1] ?? {};
  const point = Object.values(mappingOf(bar.hangs)).flatMap((hang) => textOf(hang, "point") ?? [])[0];
  const { surveys } = { surveys: build.context.surveys };
  const surveyed = surveys.has(String(data.venue));
  const metres = (value: { readonly known: boolean; readonly value?: number } | undefined): string | undefined =>
    value?.known && value.value !== undefined ? `exactly ${value.value} m` : undefined;
  const path = (keyOf(data.picture, "path") as readonly Data[] | undefined) ?? [];
  const text = mappingOf(written.text);
  const runs = linesOfFace(data, "power", meant).flatMap(([, run]) => textOf(run, "from") ?? []);
  const serving = Object.keys(mappingOf(keyOf(data.power, "circuits")));
  const beam = surveyed ? undefined : structureOfBar(bar, keyOf(data.rigging, "letter"));
  const all = (Array.isArray(bar.carries) ? bar.carries : [bar.carries]).map(mappingOf);
  const carried = all.find((each) => each.face === meant) ?? {};
  const middle = surveyed
    ? grouped({ right: keyOf(bar.middle, "right"), upstage: written.upstage })
    : grouped({ right: face && middleOn(build, face, barsCarrying(data, meant)[0]?.[0], carried) });
  const trim = keyOf(written, "trim") ?? keyOf(written, "height-above");
  return grouped({
    wish: name,
    title: textOf(data, "title") ?? name,
    venue: surveyed
      ? (data.venue as Data)
      : grouped({
          exposure: data.exposure,
          "on-stage": data["on-stage"],
          circuits: keyOf(data.power, "circuits"),
          structure: beam ? { beam } : undefined,
          audience: data.audience,
        }),
    practice: data.practice,
    "on-site": data["on-site"],
    shows: Object.keys(text).length > 0 ? { text: grouped({ lines: text.lines }) } : undefined,
    size: grouped({
      width: size.width ?? metres(face?.width),
      height: size.height ?? metres(face?.height),
    }),
    support: written.support,
    over: grouped({
      middle: Object.keys(middle).length > 0 ? middle : undefined,
      under: beam ? "beam" : (textOf(bar, "under") ?? point?.split(".")[0]),
      on: written.on,
      trim: trim === undefined ? undefined : `exactly ${String(trim)}`,
    }),
    "out-of": textOf(written, "lot") ?? "catalogue",
    panel: written.panel,
    "over-people": keyOf(data.rigging, "over-people"),
    light: data.light,
    "feed-from": grouped({
      power: [...new Set([...runs, ...serving])],
      data: textOf(keyOf(data.data, "processor"), "place"),
      picture: path.flatMap((each) => textOf(each, "place") ?? [])[0],
    }),
  });
}

/** Middle of a face on its bar, where the bar's left end is what places are measured from. */
function middleOn(
  build: Build,
  face: Build["faces"][number],
  bar: string | undefined,
  carried: Mapping,
): string | undefined {
  const { quantities } = build.reader;
  const from = quantities.get(`rigging.bars.${bar}.carries.from`)?.value;
  if (!face.width.known || textsOf(carried, "face").length === 0) return undefined;
  return `${(from ?? 0) + face.width.value / 2} m`;
}

/** A value that is another in a draft than in the build it is like. */
export interface ChangedValue {
  readonly path: string;
  readonly was?: string;
  readonly is?: string;
}

const said = (data: Data): string => (typeof data === "string" ? data : JSON.stringify(data));

/** Every leaf of data by its path; items of a list are one leaf. */
function leavesOf(data: Data | undefined, path: string): readonly (readonly [string, string])[] {
  if (data === undefined || data === null) return [];
  if (typeof data !== "object" || Array.isArray(data)) return [[path, said(data as Data)]];
  return Object.entries(data).flatMap(([key, value]) => leavesOf(value as Data, path === "" ? key : `${path}.${key}`));
}

const only = (data: Data | undefined, names: readonly string[]): Mapping =>
  Object.fromEntries(Object.entries(mappingOf(data)).filter(([name]) => names.includes(name))) as Mapping;

/** What of a build is about one face: a draft lays out that, and the rest is for people or is not looked at. */
function aboutFace(data: Mapping, face: string): Mapping {
  const group = (key: string, more: Readonly<Record<string, Data>>): Data | undefined =>
    data[key] === undefined ? undefined : ({ ...mappingOf(data[key]), ...more } as Data);
  const of = (kind: "power" | "data"): Mapping => Object.fromEntries(linesOfFace(data, kind, face)) as Mapping;
  return grouped({
    faces: only(data.faces, [face]),
    power: group("power", { runs: of("power") }),
    data: group("data", { chains: of("data") }),
    picture: group("picture", { at: only(keyOf(data.picture, "at"), [face]) }),
    rigging: group("rigging", { bars: Object.fromEntries(barsCarrying(data, face)) as Mapping }),
  });
}

/** What is another in a draft than in the build it is like, of the face that is laid out. */
export function changedFrom(document: string, face: string, matter: Mapping): readonly ChangedValue[] {
  const leaves = (data: Mapping): ReadonlyMap<string, string> => new Map(leavesOf(aboutFace(data, face), ""));
  const [was, is] = [leaves(writtenIn(document)), leaves(matter)];
  return [...new Set([...was.keys(), ...is.keys()])]
    .filter((path) => was.get(path) !== is.get(path))
    .map((path) => {
      const [before, after] = [was.get(path), is.get(path)];
      return { path, ...(before === undefined ? {} : { was: before }), ...(after === undefined ? {} : { is: after }) };
    });
}
