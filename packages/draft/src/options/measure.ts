import { keyOf, type Mapping, mappingOf } from "../data.js";
import { FACE } from "../decide/size.js";
import type { Option } from "./option.js";

/** What options are weighed by. `more` is better where it says so. */
export interface Measure {
  readonly name: string;
  readonly better: "more" | "less";
  readonly of: (option: Option) => number | undefined;
}

const figure =
  (path: string) =>
  (option: Option): number | undefined =>
    option.figures.get(path)?.value;
const barsOf = ({ scheme }: Option): Mapping => mappingOf(keyOf(scheme.matter.rigging, "bars"));

export const panelsOf = ({ scheme }: Option): number => scheme.columns * scheme.rows;
export const hangsOf = (option: Option): number =>
  Object.values(barsOf(option)).flatMap((bar) => Object.keys(mappingOf(keyOf(bar, "hangs")))).length;
/** What all bars bear on the structure, in kilograms; undefined where it cannot be told of one. */
export function onStructure(option: Option): number | undefined {
  const names = Object.keys(barsOf(option));
  const all = names.map((name) => figure(`rigging.bars.${name}.on-structure`)(option));
  return all.length === 0 || all.includes(undefined)
    ? undefined
    : (all as number[]).reduce((sum, each) => sum + each, 0);
}
export const circuitsOf = (option: Option): readonly string[] => {
  const runs = Object.values(mappingOf(keyOf(option.scheme.matter.power, "runs")));
  return [...new Set(runs.map((run) => String(keyOf(run, "from"))))];
};
/** Share of its fullest circuit. */
export const fullest = (option: Option): number | undefined => {
  const shares = circuitsOf(option).map((name) => option.figures.get(`power.circuits.${name}.share`)?.value);
  return shares.length === 0 || shares.includes(undefined) ? undefined : Math.max(...(shares as number[]));
};
/** Whether half of it stays lit when a circuit trips. */
export const staysHalf = ({ scheme }: Option): boolean => scheme.variant.some((each) => each.includes("half lit"));

export const MEASURES: readonly Measure[] = [
  { name: "area", better: "more", of: figure(`faces.${FACE}.area`) },
  { name: "pixels", better: "more", of: figure(`faces.${FACE}.pixels`) },
  { name: "capitals", better: "more", of: figure(`viewing.${FACE}.angle`) },
  { name: "panels", better: "less", of: panelsOf },
  { name: "weight", better: "less", of: (option) => onStructure(option) },
  { name: "hangs", better: "less", of: hangsOf },
  { name: "worst hang", better: "less", of: (option) => worstHang(option) },
  { name: "circuits", better: "less", of: (option) => circuitsOf(option).length },
  { name: "fullest circuit", better: "less", of: fullest },
  { name: "half lit", better: "more", of: (option) => (staysHalf(option) ? 1 : 0) },
  { name: "shortfall", better: "less", of: ({ shortfall }) => shortfall.reduce((sum, { count }) => sum + count, 0) },
  { name: "advised", better: "less", of: ({ advised }) => advised.length },
];

/** Most any hang puts on the structure at worst. */
export function worstHang(option: Option): number | undefined {
  const all = [...option.figures].filter(
    ([path]) => path.startsWith("rigging.bars.") && path.endsWith(".worst-on-structure"),
  );
  const values = all.map(([, { value }]) => value);
  return values.length === 0 || values.includes(undefined) ? undefined : Math.max(...(values as number[]));
}

const NEAR = 1e-9;

/** Whether one option is at least as good as another in everything and better in something. What cannot be told decides nothing. */
export function dominates(one: Option, other: Option): boolean {
  let better = false;
  for (const { better: sense, of } of MEASURES) {
    const [a, b] = [of(one), of(other)];
    if (a === undefined || b === undefined) {
      if (a !== b) return false;
      continue;
    }
    const gain = sense === "more" ? a - b : b - a;
    if (gain < -NEAR * Math.max(1, Math.abs(b))) return false;
    if (gain > NEAR * Math.max(1, Math.abs(b))) better = true;
  }
  return better;
}
