import { type Gap, type Kind, type Known, kinds, missing, type Value } from "@plumbmark/calc";
import type { Mistake } from "../../document/mistake.js";
import { choices, nearOnes } from "../../document/nearest.js";
import { type Place, START } from "../../document/place.js";
import type { Implausible } from "../../document/plausible.js";
import type { Data, Placed } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";
import { LOOK, LOOKED_AT, note, noteAt } from "./reads.js";
import type { VenueReading } from "./venue-reading.js";

/** How many steps of a path the next key takes: a name of the catalogue may have points in it, such as `tile-500-p3.1`. */
function keyAt(here: object, left: readonly string[]): number {
  if (Array.isArray(here)) return 1;
  const taken = left.findIndex((_, index) => Object.hasOwn(here, left.slice(0, index + 1).join(".")));
  return taken < 0 ? 1 : taken + 1;
}

/** Reads the front matter of one document by path; what is not there is missing by name, never zero. */
export class Reader {
  readonly mistakes: Mistake[] = [];

  readonly #placed: Placed;
  readonly #implausible: readonly Implausible[];
  readonly #venue: VenueReading | undefined;
  readonly #found = new Map<string, Data | undefined>();

  constructor(
    placed: Placed,
    /** Every quantity that is written, by path. */
    readonly quantities: ReadonlyMap<string, Known>,
    readonly parts: ReadonlyMap<string, Part>,
    implausible: readonly Implausible[] = [],
    venue: VenueReading | undefined = undefined,
    /** The front matter as its author wrote it, without what is copied by `like` or comes from a survey. */
    readonly written: Placed = placed,
  ) {
    this.#placed = placed;
    this.#implausible = implausible;
    this.#venue = venue;
  }

  /** The whole front matter. Whoever looks at it looks at all of it: a path is asked for by `data`. */
  get placed(): Placed {
    note(LOOKED_AT.whole);
    return this.#placed;
  }

  /** Whether nothing of it could be read. */
  get isUnread(): boolean {
    return this.#placed.data === null;
  }

  /** What is written and is not of the size its field has. */
  get implausible(): readonly Implausible[] {
    note(LOOKED_AT.implausible);
    return this.#implausible;
  }

  /** What the survey of its venue states of it; undefined where it names no venue that was surveyed. */
  get venue(): VenueReading | undefined {
    note(LOOKED_AT.venue);
    return this.#venue;
  }

  /** What stands at a path; the same few are asked for again by every rule. */
  data(path: string): Data | undefined {
    noteAt(LOOK.data, path);
    return this.#data(path);
  }

  #data(path: string): Data | undefined {
    if (this.#found.has(path)) return this.#found.get(path);
    const found = this.#find(path);
    this.#found.set(path, found);
    return found;
  }

