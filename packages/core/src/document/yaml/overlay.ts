import type { Place } from "../place.js";
import { START } from "../place.js";
import { type Data, join, type Placed } from "./yaml.js";

/**
 * A change laid over the front matter of a document, as an operation of JSON Patch (RFC 6902): `path` is a JSON Pointer
 * (RFC 6901), such as `/power/circuits/stage-4/breaker`. `add` into a list puts the value before the item of that index,
 * or at its end for `-`.
 */
export type ValueChange =
  | { readonly op: "add" | "replace"; readonly document: string; readonly path: string; readonly value: Data }
  | { readonly op: "remove"; readonly document: string; readonly path: string };

type Group = { [key: string]: Data };

const isList = (data: Data | undefined): data is Data[] => Array.isArray(data);
const isGroup = (data: Data | undefined): data is Group =>
  data !== null && typeof data === "object" && !Array.isArray(data);

/** A copy that shares nothing; groups have no prototype, so no key can reach one. */
function copied(data: Data): Data {
  if (isList(data)) return data.map(copied);
  if (!isGroup(data)) return data;
  const made = Object.create(null) as Group;
  for (const [key, value] of Object.entries(data)) made[key] = copied(value);
  return made;
}

function stepsOf({ path }: ValueChange): readonly string[] {
  if (path === "") return [];
  if (!path.startsWith("/"))
    throw new RangeError(`\`${path}\` is no JSON Pointer: it has to be empty or begin with /.`);
  return path
    .slice(1)
    .split("/")
    .map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));
}

function refuse({ document, path }: ValueChange, why: string): never {
  throw new RangeError(`${document}: nothing can be laid over \`${path}\`: ${why}.`);
}

/** Index of a step in a list; `-` is behind its last item. */
function indexIn(list: readonly Data[], step: string, change: ValueChange): number {
  const most = change.op === "add" ? list.length : list.length - 1;
  const index = change.op === "add" && step === "-" ? list.length : /^(?:0|[1-9]\d*)$/u.test(step) ? Number(step) : -1;
  return index >= 0 && index <= most ? index : refuse(change, `the list has ${list.length} items`);
}

/** Front matter that is being laid over: the data is a copy of its own, and the places are moved with it. */
class Overlay {
  readonly places: Map<string, Place>;
  readonly keys: Map<string, Place>;
  mistakes: Placed["mistakes"];
  data: Data;

  constructor(placed: Placed) {
    this.data = copied(placed.data);
    this.places = new Map(placed.places);
    this.keys = new Map(placed.keys);
    this.mistakes = placed.mistakes;
  }

