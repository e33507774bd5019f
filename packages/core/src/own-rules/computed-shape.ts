import { readMarkdown } from "../document/markdown.js";
import { readYaml } from "../document/yaml.js";
import { Build } from "../model/build.js";
import { Reader } from "../model/reader.js";
import { readHouseStandard } from "../repository/house-standard.js";
import { readStock } from "../repository/stock.js";
import { over, type Shape, shape } from "./shape.js";
import { writtenShape } from "./written-shape.js";

/** Stands for every name an author may give. */
const ANY = "any-name";

/** One of everything that has computed values, with nothing written down: the values are missing and known by kind. */
const ONE_OF_EACH = `faces: {${ANY}: {support: flown}}
power: {circuits: {${ANY}: {}}, runs: {${ANY}: {from: ${ANY}}}}
data: {chains: {${ANY}: {}}}
picture: {path: [{}], at: {${ANY}: "0,0"}}
rigging: {bars: {${ANY}: {hangs: {${ANY}: {}}}}}
`;

function emptyBuild(): Build {
  const reader = new Reader(readYaml(ONE_OF_EACH), new Map(), new Map());
  return new Build(reader, readMarkdown(""), {
    file: "",
    standard: readHouseStandard(undefined).standard,
    stock: readStock(undefined),
    files: [],
    sameName: [],
    today: "",
    promises: [],
    rules: [],
    findings: new Map(),
    mistakes: [],
  });
}

interface Growing {
  readonly properties: Map<string, Growing>;
  leaf?: Shape;
}

const grown = ({ leaf, properties }: Growing): Shape => {
  if (leaf) return leaf;
  const named = [...properties].filter(([key]) => key !== ANY && !/^\d+$/u.test(key));
  const [others, items] = [properties.get(ANY), [...properties].find(([key]) => /^\d+$/u.test(key))?.[1]];
  return shape([items ? "array" : "object"], {
    properties: new Map(named.map(([key, each]) => [key, grown(each)])),
    ...(others ? { others: grown(others) } : {}),
    ...(items ? { items: grown(items) } : {}),
  });
};

/** What is computed for a build, by the paths it is quoted with. */
function computedShape(): Shape {
  const top: Growing = { properties: new Map() };
  for (const [path, value] of emptyBuild().values) {
    let here = top;
    for (const key of path.split(".")) {
      const below: Growing = here.properties.get(key) ?? { properties: new Map() };
      here.properties.set(key, below);
      here = below;
    }
    here.leaf = shape(["number"], { kinds: [value.kind] });
  }
  return grown(top);
}

let whole: Shape | undefined;

/** Everything a rule without code can look at: what is written and, over it, what is computed. */
export function buildShape(): Shape {
  whole ??= over(writtenShape(), computedShape());
  return whole;
}
