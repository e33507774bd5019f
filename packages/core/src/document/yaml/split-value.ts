import { isScalar, type Node } from "yaml";

/** A value that a comma inside braces has cut in two; offsets count from the beginning of the YAML. */
export interface SplitValue {
  readonly from: number;
  readonly to: number;
  readonly says: string;
  readonly mend: string;
  /** What was most likely meant. */
  readonly better: string;
  /** Nothing else can be meant. */
  readonly sure: boolean;
}

interface Item {
  readonly key: Node;
  readonly value: unknown;
}

const THOUSANDS = /^\d{1,3}$/u;

/** Words and lengths that stand between commas without a key of their own: `25 ft`, `ac-locking-16`. */
const BARE = /^(?:\d+(?:\.\d+)?\s*[a-z]+\d?|[a-z][\w.-]*)$/iu;

/** Finds `{lengths: 25 ft, 35 ft}`: a list without its brackets, whose second entry becomes a key with nothing behind it. */
function listFrom(
  items: readonly Item[],
  index: number,
  yaml: string,
): { readonly told: SplitValue; readonly rest: readonly Node[] } | undefined {
  const value = items[index]?.value;
  if (!isScalar(value) || !value.range || !BARE.test(String(value.value))) return undefined;
  const rest: Node[] = [];
  for (const { key } of items.slice(index + 1)) {
    const isAlone = isScalar(key) && key.range && /^\s*[,}]/u.test(yaml.slice(key.range[1]));
    if (!isAlone || !BARE.test(String(key.value))) break;
    rest.push(key);
  }
  const last = rest.at(-1)?.range;
  if (!last) return undefined;
  const [from, to] = [value.range[0], last[1]];
  const written = yaml.slice(from, to);
  const better = `[${written}]`;
  const says = `\`${written}\` has a comma in it, and inside braces a comma ends a value.`;
  return { told: { from, to, says, mend: `Write a list in brackets: \`${better}\`.`, better, sure: false }, rest };
}

/**
 * Finds `{length: 0,9 m}`: inside braces a comma ends a value, so that `9 m` becomes a key with nothing behind it. The
 * halves are told by the keys of the items: the first with what is wrong, the second as the rest of it.
 */
export function joinedOf(items: readonly Item[], yaml: string): ReadonlyMap<Node, SplitValue | "rest"> {
  const found = new Map<Node, SplitValue | "rest">();
  for (const [index, { key, value }] of items.entries()) {
    const list = listFrom(items, index, yaml);
    if (list) {
      found.set(key, list.told);
      for (const each of list.rest) found.set(each, "rest");
      continue;
    }
    const next = items[index + 1];
    if (!next || !isScalar(value) || !isScalar(next.key) || !/^-?\d+$/u.test(String(value.value))) continue;
    const rest = String(next.key.value);
    const isNothing = next.value === null || (isScalar(next.value) && next.value.value === null);
    if (!isNothing || !/^\d+(?:\.\d+)?(?:\s*\D.*)?$/u.test(rest)) continue;
    const from = value.range?.[0] ?? 0;
    const to = (next.key.range?.[1] ?? from) as number;
    const written = yaml.slice(from, to);
    if (!/^-?\d+,\s*\d/u.test(written)) continue;
    found.set(key, splitValue(written, String(value.value), rest, from, to));
    found.set(next.key, "rest");
  }
  return found;
}

function splitValue(written: string, whole: string, rest: string, from: number, to: number): SplitValue {
  const says = `\`${written}\` has a comma in it, and inside braces a comma ends a value.`;
  const unit = /^\d+(?:\.\d+)?\s*(\D.*)$/u.exec(rest)?.[1];
  if (unit === undefined)
    return { from, to, says, mend: `Put it in quotes: \`"${written}"\`.`, better: `"${written}"`, sure: false };
  const isThousands = THOUSANDS.test(whole) && !/^-?0/u.test(whole) && /^\d{3}(?!\d)/u.test(rest);
  const better = `${whole}${isThousands ? "" : "."}${rest}`;
  const mend = isThousands
    ? `Write \`${better}\`, without a mark between thousands; a decimal has a point.`
    : `Write \`${better}\`: a decimal has a point.`;
  return { from, to, says, mend, better, sure: !/^\d{3}(?!\d)/u.test(rest) };
}
