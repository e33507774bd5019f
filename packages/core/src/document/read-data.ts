import type { Known } from "@plumbmark/calc";
import { buildSchema, partsSchema, stockSchema, surveySchema } from "../generated/schemas.js";
import { fieldsAt } from "./field.js";
import type { Mistake } from "./mistake.js";
import type { Implausible } from "./plausible.js";
import { readQuantities } from "./quantities.js";
import type { Unsure } from "./unsure.js";
import { validate } from "./validate.js";
import type { Data, Placed } from "./yaml/yaml.js";

const SCHEMAS = { build: buildSchema, parts: partsSchema, stock: stockSchema, survey: surveySchema };

/** What was read of a file, and everything that is wrong with it. */
export interface ReadData {
  readonly values: ReadonlyMap<string, Known>;
  readonly mistakes: readonly Mistake[];
  /** What can be read and is outside what its field says is plausible. */
  readonly implausible: readonly Implausible[];
  /** Guesses and bounds. */
  readonly unsure: readonly Unsure[];
  /** The data with guesses and bounds of plain numbers as numbers. */
  readonly data: Data;
}

/** What a letter states is transcribed by whoever has the letter: the form of the YAML knows nothing of that. */
function ofLetter(root: (typeof SCHEMAS)[keyof typeof SCHEMAS], mistake: Mistake): Mistake {
  const { edit, path } = mistake;
  if (!edit?.sure || path === "" || !fieldsAt(root, path).some(({ found }) => found === "letter")) return mistake;
  return { ...mistake, edit: { ...edit, sure: false } };
}

/**
 * Looks at what stands in a file: its form, its quantities and its days. What is wrong with one value is told once, by
 * whoever knows most about it: where a comma cut it in two nobody says that it has no unit.
 * @param again whether it is being written, so that much of it is as it was
 */
export function readData(name: keyof typeof SCHEMAS, placed: Placed, again = false): ReadData {
  if (placed.data === null && placed.mistakes.length > 0)
    return { values: new Map(), mistakes: placed.mistakes, implausible: [], unsure: [], data: null };
  const { values, mistakes, implausible, unsure, data } = readQuantities(SCHEMAS[name], placed, again);
  const told = new Set([...placed.mistakes, ...mistakes].map(({ path }) => path).filter((path) => path !== ""));
  const shape = validate(name, { ...placed, data }).filter(({ path }) => !told.has(path));
  const unread = mistakes.filter(({ path }) => !placed.mistakes.some((other) => other.path === path && path !== ""));
  const slips = placed.mistakes.map((mistake) => ofLetter(SCHEMAS[name], mistake));
  // A group that is only there for others to copy is told with the merge key that copies it.
  const isOwn = ({ path, unknownKey }: Mistake): boolean =>
    !placed.copied?.has(path) && !(unknownKey && placed.models?.has(path));
  return { values, mistakes: [...slips, ...shape.filter(isOwn), ...unread.filter(isOwn)], implausible, unsure, data };
}
