import { counted, missing, sum, tabled, type Value } from "@plumbmark/calc";
import { type Item, listedLength, soundOf } from "../../repository/items.js";
import type { Piece } from "../../takeoff/piece.js";
import { stationsOf } from "../../takeoff/stations.js";
import type { Design } from "../design.js";
import { onceAcross } from "../reading/once.js";
import { placeNaming } from "../reading/parts-used.js";
import { pieceNamed } from "./processor-uses.js";
import type { SharedDesign } from "./shared-design.js";
import type { OwnUse } from "./use.js";

/** Pieces of one part, of cables and bars of one length. */
export interface NeededItem {
  readonly name: string;
  readonly kind: string;
  readonly describes: string;
  /** Undefined of what has no length; missing where it has one that is not written down. */
  readonly length: Value<"length"> | undefined;
  readonly count: Value<"count">;
  /** What they are for: "run P1". */
  readonly uses: readonly string[];
}

const keyOf = ({ name, length }: Piece): string =>
  `${name}\u0000${length === undefined ? "" : length.known ? Math.round(length.value * 1000) : "?"}`;

/** Everything a build needs by part and length, whatever it is for. */
export const itemsNeeded = (build: SharedDesign): readonly NeededItem[] =>
  onceAcross(build, "items needed", () => needed(build));

function needed({ takeoff }: SharedDesign): readonly NeededItem[] {
  const groups = new Map<string, Piece[]>();
  for (const piece of takeoff.pieces) {
    const group = groups.get(keyOf(piece));
    if (group) group.push(piece);
    else groups.set(keyOf(piece), [piece]);
  }
  return [...groups.values()].map((pieces) => {
    const { name, kind, describes, length } = pieces[0] as Piece;
    const count = sum(
      pieces.map((each) => each.count),
      "count",
      "n",
    ) as Value<"count">;
    return { name, kind, describes, length, count, uses: [...new Set(pieces.map(({ use }) => use))] };
  });
}

const there = (item: Item, length?: number): Value<"count"> =>
  tabled(soundOf(item, length === undefined ? {} : { length }), "count", "house", `${item.name} in the stock list`);

/** A part of the holdings by the length it is listed under; one of unknown length may be any of them. */
function usesOfNeed(need: NeededItem, item: Item, path: string): readonly OwnUse[] {
  const { name, count, length } = need;
  const about = { of: "item" as const, name, path, unit: "{count}" };
  if (!item.lengths) return [{ ...about, label: name, amounts: { n: count }, allowed: there(item) }];
  if (length?.known) {
    const listed = listedLength(item, length.value);
    const written = length.origin.from === "written" ? length.origin.text.trim() : undefined;
    const text = listed?.text ?? written ?? `${Number(length.value.toPrecision(4))} m`;
    return [
      { ...about, which: text, label: `${name}, ${text}`, amounts: { n: count }, allowed: there(item, length.value) },
    ];
  }
  const unknown = missing("count", { path, what: `length of every ${name}`, of: "The build" });
  return item.lengths.map((each) => ({
    ...{ ...about, which: each.text, label: `${name}, ${each.text}`, amounts: { n: unknown } },
    allowed: there(item, each.length),
  }));
}

/** Devices the document names by their serial numbers. */
function serialUses(build: Design, venue: string | undefined): readonly OwnUse[] {
  const { reader, context } = build;
  const paths = ["data.processor", ...stationsOf(build).map(({ path }) => path)];
  return paths.flatMap((path): readonly OwnUse[] => {
    const [name, serial] = [reader.text(`${path}.part`), reader.text(`${path}.serial`)];
    const item = name === undefined ? undefined : context.stock.items.get(name);
    if (name === undefined || serial === undefined || !item) return [];
    const fault = item.serials?.find((each) => each.serial === serial)?.fault;
    const what = `${name} ${serial} in the stock list${fault === undefined ? "" : `, out of use: ${fault}`}`;
    const piece = pieceNamed(build, path, undefined) as string;
    const place = reader.text(`${path}.place`);
    return [
      {
        ...{ of: "item" as const, name, which: piece, path, label: `${name} ${serial}`, unit: "{count}" },
        amounts: { n: counted(1, `${name} ${serial}`) },
        allowed: tabled(soundOf(item, { serial }), "count", "house", what),
        // Two builds of one venue that name it at one place share it.
        ...(venue !== undefined && place !== undefined ? { once: `${piece} ${venue} ${place}` } : {}),
      },
    ];
  });
}

/** The processor of a build counts once with that of another at the same venue and place. */
function sharedPiece(build: Design, name: string, venue: string | undefined): { readonly once?: string } {
  const path = "data.processor";
  const piece = build.reader.text(`${path}.part`) === name ? pieceNamed(build, path, venue) : undefined;
  return piece === undefined ? {} : { once: [name, piece, ...(piece.startsWith("serial ") ? [] : [venue])].join(" ") };
}

/** What the build takes of the items the holdings list. */
export function itemUses(build: SharedDesign, venue: string | undefined): readonly OwnUse[] {
  const { items } = build.context.stock;
  const listed = itemsNeeded(build).flatMap((need) => {
    const item = items.get(need.name);
    if (!item) return [];
    const one = need.count.known && need.count.value === 1 ? sharedPiece(build, need.name, venue) : {};
    return usesOfNeed(need, item, placeNaming(build.reader, need.name)).map((use) => ({ ...use, ...one }));
  });
  return [...listed, ...serialUses(build, venue)];
}