  apply(change: ValueChange): void {
    const steps = stepsOf(change);
    const last = steps.at(-1);
    if (last === undefined) {
      if (change.op === "remove") refuse(change, "a document has a front matter");
      this.#forget("");
      this.data = copied(change.value);
      this.#put("", this.data, this.places.get("") ?? START);
      return;
    }
    const [parent, path] = this.#parentOf(steps.slice(0, -1), change);
    if (isList(parent)) this.#inList(parent, path, indexIn(parent, last, change), change);
    else if (isGroup(parent)) this.#inGroup(parent, path, last, change);
    else refuse(change, `${path === "" ? "the front matter" : `\`${path}\``} is neither a group nor a list`);
  }

  #parentOf(steps: readonly string[], change: ValueChange): readonly [Data, string] {
    let [here, path]: [Data, string] = [this.data, ""];
    for (const step of steps) {
      const index = isList(here) ? indexIn(here, step, { ...change, op: "remove" }) : 0;
      const next: Data | undefined = isList(here)
        ? here[index]
        : isGroup(here) && Object.hasOwn(here, step)
          ? here[step]
          : undefined;
      if (next === undefined) return refuse(change, `there is no \`${join(path, step)}\``);
      path = join(path, isList(here) ? index + 1 : step);
      here = next;
    }
    return [here, path];
  }

  #inGroup(group: Group, path: string, key: string, change: ValueChange): void {
    const inner = join(path, key);
    const there = Object.hasOwn(group, key);
    if (change.op !== "add" && !there) refuse(change, `there is no \`${inner}\``);
    const place = this.places.get(inner) ?? this.#near(path);
    this.#forget(inner);
    if (change.op === "remove") {
      this.keys.delete(inner);
      delete group[key];
      return;
    }
    group[key] = copied(change.value);
    if (!there) this.keys.set(inner, place);
    this.#put(inner, group[key] as Data, place);
  }

  #inList(list: Data[], path: string, index: number, change: ValueChange): void {
    const inner = join(path, index + 1);
    const place = this.places.get(inner) ?? this.#near(path);
    if (change.op === "replace") this.#forget(inner);
    else this.#shift(path, list.length, index, change.op === "add" ? 1 : -1);
    if (change.op === "remove") list.splice(index, 1);
    else {
      const value = copied(change.value);
      list.splice(index, change.op === "add" ? 0 : 1, value);
      this.#put(inner, value, place);
    }
  }

  /** What is new stands where it was put in: at the nearest place of the text. */
  #near(path: string): Place {
    for (let here = path; here !== ""; here = here.includes(".") ? here.slice(0, here.lastIndexOf(".")) : "") {
      const found = this.keys.get(here) ?? this.places.get(here);
      if (found) return found;
    }
    return this.places.get("") ?? START;
  }

  /** Everything within a value, and the value itself, is of the place given. */
  #put(path: string, data: Data, place: Place): void {
    if (data !== null) this.places.set(path, place);
    else if (path !== "") this.places.set(path, this.keys.get(path) ?? place);
    const inner = isList(data)
      ? data.map((item, index) => [join(path, index + 1), item] as const)
      : isGroup(data)
        ? Object.entries(data).map(([key, value]) => [join(path, key), value] as const)
        : [];
    for (const [at, value] of inner) {
      if (isGroup(data)) this.keys.set(at, place);
      this.#put(at, value, place);
    }
  }

  /** Forgets the places of a value and of everything in it, and the mistakes made there. The place of its key stays. */
  #forget(path: string): void {
    const within = path === "" ? "" : `${path}.`;
    for (const places of [this.places, this.keys])
      for (const each of [...places.keys()]) if (each !== path && each.startsWith(within)) places.delete(each);
    this.places.delete(path);
    this.mistakes = this.mistakes.filter((each) => each.path !== path && !each.path.startsWith(within));
  }

  /** Items from an index on move by one; the one that is taken out is forgotten. */
  #shift(path: string, length: number, index: number, by: 1 | -1): void {
    if (by === -1) this.#forget(join(path, index + 1));
    const moving = Array.from({ length: length - index }, (_, each) => index + each + 1).slice(by === -1 ? 1 : 0);
    for (const item of by === 1 ? moving.reverse() : moving) {
      const [from, to] = [join(path, item), join(path, item + by)];
      for (const places of [this.places, this.keys])
        for (const [each, place] of [...places])
          if (each === from || each.startsWith(`${from}.`)) {
            places.delete(each);
            places.set(to + each.slice(from.length), place);
          }
    }
  }
}

/** What an approval is of: not itself, nor the step from `for-build` to `as-built`. */
function said(data: Data): string {
  if (!isGroup(data)) return JSON.stringify(data);
  const { approved: _, status, ...rest } = data;
  return JSON.stringify([status === "as-built" ? "for-build" : (status ?? null), rest]);
}

/**
 * Front matter with changes laid over it, one after another. Places stay those of the text; what is new has the place of
 * what it replaces, or of what it is put into.
 * @throws RangeError when the front matter cannot be read, or a change leads to nothing
 */
export function laidOver(placed: Placed | undefined, changes: readonly [ValueChange, ...ValueChange[]]): Placed {
  if (!placed || placed.data === null) return refuse(changes[0], "the front matter cannot be read");
  const overlay = new Overlay(placed);
  for (const change of changes) overlay.apply(change);
  const { data, places, keys, mistakes } = overlay;
  return { data, places, keys, mistakes, laidOver: placed.laidOver === true || said(data) !== said(placed.data) };
}
