import type { Known, Value } from "@plumbmark/calc";
import { type Data, join } from "../document/yaml/yaml.js";
import type { Thing } from "../inspection/judging/rule.js";
import type { Build } from "../model/build.js";
import { asMass } from "../model/reading/as-mass.js";
import { once } from "../model/reading/once.js";
import { buildShape } from "./computed-shape.js";
import { shapeAt } from "./shape.js";

/** What is written and computed for one thing; quantities are numbers in the unit their kind is kept in. */
export interface Facts {
  readonly data: unknown;
  /** Paths below the thing whose values cannot be told. */
  readonly untold: ReadonlySet<string>;
}

/** What may be written as a mass or as a force is compared as a mass. */
export function weighed(value: Value, path: string): Value {
  if (value.kind !== "force") return value;
  const kinds = shapeAt(buildShape(), path === "" ? [] : path.split("."))?.kinds ?? [];
  return kinds.includes("mass") ? asMass(value as Value<"force">) : value;
}

type Tree = Record<string, unknown>;

const isTree = (data: unknown): data is Tree => typeof data === "object" && data !== null && !Array.isArray(data);

/** A tree without a prototype: a name such as `__proto__.x` must not reach what every object inherits. */
const treeOf = (entries: readonly (readonly [string, unknown])[]): Tree => {
  const tree = Object.create(null) as Tree;
  for (const [key, value] of entries) tree[key] = value;
  return tree;
};

function written(build: Build, data: Data | undefined, path: string): unknown {
  const { quantities } = build.reader;
  if (Array.isArray(data)) return data.map((each: Data, index) => written(build, each, join(path, index + 1)));
  if (isTree(data))
    return treeOf(Object.entries(data).map(([key, each]) => [key, written(build, each as Data, join(path, key))]));
  const [single, first, second] = [quantities.get(path), quantities.get(`${path}.1`), quantities.get(`${path}.2`)];
  if (single) return (weighed(single, path) as Known).value;
  return first && second ? [first.value, second.value] : data;
}

/**
 * Puts a computed value in its place, over what is written under the same name. One that cannot be told makes no group
 * of keys that nobody wrote: whether it is there would be answered wrongly.
 */
function put(tree: unknown, keys: readonly string[], value: Value): void {
  let here = tree;
  for (const key of keys.slice(0, -1)) {
    if (Array.isArray(here)) here = here[Number(key) - 1];
    else if (isTree(here)) {
      if (!isTree(here[key]) && !Array.isArray(here[key])) {
        if (!value.known) return;
        here[key] = treeOf([]);
      }
      here = here[key];
    }
  }
  const last = keys.at(-1) as string;
  if (!isTree(here)) return;
  if (value.known) here[last] = value.value;
  else delete here[last];
}

interface Whole {
  readonly tree: unknown;
  readonly untold: readonly string[];
}

/** The document with the values whose paths begin with some words, or with all of them put in: computing is what takes the time. */
const wholeOf = (build: Build, words: readonly string[] | "all"): Whole =>
  once(build, `facts ${words === "all" ? "" : words.join(" ")}`, () => madeOf(build, words));

function madeOf(build: Build, words: readonly string[] | "all"): Whole {
  const { reader } = build;
  // What a rule does not look at need not be copied.
  const tree =
    words === "all"
      ? written(build, reader.data(""), "")
      : treeOf(words.flatMap((word) => (reader.has(word) ? [[word, written(build, reader.data(word), word)]] : [])));
  const values = words === "all" ? [...build.values] : words.flatMap((word) => [...build.valuesUnder(word)]);
  for (const [path, value] of values) put(tree, path.split("."), value);
  return { tree, untold: values.filter(([, value]) => !value.known).map(([path]) => path) };
}

export const at = (tree: unknown, keys: readonly string[]): unknown =>
  keys.reduce<unknown>((here, key) => {
    if (Array.isArray(here)) return here[Number(key) - 1];
    return isTree(here) && Object.hasOwn(here, key) ? here[key] : undefined;
  }, tree);

/** @param words what a rule about the build itself looks at: the first words of its paths */
export function factsOf(build: Build, { path }: Thing, words: readonly string[] | "all"): Facts {
  const { tree, untold } = wholeOf(build, path === "" ? words : [path.split(".", 1)[0] as string]);
  const prefix = path === "" ? "" : `${path}.`;
  const below = untold.filter((each) => each.startsWith(prefix)).map((each) => each.slice(prefix.length));
  return { data: at(tree, path === "" ? [] : path.split(".")) ?? {}, untold: new Set(below) };
}
