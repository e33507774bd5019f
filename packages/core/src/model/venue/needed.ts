import { CABLE_ALLOWANCE, cableForWay, type Kind, type Known, readQuantity, tabled, type Value } from "@plumbmark/calc";
import type { DesignSource } from "../reading/design-source.js";

/** The way of a cable from a place of the venue to a panel. */
export interface FeedWay {
  /** `measured` or `led` as the survey has it; `straight` is the least a cable can be, and never what it has to be. */
  readonly how: "measured" | "led" | "straight";
  readonly length: Value<"length">;
  /** Names of both ends, as the survey or the build has them. */
  readonly from: string;
  readonly to: string;
}

/** The rule whose settings tell what a cable needs over its way. */
type ReachRule = "power.feed-reach" | "data.feed-reach";

/** A setting of the house standard as a value; the product's own when it says nothing that can be read. */
function allowance<const K extends Kind>(
  build: DesignSource,
  rule: ReachRule,
  key: string,
  kind: K,
  own: number,
  what: string,
): Known<K> {
  const set = build.context.standard.requirements[rule]?.[key];
  const read = typeof set === "string" || typeof set === "number" ? readQuantity(set, [kind]) : undefined;
  return tabled(read?.ok ? read.quantity.value : own, kind, "house", what);
}

/** Length a cable needs for a way: the way, a share of it, and something for its ends. */
export const neededFor = (build: DesignSource, rule: ReachRule, way: Value<"length">): Value<"length"> =>
  cableForWay.of({
    L: way,
    a: allowance(build, rule, "share", "ratio", CABLE_ALLOWANCE.share, "allowance as a share of the way"),
    e: allowance(build, rule, "ends", "length", CABLE_ALLOWANCE.ends, "allowance for both ends"),
  });
