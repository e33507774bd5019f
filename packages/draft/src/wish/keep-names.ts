import type { Data } from "@plumbmark/core";
import { keyOf, type Mapping, mappingOf, textOf } from "../data.js";
import { FACE } from "../decide/size.js";

/** Names a build has for what a draft calls by names of its own. */
export interface KeptNames {
  readonly face: string;
  /** Bars that carry the face, in order. */
  readonly bars: readonly string[];
  /** Hangs of each of these with the point each is on. */
  readonly hangs: readonly (readonly { readonly name: string; readonly point: string | undefined }[])[];
  /** Runs of the face with the circuit each is from. */
  readonly runs: readonly { readonly name: string; readonly from: string | undefined }[];
  readonly chains: readonly string[];
}

/** Whether panels that are written belong to a face. */
const areOf = (entry: Data | undefined, face: string): boolean => {
  const panels = keyOf(entry, "panels");
  return typeof panels === "string" && panels.startsWith(`${face} `);
};

const carriesFace = (bar: Data | undefined, face: string): boolean => {
  const carried = keyOf(bar, "carries");
  return (Array.isArray(carried) ? carried : [carried]).some((each) => textOf(each, "face") === face);
};

/** The bars of a front matter that carry a face. */
export const barsCarrying = (data: Mapping, face: string): readonly (readonly [string, Mapping])[] =>
  Object.entries(mappingOf(keyOf(data.rigging, "bars")))
    .filter(([, bar]) => carriesFace(bar, face))
    .map(([name, bar]) => [name, mappingOf(bar)] as const);

/** Runs or chains of a front matter that are of a face. */
export const linesOfFace = (
  data: Mapping,
  kind: "power" | "data",
  face: string,
): readonly (readonly [string, Mapping])[] =>
  Object.entries(mappingOf(keyOf(data[kind], kind === "power" ? "runs" : "chains")))
    .filter(([, line]) => areOf(line, face))
    .map(([name, line]) => [name, mappingOf(line)] as const);

/** What a build calls its face, the bars under it, their hangs, and its runs and chains. */
export function namesIn(data: Mapping, face: string): KeptNames {
  const bars = barsCarrying(data, face);
  return {
    face,
    bars: bars.map(([name]) => name),
    hangs: bars.map(([, bar]) =>
      Object.entries(mappingOf(bar.hangs)).map(([name, hang]) => ({ name, point: textOf(hang, "point") })),
    ),
    runs: linesOfFace(data, "power", face).map(([name, run]) => ({ name, from: textOf(run, "from") })),
    chains: linesOfFace(data, "data", face).map(([name]) => name),
  };
}

/**
 * A new name for each of some things: first that of what is alike, then the names that are left in their order; what there
 * are too few names for keeps its own where nobody has it.
 */
function named(
  things: readonly { readonly name: string; readonly like?: string | undefined }[],
  names: readonly { readonly name: string; readonly like?: string | undefined }[],
): ReadonlyMap<string, string> {
  const left = [...names];
  const given = new Map<string, string>();
  const take = (name: string, at: number): void => {
    if (at >= 0) given.set(name, (left.splice(at, 1)[0] as (typeof left)[number]).name);
  };
  for (const { name, like } of things)
    if (like !== undefined)
      take(
        name,
        left.findIndex((each) => each.like === like),
      );
  for (const { name } of things) if (!given.has(name) && left.length > 0) take(name, 0);
  const taken = new Set(given.values());
  for (const { name } of things) {
    if (given.has(name)) continue;
    let own = name;
    for (let number = 2; taken.has(own); number += 1) own = `${name}-${number}`;
    taken.add(own);
    given.set(name, own);
  }
  return given;
}

const underNames = (data: Data | undefined, names: ReadonlyMap<string, string>, of: (each: Data) => Data): Mapping =>
  Object.fromEntries(
    Object.entries(mappingOf(data)).map(([key, value]) => [names.get(key) ?? key, of(value)]),
  ) as Mapping;

const put = (group: Data | undefined, key: string, value: Data | undefined): Mapping => ({
  ...mappingOf(group),
  ...(value === undefined ? {} : { [key]: value }),
});

/** The front matter of a draft with the names of the build it is like, wherever they still fit. */
export function withNames(matter: Mapping, kept: KeptNames): Mapping {
  const faces = new Map([[FACE, kept.face]]);
  const panels = (line: Data): Data =>
    put(line, "panels", String(keyOf(line, "panels")).replaceAll(new RegExp(`\\b${FACE}(?= [A-Z])`, "gu"), kept.face));
  const lines = (
    kind: "power" | "data",
    names: readonly { readonly name: string; readonly like?: string | undefined }[],
  ) => {
    const key = kind === "power" ? "runs" : "chains";
    const own = mappingOf(keyOf(matter[kind], key));
    const things = Object.entries(own).map(([name, line]) => ({ name, like: textOf(line, "from") }));
    return Object.keys(own).length === 0
      ? matter[kind]
      : put(matter[kind], key, underNames(own, named(things, names), panels));
  };
  const bars = Object.entries(mappingOf(keyOf(matter.rigging, "bars")));
  const barNames = named(
    bars.map(([name]) => ({ name })),
    kept.bars.map((name) => ({ name })),
  );
  const hangNames = bars.map(([, bar], index) =>
    named(
      Object.entries(mappingOf(keyOf(bar, "hangs"))).map(([name, hang]) => ({ name, like: textOf(hang, "point") })),
      (kept.hangs[index] ?? []).map(({ name, point }) => ({ name, like: point })),
    ),
  );
  const carried = (entry: Data | undefined): Data | undefined =>
    Array.isArray(entry)
      ? entry.map((each) => carried(each) as Data)
      : textOf(entry, "face") === FACE
        ? put(entry, "face", kept.face)
        : entry;
  const hung = Object.fromEntries(
    bars.map(([name, bar], index) => [
      barNames.get(name) as string,
      put(
        put(bar, "carries", carried(keyOf(bar, "carries"))),
        "hangs",
        underNames(keyOf(bar, "hangs"), hangNames[index] as ReadonlyMap<string, string>, (each) => each),
      ),
    ]),
  ) as Mapping;
  const letter = keyOf(matter.rigging, "letter");
  const points = keyOf(letter, "points");
  const [first = new Map<string, string>()] = hangNames;
  const stated =
    points === undefined
      ? letter
      : put(
          letter,
          "points",
          underNames(points, first, (each) => each),
        );
  const rigging =
    bars.length === 0 ? matter.rigging : put(put(matter.rigging, "bars", hung), "letter", stated as Data | undefined);
  const at = keyOf(matter.picture, "at");
  return Object.fromEntries(
    Object.entries({
      ...matter,
      faces: underNames(matter.faces, faces, (each) => each),
      power: lines(
        "power",
        kept.runs.map(({ name, from }) => ({ name, like: from })),
      ),
      data: lines(
        "data",
        kept.chains.map((name) => ({ name })),
      ),
      picture:
        at === undefined
          ? matter.picture
          : put(
              matter.picture,
              "at",
              underNames(at, faces, (each) => each),
            ),
      rigging,
    }).filter(([, value]) => value !== undefined),
  ) as Mapping;
}
