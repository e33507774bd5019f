import type { Facts } from "./facts.js";
import { at } from "./facts.js";
import type { Schema } from "./read-schema.js";
import { absentIn, compiled, type Validate } from "./rest-check.js";

/** Whether a rule applies to a thing; unknown when that depends on something that is not written down. */
export type Applies = (facts: Facts) => "yes" | "no" | "unknown";

/** Names a schema itself asks to be there: whether they are is what it decides by. */
const asked = (schema: Schema): readonly string[] =>
  typeof schema === "object" && Array.isArray(schema.required) ? schema.required.map(String) : [];

const branches = (schema: unknown): boolean => /"(?:anyOf|oneOf|not|if)":/u.test(JSON.stringify(schema));

export function whenOf(schema: Schema | undefined, accepted: boolean): Applies {
  if (schema === undefined) return () => "yes";
  const validate: Validate = compiled(schema, accepted);
  const [decided, branching] = [new Set(asked(schema)), branches(schema)];
  return (facts) => {
    const fits = validate(facts.data);
    const absent = absentIn(schema, facts).filter((path) => {
      const top = path.split(".")[0] as string;
      return facts.untold.has(path) || !(decided.has(top) && at(facts.data, [top]) === undefined);
    });
    if (absent.length === 0) return fits ? "yes" : "no";
    return !fits && !branching ? "no" : "unknown";
  };
}
