import {
  connectors,
  guessed,
  type Kind,
  type Known,
  type Marked,
  marked,
  type Quantity,
  readPair,
  readQuantity,
} from "@plumbmark/calc";
import { type Advice, adviceFor, twoEnds } from "./advice.js";
import { adviceForPair, adviceForRange } from "./advice-of-two.js";
import { adviceForDays } from "./days.js";
import type { Mistake } from "./mistake.js";
import { choices, nearOnes } from "./nearest.js";
import { START } from "./place.js";
import { type Implausible, isPlausible } from "./plausible.js";
import { otherEnd, type Unsure, wholeGuess, withAt } from "./unsure.js";
import { keepRead, valuesRead } from "./yaml/groups-read.js";
import { type Data, join, type Placed } from "./yaml/yaml.js";

/** What the schema walk finds: every quantity by path (pairs as `path.1`, `path.2`) and what each path is called. */
export interface Quantities {
  readonly values: ReadonlyMap<string, Known>;
  readonly mistakes: readonly Mistake[];
  /** What can be read and is outside what its field says is plausible. */
  readonly implausible: readonly Implausible[];
  /** Guesses and bounds. */
  readonly unsure: readonly Unsure[];
  /** The data with guesses and bounds of plain numbers as numbers. */
  readonly data: Data;
}

type Schema = { readonly [key: string]: unknown };

/** What stands between the two ends of a range. */
const BETWEEN = /\s+(?:to|–)\s+/u;

const NOTHING = /^(?:nothing|nil|no|n\/a|not any|zero|-+)$/iu;

/** Where `none` may stand, a word for it is told so. */
const orNone = (advice: Advice, { none }: Schema, text: string): Advice =>
  none === true && NOTHING.test(text.trim())
    ? { ...advice, mend: `${advice.mend} Where there is none, write \`none\`.`, better: "none" }
    : advice;

const resolved = new WeakMap<Schema, Schema>();

/** A schema with what it refers to; worked out once for each place of the schema that refers. */
function resolve(root: Schema, schema: Schema): Schema {
  if (typeof schema.$ref !== "string") return schema;
  const known = resolved.get(schema);
  if (known) return known;
  const target = schema.$ref.replace("#/$defs/", "");
  const { $ref: _, ...own } = schema;
  const whole = { ...resolve(root, (root.$defs as Record<string, Schema>)[target] as Schema), ...own };
  resolved.set(schema, whole);
  return whole;
}

function written(quantity: Quantity, path: string, { sure }: Marked): Known {
  const known: Known = {
    known: true,
    value: quantity.value,
    kind: quantity.kind,
    unit: quantity.unit,
    origin: { from: "written", path, text: quantity.text },
  };
  if (sure === "guess") return guessed(known);
  return sure === undefined ? known : { ...known, sure };
}

/** A place, a warmth or an angle may lie to either side; the schema says `sign: "any"` of each field where one may. */
const isLess = ({ value }: Quantity, { sign }: Schema): boolean => value < 0 && sign !== "any";

/** What a field may be at least and at most: as is plausible, else as its schema allows. */
const rangeOf = ({ plausible, minimum, exclusiveMinimum, maximum }: Schema): readonly [string, string] | undefined =>
  (plausible as readonly [string, string] | undefined) ??
  (typeof maximum === "number" ? [String(minimum ?? exclusiveMinimum ?? 0), String(maximum)] : undefined);

/**
 * Reads every value the schema calls a quantity, a pair or a range. The schema is the single source of what kind of
 * quantity stands where.
 * @param again whether the file is being written: groups that are the same objects as before are not read again
 */
