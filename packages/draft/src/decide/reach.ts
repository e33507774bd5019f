import type { CheckEntry, Data } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { keyOf, type Mapping, mappingOf, textOf } from "../data.js";
import { cutLength, keptLengths } from "./cables.js";
import { type Decided, decided, type Fallen, type Scheme } from "./decision.js";

const RULES = ["power.feed-reach", "data.feed-reach"] as const;

/** A copy of data with another value at a path. */
function withValue(data: Data | undefined, steps: readonly string[], value: Data): Data {
  const [first, ...rest] = steps;
  if (first === undefined) return value;
  return { ...mappingOf(data), [first]: withValue(keyOf(data, first), rest, value) };
}

/** Length a check asks for, in metres. */
const askedBy = ({ allowed }: CheckEntry): number | undefined =>
  allowed && "value" in allowed ? Number(allowed.value) : undefined;

/**
 * Makes feeds and returns as long as the rules on their ways ask for, once it is known where the face is: the shortest
 * length that is kept and reaches, or what is cut to length.
 * @returns whether a length is another than before
 */
export function reached(brief: Brief, scheme: Scheme): { readonly decided: Decided; readonly changed: boolean } {
  let matter: Mapping = scheme.matter;
  const short = brief.desk
    .ask(matter)
    .checks(...RULES)
    .filter(({ outcome }) => outcome === "fails");
  for (const check of short) {
    const steps = check.at.path.replace(/\.length$/u, "").split(".");
    const cable = steps.reduce<Data | undefined>((here, key) => keyOf(here, key), matter);
    const [needed, part] = [askedBy(check), brief.catalogue.parts.get(textOf(cable, "part") ?? "")];
    const fallen: Fallen = { rule: check.rule, says: check.says };
    if (needed === undefined || !part) return { decided: { ok: false, fallen }, changed: false };
    const kept = keptLengths(part, brief);
    const length =
      kept.length === 0 ? cutLength(needed, brief.system) : kept.find(({ metres }) => metres >= needed - 1e-9)?.text;
    if (length === undefined) return { decided: { ok: false, fallen }, changed: false };
    matter = mappingOf(withValue(matter, [...steps, "length"], length));
  }
  return { decided: { ok: true, scheme: decided(scheme, matter) }, changed: short.length > 0 };
}
