import type { Kind } from "@plumbmark/calc";
import { computedPaths } from "../generated/computed-paths.js";
import { ANY } from "./any-name.js";
import { overlaidShape, type SchemaShape, schemaShape } from "./shape.js";
import { writtenShape } from "./written-shape.js";

interface Growing {
  readonly properties: Map<string, Growing>;
  leaf?: SchemaShape;
}

const grown = ({ leaf, properties }: Growing): SchemaShape => {
  if (leaf) return leaf;
  const named = [...properties].filter(([key]) => key !== ANY && !/^\d+$/u.test(key));
  const [others, items] = [properties.get(ANY), [...properties].find(([key]) => /^\d+$/u.test(key))?.[1]];
  return schemaShape([items ? "array" : "object"], {
    properties: new Map(named.map(([key, each]) => [key, grown(each)])),
    ...(others ? { others: grown(others) } : {}),
    ...(items ? { items: grown(items) } : {}),
  });
};

/** What is computed for a build, by the paths it is quoted with, which are written down when Plumbmark is built. */
function computedShape(): SchemaShape {
  const top: Growing = { properties: new Map() };
  for (const [path, kind] of computedPaths) {
    let here = top;
    for (const key of path.split(".")) {
      const below: Growing = here.properties.get(key) ?? { properties: new Map() };
      here.properties.set(key, below);
      here = below;
    }
    here.leaf = schemaShape(["number"], { kinds: [kind as Kind] });
  }
  return grown(top);
}

let whole: SchemaShape | undefined;

/** Everything a rule without code can look at: what is written and, over it, what is computed. */
export function buildShape(): SchemaShape {
  whole ??= overlaidShape(writtenShape(), computedShape());
  return whole;
}
