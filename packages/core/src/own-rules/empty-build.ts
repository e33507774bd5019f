import { readMarkdown } from "../document/body/markdown.js";
import { readYaml } from "../document/yaml/yaml.js";
import { Build } from "../model/build.js";
import { Reader } from "../model/reading/reader.js";
import { readHouseStandard } from "../repository/house-standard.js";
import { readStock } from "../repository/stock.js";
import { ANY } from "./any-name.js";

/** One of everything that has computed values, with nothing written down: the values are missing and known by kind. */
const ONE_OF_EACH = `venue: ${ANY}
also-bring: {${ANY}: 1}
faces: {${ANY}: {support: flown}}
power: {circuits: {${ANY}: {from: ${ANY}}}, runs: {${ANY}: {from: ${ANY}}}}
data: {chains: {${ANY}: {}}}
picture: {path: [{}], at: {${ANY}: {parts: [{columns: 1, at: "0,0"}]}}}
rigging: {bars: {${ANY}: {hangs: {${ANY}: {point: ${ANY}}}}}}
`;

/** A build of one of everything, whose values are all missing. */
export function emptyBuild(): Build {
  const reader = new Reader(readYaml(ONE_OF_EACH), new Map(), new Map());
  return new Build(reader, readMarkdown(""), {
    file: "",
    standard: readHouseStandard(undefined).standard,
    standards: [],
    stock: { ...readStock([]), items: new Map([[ANY, { name: ANY, count: 0 }]]) },
    surveys: new Map(),
    files: [],
    linkTargets: [],
    sameName: [],
    papers: undefined,
    today: "",
    promises: [],
    ownPromises: [],
    promisedOf: () => [],
    sharing: () => [],
    rules: [],
    findings: new Map(),
    mistakes: [],
  });
}
