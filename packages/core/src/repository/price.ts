import { readQuantity, type Value } from "@plumbmark/calc";
import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import type { Data, Placed } from "../document/yaml/yaml.js";
import { type Money, minorUnits, readMoney } from "./money.js";

type Mapping = Readonly<Record<string, Data>>;

const mapping = (data: Data | undefined): Mapping | undefined =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : undefined;

/** Lengths this near to one another are one: a cable is cut to a tape. */
const SAME_LENGTH = 0.005;

function lengthIn(text: string): number | undefined {
  const reading = readQuantity(text, ["length"]);
  return reading.ok ? reading.quantity.value : undefined;
}

/** The price of one piece of a part, of some length where its prices go by length; undefined when none is written for it. */
export function priceOf(
  part: { readonly data: Readonly<Record<string, Data>> } | undefined,
  length?: Value<"length">,
): Money | undefined {
  const price = part?.data.price;
  if (typeof price === "string") return readMoney(price);
  if (!length?.known) return undefined;
  const { value } = length;
  const found = Object.entries(mapping(price) ?? {}).find(([text]) => {
    const listed = lengthIn(text);
    return listed !== undefined && Math.abs(listed - value) <= SAME_LENGTH;
  });
  return typeof found?.[1] === "string" ? readMoney(found[1]) : undefined;
}

function wrongIn(text: string): readonly [says: string, mend: string] | undefined {
  const match = /^\d+(?:\.(\d+))? ([A-Z]{3})$/u.exec(text);
  if (!match || readMoney(text)) return undefined;
  const [, part = "", currency = ""] = match;
  const digits = minorUnits(currency);
  return [
    `\`${text}\` has ${part.length} digits behind the point, and amounts in ${currency} have ${digits === 0 ? "none" : digits}.`,
    "Write the price of one piece as it is paid.",
  ];
}

/** What the schema cannot say of prices: how many digits a currency has, and that a length is one. */
export function priceMistakes({ data, places, keys }: Placed): readonly Mistake[] {
  const told = (path: string, [says, mend]: readonly [string, string]): Mistake => ({
    rule: "document.front-matter",
    path,
    place: keys.get(path) ?? places.get(path) ?? START,
    says,
    mend,
  });
  return Object.entries(mapping(data) ?? {}).flatMap(([name, part]) => {
    const price = mapping(part)?.price;
    const path = `${name}.price`;
    if (typeof price === "string") return [wrongIn(price)].flatMap((wrong) => (wrong ? [told(path, wrong)] : []));
    return Object.entries(mapping(price) ?? {}).flatMap(([text, amount]) => {
      const here = `${path}.${text}`;
      const length =
        lengthIn(text) === undefined
          ? [told(here, [`\`${text}\` is not a length.`, "Write a length such as `25 ft`."])]
          : [];
      const wrong = typeof amount === "string" ? wrongIn(amount) : undefined;
      return [...length, ...(wrong ? [told(here, wrong)] : [])];
    });
  });
}
