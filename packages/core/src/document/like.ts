import type { Mistake } from "./mistake.js";
import { choices, nearest } from "./nearest.js";
import { START } from "./place.js";
import { type Data, join, type Placed } from "./yaml/yaml.js";

type Mapping = Readonly<Record<string, Data>>;

const mappingOf = (data: Data | undefined): Mapping | undefined =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : undefined;

/** Mappings of a build document whose entries may be like one another; `*` stands for any name. */
export const LIKE_IN_BUILD = ["faces", "power.circuits", "rigging.bars", "rigging.bars.*.hangs"] as const;
/** The same of a survey. */
export const LIKE_IN_SURVEY = ["circuits", "structure"] as const;

interface Copying {
  readonly placed: Placed;
  readonly places: Map<string, NonNullable<ReturnType<Placed["places"]["get"]>>>;
  readonly keys: Map<string, NonNullable<ReturnType<Placed["keys"]["get"]>>>;
  readonly mistakes: Mistake[];
  readonly copied: Set<string>;
}

/** @param other an entry it could be like, which tells what waits for the mistake */
function complain({ placed, mistakes }: Copying, path: string, says: string, mend: string, other?: string): void {
  const place = placed.places.get(path) ?? START;
  const standIn = other === undefined ? {} : { standIn: { place, text: other } };
  mistakes.push({ rule: "document.front-matter", path, place, says, mend, ...standIn });
}

/**
 * The entries of one mapping with what each copies from another written out. What an entry writes itself stands in the
 * place of what is copied, key by key. An entry that cannot be copied from keeps what it has, and is told.
 */
function writtenOut(entries: Mapping, path: string, copying: Copying): Mapping {
  const done = new Map<string, Data>();
  const entryOf = (name: string, way: readonly string[]): Data => {
    const known = done.get(name);
    if (known !== undefined) return known;
    const own = mappingOf(entries[name]);
    const model = own?.like;
    if (!own || model === undefined) return entries[name] as Data;
    const at = join(join(path, name), "like");
    const { like: _, ...rest } = own;
    const refuse = (says: string, mend: string, other?: string): Data => {
      complain(copying, at, says, mend, other);
      return rest;
    };
    if (typeof model !== "string") return refuse("`like` names no entry.", "Write the name of the entry it is like.");
    if ([...way, name].includes(model))
      return refuse(`\`${name}\` is like itself.`, "Write out one of the entries that are like one another.");
    if (!Object.hasOwn(entries, model)) {
      const others = Object.keys(entries).filter((each) => each !== name);
      return refuse(
        `There is no \`${model}\` beside \`${name}\` to be like.`,
        choices(others, model),
        nearest(model, others) ?? others[0],
      );
    }
    const copied = mappingOf(entryOf(model, [...way, name]));
    if (!copied) return refuse(`\`${model}\` has nothing to copy.`, "Write the name of an entry with keys.");
    placeCopies(copied, join(path, model), join(path, name), at, rest, copying);
    return { ...copied, ...rest };
  };
  for (const name of Object.keys(entries)) done.set(name, entryOf(name, []));
  return Object.assign(Object.create(null), Object.fromEntries(done)) as Mapping;
}

/** What is copied has no place of its own in the entry: it is where `like` is written. */
function placeCopies(copied: Mapping, from: string, to: string, at: string, own: Mapping, copying: Copying): void {
  const { places, keys, placed } = copying;
  const place = placed.places.get(at);
  if (!place) return;
  for (const map of [places, keys])
    for (const path of [...map.keys()]) {
      if (!path.startsWith(`${from}.`)) continue;
      const key = path.slice(from.length + 1);
      const first = Object.keys(copied).find((each) => key === each || key.startsWith(`${each}.`));
      if (first === undefined || Object.hasOwn(own, first)) continue;
      const copy = join(to, key);
      copying.copied.add(copy);
      if (!map.has(copy)) map.set(copy, place);
    }
}

/** The paths a pattern with `*` stands for. */
function pathsFor(data: Data, pattern: string): readonly (readonly string[])[] {
  let found: readonly { readonly path: readonly string[]; readonly data: Data | undefined }[] = [{ path: [], data }];
  for (const step of pattern.split("."))
    found = found.flatMap(({ path, data: here }) => {
      const entries = mappingOf(here);
      if (!entries) return [];
      const names = step === "*" ? Object.keys(entries) : Object.hasOwn(entries, step) ? [step] : [];
      return names.map((name) => ({ path: [...path, name], data: entries[name] }));
    });
  return found.filter(({ data: here }) => mappingOf(here)).map(({ path }) => path);
}

function replaced(data: Data, path: readonly string[], change: (entries: Mapping) => Mapping): Data {
  const entries = mappingOf(data) as Mapping;
  const [first, ...rest] = path;
  if (first === undefined) return change(entries);
  const copy = Object.assign(Object.create(null), entries) as Record<string, Data>;
  copy[first] = replaced(entries[first] as Data, rest, change);
  return copy;
}

const usesLike = (data: Data, pattern: string): boolean =>
  pathsFor(data, pattern).some((path) =>
    Object.values(path.reduce<Mapping>((here, key) => here[key] as Mapping, data as Mapping)).some(
      (entry) => mappingOf(entry)?.like !== undefined,
    ),
  );

/**
 * Data with every `like: NAME` of certain mappings written out: another entry of the same mapping is copied. A text
 * without any comes back as it is.
 * @param patterns paths of the mappings, `*` for any name; outer ones before inner ones
 */
export function withLike(placed: Placed, patterns: readonly string[]): Placed {
  if (!patterns.some((pattern) => usesLike(placed.data, pattern))) return placed;
  const copying: Copying = {
    placed,
    places: new Map(placed.places),
    keys: new Map(placed.keys),
    mistakes: [...placed.mistakes],
    copied: new Set(placed.copied),
  };
  let { data } = placed;
  for (const pattern of patterns)
    for (const path of pathsFor(data, pattern))
      data = replaced(data, path, (entries) => writtenOut(entries, path.join("."), copying));
  const { places, keys, mistakes, copied } = copying;
  const { models } = placed;
  return { data, places, keys, mistakes, copied, ...(models ? { models } : {}) };
}
