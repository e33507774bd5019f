import type { Kind } from "@plumbmark/calc";
import { kindNames, standInFor } from "./advice.js";

/** A node of one of our schemas, as far as it is told to people. */
export interface SchemaNode {
  readonly $ref?: string;
  readonly title?: string;
  readonly description?: string;
  readonly found?: string;
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly quantity?: string | readonly string[];
  readonly pair?: string;
  readonly range?: string;
  readonly refers?: string;
  readonly anyOf?: readonly SchemaNode[];
  readonly items?: SchemaNode;
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly additionalProperties?: SchemaNode | boolean;
  readonly $defs?: Readonly<Record<string, SchemaNode>>;
}

/** A node with what it refers to laid under it: what stands beside a `$ref` is nearer to the key. */
export function resolved(node: SchemaNode, root: SchemaNode): SchemaNode {
  const name = node.$ref?.replace(/^#\/\$defs\//u, "");
  if (name === undefined) return node;
  const { $ref: _, ...own } = node;
  return { ...resolved(root.$defs?.[name] ?? {}, root), ...own };
}

const typeWords = (type: SchemaNode["type"]): string => {
  const [first = "string"] = [type ?? "string"].flat();
  const words: Readonly<Record<string, string>> = {
    boolean: "true or false",
    integer: "a whole number",
    number: "a number",
    array: "a list",
    object: "a group of keys",
  };
  return words[first] ?? "a text";
};

/** What may be written for a key, in words, with an example where it is a quantity: `a mass in kg or lb, such as 10 kg`. */
export function valueWords(given: SchemaNode, root: SchemaNode, practice?: "us" | "iec"): string {
  const node = resolved(given, root);
  const kind = node.quantity ?? node.pair ?? node.range;
  if (kind !== undefined) {
    const of = [kind].flat() as Kind[];
    const [words, one] = [kindNames(of), standInFor(of, practice)];
    if (node.pair !== undefined) return `two, joined by x, each ${words}, such as ${one} x ${one}`;
    return node.range === undefined ? `${words}, such as ${one}` : `from and to, ${words}, such as ${one} to ${one}`;
  }
  if (node.enum !== undefined)
    return node.enum
      .map(String)
      .join(", ")
      .replace(/, ([^,]*)$/u, " or $1");
  if (node.const !== undefined) return String(node.const);
  if (node.anyOf !== undefined)
    return [...new Set(node.anyOf.map((each) => valueWords(each, root, practice)))].join(", or ");
  if (node.refers !== undefined) return `the name of ${/^[aeiou]/u.test(node.refers) ? "an" : "a"} ${node.refers}`;
  if (node.items !== undefined) return `a list, each ${valueWords(node.items, root, practice)}`;
  return typeWords(node.type);
}
