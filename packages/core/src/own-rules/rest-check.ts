import { Ajv2020, type ErrorObject, type ValidateFunction } from "ajv/dist/2020.js";
import type { Thing } from "../inspection/judging/rule.js";
import { linearPatterns } from "../patterns/linear.js";
import type { JudgedDemand, StatedDemand } from "./demand-check.js";
import { at, type Facts } from "./facts.js";
import type { Schema } from "./read-schema.js";
import { demanding, mentioned } from "./split.js";

export type Validate = ValidateFunction;

/** More schemas than house standards usually have. */
const MOST = 256;

/** What was compiled last: most openings of a repository find the house standard as it was. */
const known = new Map<string, Validate>();

/**
 * Compiles a schema, once for each text.
 * @param accepted whether it was used before: then it is not validated itself, which takes longer than the rest
 * @throws Error in the words of the validator when a schema cannot be used at all.
 */
export function compiled(schema: unknown, accepted: boolean): Validate {
  const key = `${accepted} ${JSON.stringify(schema)}`;
  const found =
    known.get(key) ??
    new Ajv2020({
      ...{ strict: false, allErrors: true, validateSchema: !accepted, meta: !accepted },
      code: { regExp: linearPatterns },
    }).compile(schema as Schema);
  known.delete(key);
  known.set(key, found);
  const [oldest] = known.keys();
  if (known.size > MOST && oldest !== undefined) known.delete(oldest);
  return found;
}

/** Where a schema is not met, as far as its validator tells. */
const whereNot = (errors: readonly ErrorObject[]): string => {
  const places = errors.filter(({ keyword }) => !["anyOf", "oneOf", "if", "not"].includes(keyword));
  const names = places.map(({ instancePath, params }) =>
    [...instancePath.split("/").slice(1), String(params.missingProperty ?? params.additionalProperty ?? "")]
      .filter((key) => key !== "")
      .join("."),
  );
  const told = [...new Set(names)].filter((name) => name !== "").map((name) => `\`${name}\``);
  return told.length === 0 ? "" : ` It does not meet what is asked of ${told.slice(0, 6).join(", ")}.`;
};

/** Names a schema speaks of that are not there or cannot be told. */
export const absentIn = (schema: unknown, { data, untold }: Facts): readonly string[] =>
  [...new Set(mentioned(schema))].filter((path) => untold.has(path) || at(data, path.split(".")) === undefined);

/** What a schema demands beyond single values, as one check. What is not written down never passes. */
export function restCheck(
  thing: Thing,
  facts: Facts,
  rest: Schema,
  validate: Validate,
  stated: StatedDemand,
): JudgedDemand {
  const holds = validate(facts.data);
  const absent = absentIn(rest, facts);
  const untold = absent.filter((path) => facts.untold.has(path));
  if (untold.length > 0 || (!holds && absent.length > 0)) {
    const names = (untold.length > 0 ? untold : absent).map((name) => `\`${name}\``).join(", ");
    const says = (): string => `${thing.label}: ${names} cannot be told. ${stated.states}`;
    const gaps = absent.map((path) => [thing.path, path].filter((key) => key !== "").join("."));
    return {
      raw: { at: thing.path, form: "open", says, mend: "Write it down, or what it is computed from.", gaps },
      holds: undefined,
    };
  }
  const where = holds ? "" : whereNot(validate.errors ?? []);
  const says = (): string => `${thing.label}: ${stated.states}${where}`;
  return { raw: { at: thing.path, form: "plain", holds, says, ...(stated.mend ? { mend: stated.mend } : {}) }, holds };
}

/** The rest of a schema as it is validated: every name spoken of has to be there. */
export const compiledRest = (rest: Schema, accepted: boolean): Validate | undefined =>
  typeof rest === "object" && Object.keys(rest).length === 0 ? undefined : compiled(demanding(rest), accepted);
