import { resolved, type SchemaNode, valueWords } from "@plumbmark/core";

/** Behind this column stand the comments. */
const COLUMN = 28;

const sentence = (text: string): string => text.replace(/\.$/u, "");

/** What a key means, what may stand there, and where it is found: `mass: a mass in kg or lb, such as 10 kg; found: tape`. */
function comment(node: SchemaNode, root: SchemaNode, practice: string | undefined): string {
  const { title, description, found, properties, additionalProperties } = resolved(node, root);
  const isGroup = properties !== undefined || typeof additionalProperties === "object";
  const about = [title, isGroup ? "" : valueWords(node, root, practice === "iec" ? "iec" : "us")]
    .filter(Boolean)
    .join(": ");
  return [about, description && sentence(description), found && `found: ${found}`].filter(Boolean).join("; ");
}

/**
 * The keys of a node: those it has, those it may have instead of a plain value, or, where each has a name of its own, one
 * that stands for all.
 */
function keysOf(node: SchemaNode, root: SchemaNode): readonly (readonly [string, SchemaNode])[] {
  const { properties = {}, additionalProperties: each, anyOf = [] } = resolved(node, root);
  const named = typeof each === "object" && resolved(each, root).properties !== undefined;
  const instead = anyOf.flatMap((variant) => Object.entries(resolved(variant, root).properties ?? {}));
  return [...Object.entries(properties), ...instead, ...(named ? [["NAME", each] as const] : [])];
}

/**
 * Every key of a node as lines of YAML that are commented out, with what it means behind it: a mark of its own stands in
 * front of each, and taking it away leaves the key where it belongs.
 * @param practice whose units the examples have
 * @param left keys that are written otherwise
 */
export function linesOfKeys(
  node: SchemaNode,
  root: SchemaNode,
  indent: string,
  practice: string | undefined,
  left: ReadonlySet<string> = new Set(),
  depth = "",
): readonly string[] {
  return keysOf(node, root)
    .filter(([key]) => depth !== "" || !left.has(key))
    .flatMap(([key, each]) => {
      const said = comment(each, root, practice);
      const head = `${indent}#${depth}${key}:`;
      const own = said === "" ? head : `${head.padEnd(COLUMN)} # ${said}`;
      return [own, ...linesOfKeys(each, root, indent, practice, left, `${depth}  `)];
    });
}