  #find(path: string): Data | undefined {
    let here: Data | undefined = this.#placed.data;
    let left = path === "" ? [] : path.split(".");
    while (left.length > 0) {
      if (here === null || here === undefined || typeof here !== "object") return undefined;
      const taken = keyAt(here, left);
      here = Array.isArray(here)
        ? (here as readonly Data[])[Number(left[0]) - 1]
        : (here as Record<string, Data>)[left.slice(0, taken).join(".")];
      left = left.slice(taken);
    }
    return here ?? undefined;
  }

  /** Whether anything is written at a path. */
  has(path: string): boolean {
    noteAt(LOOK.there, path);
    return this.#data(path) !== undefined;
  }

  text(path: string): string | undefined {
    const data = this.data(path);
    return typeof data === "string" ? data : undefined;
  }

  /** The whole number written at `path`; 0 when there is none, or one above `most`: the schema has refused it by then. */
  count(path: string, most: number): number {
    const data = this.data(path);
    return typeof data === "number" && Number.isInteger(data) && data > 0 && data <= most ? data : 0;
  }

  /** The items of the list at `path`; none when what stands there is no list. */
  list(path: string): readonly Data[] {
    const data = this.data(path);
    return Array.isArray(data) ? (data as readonly Data[]) : [];
  }

  /** Keys of the group at `path`. */
  keys(path: string): readonly string[] {
    noteAt(LOOK.keys, path);
    const data = this.#data(path);
    return data !== null && typeof data === "object" && !Array.isArray(data) ? Object.keys(data) : [];
  }

  /** Keys and values of the mapping at `path`; for names that may have a dot in them, such as parts. */
  entries(path: string): readonly (readonly [string, Data])[] {
    const data = this.data(path);
    return data !== null && typeof data === "object" && !Array.isArray(data)
      ? Object.entries(data as Readonly<Record<string, Data>>)
      : [];
  }

  /** The quantity written at `path`; missing, with the words for it, when it is not there or cannot be read. */
  value<const K extends Kind>(path: string, kind: K, what: string, of: string): Value<K> {
    const gap = (): Gap => this.gap(path, what, of);
    return ofKind(this.quantities.get(path), kind, gap) ?? missing(kind, gapAt(gap(), this.data(keyOf(path))));
  }

  /**
   * The same where it may be left out: undefined when nothing is written. What is written and cannot be read is missing:
   * a load that nobody can read is no load of nothing.
   */
  optional<const K extends Kind>(path: string, kind: K, what: string, of: string): Value<K> | undefined {
    const gap = (): Gap => this.gap(path, what, of);
    const found = ofKind(this.quantities.get(path), kind, gap);
    if (found || !this.has(keyOf(path))) return found;
    return missing(kind, unread(gap()));
  }

  /** What is not written at a path, and where it belongs: in the survey where that describes what it is of. */
  gap(path: string, what: string, of: string): Gap {
    return { path: keyOf(path), what, of, ...this.venue?.belongs(keyOf(path)) };
  }

  /** Whether `none` is written there: that there is none is an answer, and no gap. */
  isNone(path: string): boolean {
    return this.data(path) === "none";
  }

  place(path: string): Place {
    noteAt(LOOK.place, path);
    let here = path;
    while (here !== "") {
      const found = this.#placed.keys.get(here) ?? this.#placed.places.get(here);
      if (found) return found;
      here = here.includes(".") ? here.slice(0, here.lastIndexOf(".")) : "";
    }
    return this.#placed.places.get("") ?? START;
  }

  /**
   * @param meant what was most likely meant in place of the value at `path`, or what could stand there
   * @param where what those take the place of, when it is not the value itself
   */
  complain(
    path: string,
    says: string,
    mend: string,
    meant: { readonly [each in "edit" | "standIn"]?: string } & { readonly offers?: readonly string[] } = {},
    where?: Place,
  ): void {
    // Of what is copied it is told where it is written.
    if (this.#placed.copied?.has(path)) return;
    const place = this.#placed.places.get(path) ?? this.place(path);
    const { offers = [], ...others } = meant;
    const put = (text: string) => ({ place: where ?? place, text });
    const edits = Object.fromEntries(Object.entries(others).map(([each, text]) => [each, put(text)]));
    const offered = offers.length === 0 ? {} : { offers: offers.map(put) };
    this.mistakes.push({ rule: "document.parts", path, place, says, mend, ...edits, ...offered });
  }

  /**
   * A name that is none of those that are known: with the nearest of them, else with all.
   * @param any one that could stand there where none is near
   */
  unknown(path: string, name: string, says: string, known: readonly string[], any = known[0]): void {
    // A name is never put right without asking: another part may be as near.
    const [near, ...offers] = nearOnes(name, known);
    const others = [...offers, ...known].filter((each, index, all) => each !== near && all.indexOf(each) === index);
    const mend =
      near === undefined
        ? choices(known)
        : `Write \`${near}\`.${others.length === 0 ? "" : ` ${choices(others, undefined, 8)}`}`;
    const meant = near !== undefined ? { edit: near, offers } : any !== undefined ? { standIn: any } : {};
    this.complain(path, says, mend, meant, this.#placeOfName(path, name));
  }

  /** Where a name stands: as the value, as the `part` of an entry, or as a key. */
  #placeOfName(path: string, name: string): Place | undefined {
    const { places, keys } = this.#placed;
    if (this.text(path) === name) return places.get(path);
    if (this.text(`${path}.part`) === name) return places.get(`${path}.part`);
    return keys.get(`${path}.${name}`) ?? keys.get(path);
  }

  /** The part named at `path`, of one of `kinds`; a name that is not in the catalogue is the author's mistake. */
  part(path: string, kinds: readonly string[]): Part | undefined {
    const name = this.text(path);
    if (name === undefined) return undefined;
    const part = this.parts.get(name);
    const fitting = (): readonly string[] =>
      [...this.parts.values()]
        .filter((each) => kinds.length === 0 || kinds.includes(each.kind))
        .map((each) => each.name);
    if (!part) this.unknown(path, name, `The part \`${name}\` is not in the catalogue.`, fitting());
    else if (kinds.length > 0 && !kinds.includes(part.kind)) {
      this.unknown(
        path,
        name,
        `The part \`${name}\` is of the kind ${part.kind}; a part of the kind ${kinds.join(" or ")} belongs here.`,
        fitting(),
      );
      return undefined;
    }
    return part;
  }
}

