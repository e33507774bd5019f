import { type Build, type Data, readYaml } from "@plumbmark/core";
import { grouped, keyOf, type Mapping, mappingOf, textOf, textsOf } from "../data.js";
import { BAR } from "../decide/hangs.js";
import { FACE } from "../decide/size.js";

/** What is asked for instead of what stands. */
export interface OtherSize {
  /** As written, `12 ft` or `at most 12 ft`. */
  readonly width?: string | undefined;
  readonly height?: string | undefined;
}

/** Why no wish can be made of a build. */
export interface NotAlike {
  readonly says: string;
  readonly mend: string;
}

const first = (data: Data | undefined): readonly [string, Mapping] | undefined => {
  const [entry] = Object.entries(mappingOf(data));
  return entry && [entry[0], mappingOf(entry[1])];
};

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
    girth: keyOf(bar.second, "girth"),
    structure: bar.structure,
    points: Object.fromEntries(points) as Mapping,
    letter: Object.keys(ofLetter).length === 0 ? undefined : (ofLetter as Mapping),
  });
}

/** The front matter as it is written: what a survey states is not in it. */
function writtenIn(document: string): Mapping {
  const matter = /^\uFEFF?---\r?\n([\s\S]*?)\r?\n---/u.exec(document)?.[1];
  return matter === undefined ? {} : mappingOf(readYaml(matter).data);
}

/**
 * A wish for what stands in a build, in another size: its panel and lot, what holds it and where, what it shows, what
 * feeds it. It is written as anybody would write a wish, and read as one.
 */
export function wishLike(build: Build, document: string, name: string, size: OtherSize): Mapping | NotAlike {
  const data = writtenIn(document);
  const faces = Object.keys(mappingOf(data.faces));
  if (faces.length !== 1)
    return {
      says: `It has ${faces.length} faces, and one is laid out at a time.`,
      mend: "Write a wish for the face you mean: `plumbmark start wish NAME`.",
    };
  const [face] = build.faces;
  const [, written] = first(data.faces) as readonly [string, Mapping];
  const bar = first(keyOf(data.rigging, "bars"))?.[1] ?? {};
  const point = Object.values(mappingOf(bar.hangs)).flatMap((hang) => textOf(hang, "point") ?? [])[0];
  const { surveys } = { surveys: build.context.surveys };
  const surveyed = surveys.has(String(data.venue));
  const metres = (value: { readonly known: boolean; readonly value?: number } | undefined): string | undefined =>
    value?.known && value.value !== undefined ? `exactly ${value.value} m` : undefined;
  const path = (keyOf(data.picture, "path") as readonly Data[] | undefined) ?? [];
  const text = mappingOf(written.text);
  const runs = Object.values(mappingOf(keyOf(data.power, "runs"))).flatMap((run) => textOf(run, "from") ?? []);
  const serving = Object.keys(mappingOf(keyOf(data.power, "circuits")));
  const beam = surveyed ? undefined : structureOfBar(bar, keyOf(data.rigging, "letter"));
  const carried = mappingOf(Array.isArray(bar.carries) ? bar.carries[0] : bar.carries);
  const middle = surveyed
    ? grouped({ right: keyOf(bar.middle, "right"), upstage: written.upstage })
    : grouped({ right: face && middleOn(build, carried) });
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
function middleOn(build: Build, carried: Mapping): string | undefined {
  const [face] = build.faces;
  const from = build.reader.quantities.get(`${build.bars[0]?.path}.carries.from`)?.value;
  if (!face?.width.known || textsOf(carried, "face").length === 0) return undefined;
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
function leavesOf(
  data: Data | undefined,
  path: string,
  names: ReadonlyMap<string, string>,
): readonly (readonly [string, string])[] {
  if (data === undefined || data === null) return [];
  if (typeof data !== "object" || Array.isArray(data)) return [[path, said(data as Data)]];
  return Object.entries(data).flatMap(([key, value]) => {
    const own = names.get(`${path}.*`) !== undefined ? (names.get(`${path}.*`) as string) : key;
    return leavesOf(value as Data, path === "" ? own : `${path}.${own}`, names);
  });
}

/** Parts of a build that a draft lays out; the rest is for people, and is not carried over. */
const LAID_OUT = ["faces", "power", "data", "picture", "rigging"] as const;

/** What is another in a draft: its face and its bar are called as a draft calls them, and compared with those of the build. */
export function changedFrom(document: string, matter: Mapping): readonly ChangedValue[] {
  const data = writtenIn(document);
  const name = Object.keys(mappingOf(data.faces))[0] ?? FACE;
  const names = new Map([
    ["faces.*", FACE],
    ["rigging.bars.*", BAR],
    ["picture.at.*", FACE],
  ]);
  const renamed = (text: string): string => text.replace(new RegExp(`^${name}(?= [A-Z])`, "u"), FACE);
  const leaves = (of: Mapping): ReadonlyMap<string, string> =>
    new Map(LAID_OUT.flatMap((key) => leavesOf(of[key], key, names)).map(([path, text]) => [path, renamed(text)]));
  const [was, is] = [leaves(data), leaves(matter)];
  return [...new Set([...was.keys(), ...is.keys()])]
    .filter((path) => was.get(path) !== is.get(path) && !path.endsWith(".carries.face"))
    .map((path) => {
      const [before, after] = [was.get(path), is.get(path)];
      return { path, ...(before === undefined ? {} : { was: before }), ...(after === undefined ? {} : { is: after }) };
    });
}
