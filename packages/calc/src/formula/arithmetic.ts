import { type Kind, siUnit } from "../quantity/kinds.js";
import { type OfKind, refuseOtherKind } from "./kind-check.js";
import { showSum } from "./substitution.js";
import { gapsOf, type Known, missing, type Step, type Value } from "./value.js";

/** Plain arithmetic on values, each with its working. Kinds have to agree; a missing input gives a missing result. */

const step = <K extends Kind>(
  value: number,
  kind: K,
  formula: string,
  show: Step["show"],
  inputs: readonly Known[],
): Known<K> => ({
  known: true,
  value,
  kind,
  origin: { from: "step", step: { formula, show, source: "arithmetic", inputs } },
});

/** @throws TypeError when one of them is of another kind */
const refuseOthers = (values: readonly Value[], kind: Kind, symbol: string): void => {
  for (const each of values) refuseOtherKind(each, kind, `each value of ${symbol}`);
};

/** Sum of values of one kind. An empty list needs `kind` and is a true zero: there is nothing to add. */
export function sum<const K extends Kind, const V extends readonly Value[]>(
  values: V & OfKind<NoInfer<K>, V>,
  kind: K,
  symbol = "sum",
): Value<K> {
  refuseOthers(values, kind, symbol);
  const gaps = gapsOf(values);
  if (gaps.length > 0) return missing(kind, ...gaps);
  const knowns = values as readonly Value[] as readonly Known[];
  const total = knowns.reduce((running, each) => running + each.value, 0);
  return step(total, kind, `${symbol} = sum of the parts`, (print) => showSum(knowns, print), knowns);
}

/** One value less another of its kind. */
export function difference<const K extends Kind>(from: Value, taken: Value, kind: K, symbol = "difference"): Value<K> {
  const gaps = gapsOf([from, taken]);
  if (gaps.length > 0) return missing(kind, ...gaps);
  const [whole, part] = [from, taken] as [Known, Known];
  for (const each of [whole, part])
    if (siUnit(each.kind) !== siUnit(kind)) throw new Error(`cannot take ${each.kind} from ${kind}`);
  const show: Step["show"] = (print) => `${print(whole.value, whole.kind)} − ${print(part.value, part.kind)}`;
  return step(whole.value - part.value, kind, `${symbol} = one less the other`, show, [whole, part]);
}

/** A value times a plain number (a count, a share of a setting). */
export function times<K extends Kind>(value: Value<K>, factor: number, print?: string): Value<K> {
  if (!value.known) return value;
  return step(
    value.value * factor,
    value.kind,
    "value × factor",
    (show) => `${show(value.value, value.kind)} × ${print ?? factor}`,
    [value],
  );
}

/** The least of several values of one kind; missing when any is missing, since the missing one could be the least. */
export function leastOf<const K extends Kind, const V extends readonly Value[]>(
  values: V & OfKind<NoInfer<K>, V>,
  kind: K,
  symbol = "least",
): Value<K> {
  refuseOthers(values, kind, symbol);
  const gaps = gapsOf(values);
  if (gaps.length > 0) return missing(kind, ...gaps);
  if (values.length === 0)
    return missing(kind, { path: "", what: symbol, because: "There is nothing to take the least of." });
  const knowns = values as readonly Value[] as readonly Known[];
  const value = Math.min(...knowns.map((each) => each.value));
  return step(
    value,
    kind,
    `${symbol} = the least of`,
    (print) => knowns.map((each) => print(each.value, each.kind)).join(", "),
    knowns,
  );
}

/** The greatest of several values of one kind; missing when any is missing. */
export function greatestOf<const K extends Kind, const V extends readonly Value[]>(
  values: V & OfKind<NoInfer<K>, V>,
  kind: K,
  symbol = "greatest",
): Value<K> {
  refuseOthers(values, kind, symbol);
  const gaps = gapsOf(values);
  if (gaps.length > 0) return missing(kind, ...gaps);
  if (values.length === 0)
    return missing(kind, { path: "", what: symbol, because: "There is nothing to take the greatest of." });
  const knowns = values as readonly Value[] as readonly Known[];
  const value = Math.max(...knowns.map((each) => each.value));
  return step(
    value,
    kind,
    `${symbol} = the greatest of`,
    (print) => knowns.map((each) => print(each.value, each.kind)).join(", "),
    knowns,
  );
}

/** What share of `most` a value of the same kind is; missing when either is, or when `most` is nothing. */
export function shareOf(value: Value, most: Value): Value<"ratio"> {
  const gaps = gapsOf([value, most]);
  if (gaps.length > 0) return missing("ratio", ...gaps);
  const [part, whole] = [value, most] as [Known, Known];
  if (siUnit(part.kind) !== siUnit(whole.kind)) throw new Error(`${part.kind} is no share of ${whole.kind}`);
  if (whole.value === 0) {
    const because = "There is nothing to take a share of.";
    return missing("ratio", { path: "", what: "share", because });
  }
  const shown: Step["show"] = (print) => `${print(part.value, part.kind)} ÷ ${print(whole.value, whole.kind)}`;
  return step(part.value / whole.value, "ratio", "share = used ÷ allowed", shown, [part, whole]);
}