export function readQuantities(root: Schema, placed: Placed, again = false): Quantities {
  const values = new Map<string, Known>();
  const found: (readonly [string, Known])[] = [];
  const add = (path: string, value: Known): void => {
    values.set(path, value);
    found.push([path, value]);
  };
  const mistakes: Mistake[] = [];
  const refuse = (path: string, advice: Advice, { title, guess, found: whose }: Schema): void => {
    const { found, mend, better, standIn } = advice;
    const name = typeof title === "string" ? `\`${path}\` (${title})` : `\`${path}\``;
    const place = placed.places.get(path) ?? START;
    // What a letter states is transcribed by whoever has the letter.
    const sure = advice.sure === true && whose !== "letter";
    const edit = better === undefined ? {} : { edit: { place, text: better, sure } };
    const others = (advice.offers ?? []).filter((offer) => guess === true || !offer.endsWith("?"));
    const offers = others.length === 0 ? {} : { offers: others.map((offer) => ({ place, text: offer })) };
    const other = standIn === undefined ? {} : { standIn: { place, text: standIn } };
    const says = `${name} is ${found}.`;
    mistakes.push({ rule: "document.front-matter", path, place, says, mend, ...edit, ...offers, ...other });
  };
  const implausible: Implausible[] = [];
  const weigh = (schema: Schema, read: readonly Quantity[], text: string, path: string): void => {
    const range = schema.plausible as readonly [string, string] | undefined;
    if (!range || read.every((each) => isPlausible(each, range))) return;
    const title = typeof schema.title === "string" ? schema.title : undefined;
    implausible.push({ path, place: placed.places.get(path) ?? START, text, title, range });
  };
  const unsure: Unsure[] = [];
  let whole = placed.data;
  const doubt = (schema: Schema, { sure }: Marked, path: string, text: string, quantity?: Quantity): void => {
    if (sure === undefined) return;
    const place = placed.places.get(path) ?? START;
    const other = sure === "guess" || !quantity ? undefined : otherEnd(quantity, sure, rangeOf(schema));
    if (sure !== "guess" && other === undefined) {
      const mend = "Nothing says how much more it may be. Write the value itself.";
      refuse(path, { found: `\`${text}\`, which is a bound`, mend, standIn: quantity?.text ?? text }, schema);
    }
    unsure.push({ path, place, sure, text, ...(other === undefined ? {} : { other }) });
  };
  const leaf = (given: Schema, data: string | number, path: string): void => {
    if (given.none === true && data === "none") return;
    // Where one value or a range may stand, the word between two values tells which it is.
    const { quantity, range, ...rest } = given;
    const both = quantity !== undefined && range !== undefined;
    const isRange =
      both && (BETWEEN.test(String(data)) || twoEnds(String(data), [range].flat() as Kind[]) !== undefined);
    const schema = !both ? given : isRange ? { ...rest, range } : { ...rest, quantity };
    const less = {
      found: `\`${data}\`, which is less than nothing`,
      mend: "Write a value of 0 or more.",
      standIn: String(data).replace(/^\s*-/u, ""),
    };
    if (typeof schema.form === "string") {
      const advice = adviceForDays(String(data), schema.form as "day" | "stay");
      if (advice) refuse(path, { ...advice, found: advice.says.replace(/^is /u, "") }, schema);
    }
    if (schema.refers === "connector" && !connectors.has(String(data))) {
      const names = [...connectors.keys()];
      const [near, ...offers] = nearOnes(String(data), names);
      const found = `\`${data}\`, and no such connector is known`;
      const mend = near === undefined ? choices(names) : `Write \`${near}\`, or another connector of the table.`;
      refuse(path, { found, mend, offers, ...(near === undefined ? {} : { better: near }) }, schema);
    }
    const mark: Marked = typeof data === "string" ? marked(data) : { text: String(data) };
    const isMayBe = mark.sure === undefined || (schema.guess === true && (mark.sure === "guess" || schema.quantity));
    if (!isMayBe && (schema.quantity ?? schema.pair ?? schema.range) !== undefined) {
      const what = mark.sure === "guess" ? "a guess" : "a bound";
      const mend = `No ${what.slice(2)} can stand here. Write the value itself: \`${mark.text}\`.`;
      refuse(path, { found: `\`${data}\`, which is ${what}`, mend, standIn: mark.text }, schema);
      return;
    }
    if (schema.quantity !== undefined) {
      const wanted = [schema.quantity].flat() as Kind[];
      const reading = readQuantity(mark.sure === undefined ? data : mark.text, wanted);
      if (!reading.ok) refuse(path, orNone(adviceFor(mark.text, wanted, reading.found), schema, mark.text), schema);
      else if (isLess(reading.quantity, schema)) refuse(path, less, schema);
      else {
        add(path, written(reading.quantity, path, mark));
        doubt(schema, mark, path, String(data), reading.quantity);
        // A plain number that is marked is a text only for its mark.
        if (schema.type === "number" && mark.sure !== undefined) whole = withAt(whole, path, reading.quantity.value);
        weigh(schema, [reading.quantity], reading.quantity.text, path);
      }
    }
    const halves = schema.pair ?? schema.range;
    if (halves === undefined) return;
    const wanted = [halves].flat() as Kind[];
    const text = schema.range === undefined ? mark.text : String(data).replace(BETWEEN, " x ");
    const reading = readPair(text, wanted);
    const advise = schema.range === undefined ? adviceForPair : adviceForRange;
    if (!reading.ok) refuse(path, advise(data, wanted, reading.found), schema);
    else if (reading.pair.some((half) => isLess(half, schema))) refuse(path, less, schema);
    else if (schema.range !== undefined && reading.pair[0].value > reading.pair[1].value) {
      const better = `${reading.pair[1].text} to ${reading.pair[0].text}`;
      const mend = `Write \`${better}\`: the lower end first.`;
      refuse(path, { found: `\`${data}\`, the upper end first`, mend, better }, schema);
    } else {
      for (const [index, half] of reading.pair.entries()) add(join(path, index + 1), written(half, path, mark));
      doubt(schema, mark, path, String(data));
      weigh(schema, reading.pair, String(data), path);
    }
  };
  const told = (): number => mistakes.length + implausible.length + unsure.length;
  const walk = (given: Schema, data: Data | undefined, path: string): void => {
    const known = again ? valuesRead(given, data, path) : undefined;
    for (const [at, value] of known ?? []) add(at, value);
    if (known) return;
    const [first, before, toldBefore] = [found.length, whole, told()];
    walkAnew(given, data, path);
    if (again && whole === before && told() === toldBefore) keepRead(given, data, path, () => found.slice(first));
  };
  const walkAnew = (given: Schema, data: Data | undefined, path: string): void => {
    if (data === null || data === undefined) return;
    const schema = resolve(root, given);
    const forms = [...((schema.anyOf as Schema[]) ?? []), ...((schema.oneOf as Schema[]) ?? [])];
    // A word that may stand instead of a quantity is none.
    if (forms.some((form) => form.const === data)) return;
    for (const form of forms) {
      const option = resolve(root, form);
      if (fits(option, data)) walk({ ...option, title: option.title ?? schema.title }, data, path);
    }
    const guess = schema.guess === true && schema.type === "integer" ? wholeGuess(data) : undefined;
    if (guess !== undefined) {
      whole = withAt(whole, path, guess);
      doubt(schema, { text: String(guess), sure: "guess" }, path, String(data));
    }
    if (typeof data === "string" || typeof data === "number") leaf(schema, data, path);
    if (typeof data !== "object") return;
    const items = Array.isArray(data) ? (data as readonly Data[]) : [];
    for (const [index, item] of items.entries()) walk((schema.items ?? {}) as Schema, item, join(path, index + 1));
    for (const [key, value] of Array.isArray(data) ? [] : Object.entries(data)) {
      const inner = (schema.properties as Record<string, Schema> | undefined)?.[key] ?? schema.additionalProperties;
      if (inner && typeof inner === "object") walk(inner as Schema, value as Data, join(path, key));
    }
  };
  walk(root, placed.data, "");
  return { values, mistakes, implausible, unsure, data: whole };
}

/** Whether data has the outer form of one alternative, and, for parts, its kind. */
function fits(option: Schema, data: Data): boolean {
  const wanted = [option.type].flat();
  // A plain number with a mark behind or before it: `1.25 ?`.
  const isMarked = option.guess === true && typeof data === "string" && marked(data).sure !== undefined;
  if (isMarked && wanted.includes("number")) return true;
  const type = Array.isArray(data) ? "array" : typeof data;
  if (!wanted.includes(type === "number" && Number.isInteger(data) && wanted.includes("integer") ? "integer" : type))
    return false;
  const properties = option.properties as Record<string, Schema> | undefined;
  if (type !== "object" || !properties) return true;
  const kind = properties.kind?.const;
  if (kind !== undefined) return kind === (data as Record<string, Data>).kind;
  return (
    ((option.required as string[] | undefined) ?? []).every((key) => key in (data as object)) &&
    Object.keys(data as object).every((key) => key in properties)
  );
}