/** The part an entry of a list names, on its own or under `part`; "" when it names none. */
export function partName(entry: Data): string {
  const named =
    entry !== null && typeof entry === "object" && !Array.isArray(entry) ? (entry as Record<string, Data>).part : entry;
  return typeof named === "string" ? named : "";
}

/** A key stands for both halves of a pair. */
const keyOf = (path: string): string => path.replace(/\.[12]$/u, "");

const unread = (gap: Gap): Gap => ({ ...gap, because: `${gap.of}: the ${gap.what} cannot be read as it is written.` });

/**
 * Kinds that may be written in place of another: a load as a mass or a force, a power in W or VA, a feeder's drop in
 * volts or as a share, a shutter as a time or an angle. Whoever asks converts them.
 */
const ALSO: Partial<Readonly<Record<Kind, Kind>>> = {
  mass: "force",
  power: "apparent-power",
  ratio: "voltage",
  time: "angle",
};

/**
 * What is written, as far as it is of the kind asked for: a cable among hardware has a mass for each metre, and no mass.
 * @param gapOf asked only where it is of another: most of what is looked for is there
 */
function ofKind<K extends Kind>(found: Known | undefined, kind: K, gapOf: () => Gap): Value<K> | undefined {
  if (!found || found.kind === kind || found.kind === ALSO[kind]) return found as Known<K> | undefined;
  const gap = gapOf();
  const because = `${gap.of}: the ${gap.what} is ${kinds[found.kind].name}, and ${kinds[kind].name} is needed.`;
  return missing(kind, { ...gap, because });
}

/** Why there is no quantity where this stands: nothing is written, or nothing that can be read. */
const gapAt = (gap: Gap, data: Data | undefined): Gap =>
  typeof data === "string" || typeof data === "number" ? unread(gap) : gap;

/** What a part does not say, and where in the catalogue it belongs. */
export const partGap = (part: Part, path: string, what: string): Gap => ({
  path: `${part.name}.${keyOf(path)}`,
  file: part.file,
  what,
  of: `The part ${part.name} (${part.file})`,
});

/** What a part says at a path of keys. */
const saidOf = (part: Part, path: string): Data | undefined =>
  keyOf(path)
    .split(".")
    .reduce<Data | undefined>(
      (here, key) =>
        here !== null && typeof here === "object" && !Array.isArray(here)
          ? (here as Readonly<Record<string, Data>>)[key]
          : undefined,
      part.data,
    );

/** What a sentence is about, and where in the document its part is named. */
export type Named = string | { readonly label: string; readonly path: string };

/** A quantity of a part; missing by name when the catalogue does not have it. */
export function partValue<const K extends Kind>(
  part: Part | undefined,
  path: string,
  kind: K,
  what: string,
  named: Named,
): Value<K> {
  const found = part && ofKind(part.quantities.get(path), kind, () => partGap(part, path, what));
  if (found) return found;
  if (part) return missing(kind, gapAt(partGap(part, path, what), saidOf(part, path)));
  const { label: of, path: at } = typeof named === "string" ? { label: named, path: "" } : named;
  return missing(kind, {
    path: at,
    what: "part",
    of,
    because: `${of} names no known part, so its ${what} is not known.`,
  });
}

/** The same where the part may leave it out: undefined when it says nothing of it, missing when that cannot be read. */
export function partOptional<const K extends Kind>(
  part: Part | undefined,
  path: string,
  kind: K,
  what: string,
): Value<K> | undefined {
  const found = part && ofKind(part.quantities.get(path), kind, () => partGap(part, path, what));
  if (found || !part || saidOf(part, path) === undefined) return found;
  return missing(kind, unread(partGap(part, path, what)));
}
