import fc from "fast-check";
import { stringify } from "yaml";
import { fromEntries, NAMES, oddValue } from "./odd.js";

/** One change of a tree: which node, counted through, and what is done to it. */
interface Change {
  readonly at: number;
  readonly how: "put" | "drop" | "rename" | "wrap" | "list" | "twin" | "swap";
  readonly name: string;
  readonly value: unknown;
}

const change: fc.Arbitrary<Change> = fc.record({
  at: fc.nat(400),
  how: fc.constantFrom("put", "put", "put", "drop", "rename", "wrap", "list", "twin", "swap"),
  name: fc.constantFrom(...NAMES),
  value: oddValue,
});

type Entries = readonly (readonly [string, unknown])[];

function entriesAfter(entries: Entries, index: number, { how, name, value }: Change): Entries {
  const [key, old] = entries[index] as readonly [string, unknown];
  const put = (...made: Entries): Entries => [...entries.slice(0, index), ...made, ...entries.slice(index + 1)];
  if (how === "drop") return put();
  if (how === "rename") return put([name, old]);
  if (how === "wrap") return put([key, fromEntries([[name, old]])]);
  if (how === "list") return put([key, [old, old]]);
  if (how === "twin") return put([key, old], [name, old]);
  if (how === "swap") return put([key, entries[(index + 1) % entries.length]?.[1]]);
  return put([key, value]);
}

const isTree = (node: unknown): node is object => typeof node === "object" && node !== null;

const sizeOf = (node: unknown): number =>
  isTree(node) ? Object.values(node).reduce((sum: number, each) => sum + 1 + sizeOf(each), 0) : 0;

/** The tree with the change made at its node of that number. */
export function changedTree(node: unknown, given: Change): unknown {
  const size = sizeOf(node);
  return size === 0 ? node : changedAt(node, given.at % size, given);
}

function changedAt(node: unknown, number: number, given: Change): unknown {
  if (!isTree(node)) return node;
  const entries: Entries = Object.entries(node);
  let passed = 0;
  for (const [index, [key, inner]] of entries.entries()) {
    const size = 1 + sizeOf(inner);
    if (number < passed + size) {
      const made =
        number === passed
          ? entriesAfter(entries, index, given)
          : entries.map((each, place) =>
              place === index ? ([key, changedAt(inner, number - passed - 1, given)] as const) : each,
            );
      return Array.isArray(node) ? made.map(([, value]) => value) : fromEntries(made);
    }
    passed += size;
  }
  return node;
}

/** Trees made from one of these by a few changes. */
export const changedTrees = (from: readonly unknown[], most = 4): fc.Arbitrary<unknown> =>
  fc
    .tuple(fc.constantFrom(...from), fc.array(change, { minLength: 1, maxLength: most }))
    .map(([tree, changes]) => changes.reduce<unknown>(changedTree, tree));

/** YAML in block or in flow style, or JSON, which is YAML 1.2 too. */
export const written = (tree: unknown, form: "block" | "flow" | "json"): string => {
  if (form === "json") return JSON.stringify(tree) ?? "null";
  return stringify(tree, {
    aliasDuplicateObjects: false,
    collectionStyle: form,
    lineWidth: form === "flow" ? 0 : 80,
  }).trimEnd();
};

export const form: fc.Arbitrary<"block" | "flow" | "json"> = fc.constantFrom("block", "flow", "json");
