import { type Data, type Placed, readWholeYaml, rememberYaml, type SourceFile } from "@plumbmark/core";
import type { Store } from "../engine/cache/store.js";

// Parts, stock and house standards are the same from one inspection to the next: what was read of them is cached by
// git's name of their content.

/** A file whose content has a name of git's. */
type Named = Pick<SourceFile, "text"> & { readonly id?: string };

interface Reading {
  readonly data: Data;
  /** Places of values and keys, as JSON: most are only looked at to tell a mistake. */
  readonly places: string;
}

type Places = Placed["places"];

/** JSON knows neither infinity nor minus nought. */
const isExact = (data: Data): boolean =>
  typeof data === "number"
    ? Number.isFinite(data) && !Object.is(data, -0)
    : data === null || typeof data !== "object" || Object.values(data).every(isExact);

/** Objects without a prototype, as they were read. */
function bare(data: Data): Data {
  if (data === null || typeof data !== "object") return data;
  if (Array.isArray(data)) return data.map(bare);
  const made = Object.create(null) as Record<string, Data>;
  for (const [key, value] of Object.entries(data)) made[key] = bare(value as Data);
  return made;
}

export const cachedReading = ({ data, places, keys }: Placed): Reading => ({
  data,
  places: JSON.stringify([[...places], [...keys]]),
});

/** The reading again. */
export function readingOf({ data, places }: Reading): Placed {
  let both: readonly [Places, Places] | undefined;
  const read = (): readonly [Places, Places] => {
    both ??= (JSON.parse(places) as [[], []]).map((each) => new Map(each)) as unknown as [Places, Places];
    return both;
  };
  return {
    data: bare(data),
    get places() {
      return read()[0];
    },
    get keys() {
      return read()[1];
    },
    mistakes: [],
  };
}

/** Looks up what a file was read as, or reads it and keeps that; one with a mistake is read each time. */
export function recallReading({ id, text }: Named, store: Store | undefined): void {
  if (!store || id === undefined) return;
  const key = `yaml-${id}`;
  const cached = store.get(key) as Reading | undefined;
  if (cached) rememberYaml(text, readingOf(cached));
  const placed = readWholeYaml(text);
  if (!cached && placed.mistakes.length === 0 && isExact(placed.data)) store.set(key, cachedReading(placed));
}
