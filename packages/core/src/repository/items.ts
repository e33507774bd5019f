import { readQuantity } from "@plumbmark/calc";
import { isDay } from "../document/days.js";
import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import type { Data, Placed } from "../document/yaml/yaml.js";

/** Pieces of one length. */
export interface ItemLength {
  /** As it is written: `25 ft`. */
  readonly text: string;
  /** Metres. */
  readonly length: number;
  readonly count: number;
}

/** One piece with a serial number. */
export interface ItemPiece {
  readonly serial: string;
  /** Day it was last inspected. */
  readonly inspected?: string;
  /** What is wrong with it; a piece with a fault is promised to nobody. */
  readonly fault?: string;
}

/** What there is of one part: so many, so many of each length, or one by one. */
export interface Item {
  /** The part. */
  readonly name: string;
  /** Where it is counted. */
  readonly count?: number;
  /** Where it is counted by length. */
  readonly lengths?: readonly ItemLength[];
  /** Where each has a serial number. */
  readonly serials?: readonly ItemPiece[];
  /** Day all of them were last inspected. */
  readonly inspected?: string;
}

type Mapping = Readonly<Record<string, Data>>;

const mapping = (data: Data | undefined): Mapping =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : {};

/** Ways to say how many there are; each item is listed in one of them. */
const WAYS = ["count", "lengths", "serials"] as const;

function lengthIn(text: string): number | undefined {
  const reading = readQuantity(text, ["length"]);
  return reading.ok && reading.quantity.value > 0 ? reading.quantity.value : undefined;
}

const dayIn = (data: Data | undefined): { readonly inspected?: string } =>
  typeof data === "string" && isDay(data) ? { inspected: data } : {};

function lengthsOf(data: Mapping): readonly ItemLength[] {
  return Object.entries(data).flatMap(([text, count]) => {
    const length = lengthIn(text);
    return length === undefined || typeof count !== "number" ? [] : [{ text, length, count }];
  });
}

function piecesOf(data: Mapping): readonly ItemPiece[] {
  return Object.entries(data).map(([serial, piece]) => {
    const { inspected, fault } = mapping(piece);
    return { serial, ...dayIn(inspected), ...(typeof fault === "string" ? { fault } : {}) };
  });
}

/** An item as it is written. */
export function itemOf(name: string, data: Mapping): Item {
  const { count, lengths, serials, inspected } = data;
  return {
    name,
    ...(typeof count === "number" ? { count } : {}),
    ...(lengths === undefined ? {} : { lengths: lengthsOf(mapping(lengths)) }),
    ...(serials === undefined ? {} : { serials: piecesOf(mapping(serials)) }),
    ...dayIn(inspected),
  };
}

/** Lengths this near to one another are one: a cable is cut to a tape. */
const SAME_LENGTH = 0.005;

/** The listed length a piece of some length is of; undefined where none is listed. */
export const listedLength = ({ lengths }: Item, length: number): ItemLength | undefined =>
  lengths?.find((each) => Math.abs(each.length - length) <= SAME_LENGTH);

/** How many can be promised: in all, of one length in metres, or of one serial number. */
export function soundOf(item: Item, which: { readonly length?: number; readonly serial?: string } = {}): number {
  const { count, lengths, serials } = item;
  if (which.serial !== undefined)
    return serials?.some(({ serial, fault }) => serial === which.serial && fault === undefined) ? 1 : 0;
  if (serials) return serials.filter(({ fault }) => fault === undefined).length;
  if (lengths && which.length !== undefined) return listedLength(item, which.length)?.count ?? 0;
  return lengths?.reduce((sum, each) => sum + each.count, 0) ?? count ?? 0;
}

/** What the schema cannot say: an item is counted in one way, and a length is a length. */
export function itemMistakes(placed: Placed, items: Mapping): readonly Mistake[] {
  const told = (path: string, says: string, mend: string): Mistake => ({
    rule: "document.front-matter",
    path,
    place: placed.keys.get(path) ?? placed.places.get(path) ?? START,
    says,
    mend,
  });
  return Object.entries(items).flatMap(([name, data]) => {
    const path = `items.${name}`;
    if (data === null || typeof data !== "object" || Array.isArray(data)) return [];
    const ways = WAYS.filter((way) => mapping(data)[way] !== undefined);
    const many =
      ways.length === 1
        ? []
        : [
            told(
              path,
              ways.length === 0
                ? `The item \`${name}\` does not say how many there are.`
                : `The item \`${name}\` says how many there are in ${ways.length} ways: ${ways.join(", ")}.`,
              "Write one of `count: 12`, `lengths: {25 ft: 4}`, `serials: {P3-001: {}}`.",
            ),
          ];
    const lengths = Object.keys(mapping(mapping(data).lengths));
    const unread = lengths
      .filter((text) => lengthIn(text) === undefined)
      .map((text) =>
        told(`${path}.lengths.${text}`, `\`${text}\` is not a length.`, "Write a length such as `25 ft`."),
      );
    const twice = lengths
      .filter((text, index) => {
        const length = lengthIn(text);
        return (
          length !== undefined &&
          lengths.slice(0, index).some((other) => Math.abs((lengthIn(other) ?? -1) - length) <= SAME_LENGTH)
        );
      })
      .map((text) =>
        told(`${path}.lengths.${text}`, `The length \`${text}\` is listed twice.`, "Add up their counts."),
      );
    return [...many, ...unread, ...twice];
  });
}
