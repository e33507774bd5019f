import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import { linearPatterns } from "../../patterns/linear.js";
import type { Setting, SettingDefinition } from "../../standard/setting.js";

type Schema = NonNullable<SettingDefinition["schema"]>;

const compiled = new WeakMap<Schema, ValidateFunction>();

/**
 * Compiles the JSON Schema of a setting, once.
 * @throws Error of the validator when it is no schema
 */
export function schemaOf(schema: Schema): ValidateFunction {
  const known =
    compiled.get(schema) ?? new Ajv2020({ strict: false, code: { regExp: linearPatterns } }).compile(schema);
  compiled.set(schema, known);
  return known;
}

/** Whether a value meets the setting's own schema; without one, any value of its type does. */
export const meetsSchema = (schema: Schema | undefined, value: Setting): boolean =>
  schema === undefined || schemaOf(schema)(value) === true;

/** What a schema asks for, in words: `at least 0, at most 1`. */
export function schemaText(schema: Schema): string {
  const { minimum, exclusiveMinimum, maximum, exclusiveMaximum, enum: values } = schema;
  const words = [
    ...(minimum === undefined ? [] : [`at least ${String(minimum)}`]),
    ...(exclusiveMinimum === undefined ? [] : [`above ${String(exclusiveMinimum)}`]),
    ...(maximum === undefined ? [] : [`at most ${String(maximum)}`]),
    ...(exclusiveMaximum === undefined ? [] : [`below ${String(exclusiveMaximum)}`]),
    ...(Array.isArray(values) ? [`one of ${values.map((each) => `\`${String(each)}\``).join(", ")}`] : []),
  ];
  return words.length > 0 ? words.join(", ") : `what meets ${JSON.stringify(schema)}`;
}
