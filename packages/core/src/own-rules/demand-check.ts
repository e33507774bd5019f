import { counted, type Kind, type Known, missing, tabled, type Value } from "@plumbmark/calc";
import { shown } from "../document/shown.js";
import { holdsTo } from "../inspection/judging/judge.js";
import type { RawCheck, Sense, Thing } from "../inspection/judging/rule.js";
import type { Build } from "../model/build.js";
import type { Facts } from "./facts.js";
import { at, weighed } from "./facts.js";
import type { Limit } from "./keywords.js";
import type { SchemaShape } from "./shape.js";
import { shapeAt } from "./shape.js";
import type { Demand } from "./split.js";

/** What a check of an own rule says besides its figures. */
export interface StatedDemand {
  readonly id: string;
  readonly states: string;
  readonly mend?: string;
  readonly shape: SchemaShape;
}

/** A check, and whether it holds where that can be told. */
export interface JudgedDemand {
  readonly raw: RawCheck;
  readonly holds: boolean | undefined;
}

const SENSES: Readonly<Record<Limit, Sense>> = {
  minimum: "at least",
  maximum: "at most",
  exclusiveMinimum: "at least",
  exclusiveMaximum: "at most",
};

const isWhole = (kinds: readonly Kind[], { types }: SchemaShape): boolean =>
  kinds.some((kind) => kind === "count" || kind === "pixels") || (types.has("integer") && !types.has("number"));

/** A value as written or computed; missing by name when it is not there. */
function valueAt(build: Build, thing: Thing, facts: Facts, keys: readonly string[], kind: Kind): Value {
  const path = [thing.path, ...keys].filter((key) => key !== "").join(".");
  const found = build.valueAt(path) ?? build.reader.quantities.get(path);
  if (found) return weighed(found, path);
  const plain = at(facts.data, keys);
  const what = keys.join(" ");
  return typeof plain === "number"
    ? counted(plain, what, kind)
    : missing(kind, { path, what: `\`${what}\``, of: thing.label });
}

/** Whether a value is beyond an exclusive limit; floating-point noise does not make it so. */
const beyond = (measured: number, limit: number, sense: Sense): boolean =>
  holdsTo(measured, limit, sense) && !holdsTo(measured, limit, "exactly");

const WORDS: Readonly<Record<Limit, string>> = {
  minimum: "at least",
  maximum: "at most",
  exclusiveMinimum: "more than",
  exclusiveMaximum: "less than",
};

/** A lower and an upper limit in one check. */
function betweenCheck(build: Build, thing: Thing, facts: Facts, demand: Demand, stated: StatedDemand): JudgedDemand {
  const [low, high] = [
    limitCheck(build, thing, facts, demand, "minimum", stated),
    limitCheck(build, thing, facts, demand, "maximum", stated),
  ];
  const most = high.raw.allowed as Value;
  const says: RawCheck["says"] = ({ measured, allowed }) =>
    `${thing.label}: \`${demand.keys.join(" ")}\` is ${measured}; ${allowed} is asked for. ${stated.states}`;
  const holds = low.holds === undefined ? undefined : low.holds && high.holds === true;
  return { raw: { ...low.raw, sense: "within", most, says }, holds };
}

function limitCheck(
  build: Build,
  thing: Thing,
  facts: Facts,
  demand: Demand,
  limit: Limit,
  stated: StatedDemand,
): JudgedDemand {
  const own = shapeAt(stated.shape, demand.keys);
  const kind: Kind = own?.kinds[0] ?? (own && isWhole([], own) ? "count" : "factor");
  const measured = valueAt(build, thing, facts, demand.keys, kind);
  const number = demand.limits[limit] as number;
  const allowed: Known = tabled(number, measured.kind, "house", `limit of ${stated.id}`);
  const name = demand.keys.join(" ");
  const path = [thing.path, ...demand.keys].filter((key) => key !== "").join(".");
  const sense = SENSES[limit];
  const exclusive = limit === "exclusiveMinimum" || limit === "exclusiveMaximum";
  const holds = measured.known
    ? exclusive
      ? beyond(measured.value, number, sense)
      : holdsTo(measured.value, number, sense)
    : undefined;
  const raw: RawCheck = {
    at: path,
    form: exclusive && measured.known ? "plain" : "compare",
    ...(exclusive && measured.known ? { holds: holds === true } : {}),
    measured,
    allowed,
    sense,
    says: (words) =>
      `${thing.label}: \`${name}\` is ${words.measured}; ${WORDS[limit]} ${words.allowed} is asked for. ${stated.states}`,
    ...(stated.mend ? { mend: stated.mend } : {}),
  };
  return { raw, holds };
}

/** It cannot be told, since something is not written down. */
export const untold = (thing: Thing, path: string, name: string, stated: StatedDemand): JudgedDemand => ({
  raw: {
    at: path,
    form: "open",
    says: () => `${thing.label} has no \`${name}\` written down. ${stated.states}`,
    mend: `Write it under \`${path}\`.`,
    gaps: [path],
  },
  holds: undefined,
});

function valueCheck(thing: Thing, facts: Facts, { keys, values = [] }: Demand, stated: StatedDemand): JudgedDemand {
  const path = [thing.path, ...keys].filter((key) => key !== "").join(".");
  const name = keys.join(" ");
  const found = at(facts.data, keys);
  if (found === undefined || facts.untold.has(keys.join("."))) return untold(thing, path, name, stated);
  const holds = values.some(
    (value) =>
      value === found || (typeof value === "number" && typeof found === "number" && holdsTo(found, value, "exactly")),
  );
  const says = (): string =>
    `${thing.label}: \`${name}\` is ${shown(found)}; ${values.map(shown).join(" or ")} is asked for. ${stated.states}`;
  return { raw: { at: path, form: "plain", holds, says, ...(stated.mend ? { mend: stated.mend } : {}) }, holds };
}

/** One check for every limit of a demand, and one for the values it may have. */
export function demandChecks(
  build: Build,
  thing: Thing,
  facts: Facts,
  demand: Demand,
  stated: StatedDemand,
): readonly JudgedDemand[] {
  const between = demand.limits.minimum !== undefined && demand.limits.maximum !== undefined;
  const limits = (Object.keys(demand.limits) as readonly Limit[]).filter(
    (limit) => !between || limit.startsWith("exclusive"),
  );
  return [
    ...(between ? [betweenCheck(build, thing, facts, demand, stated)] : []),
    ...limits.map((limit) => limitCheck(build, thing, facts, demand, limit, stated)),
    ...(demand.values ? [valueCheck(thing, facts, demand, stated)] : []),
  ];
}
