import type { System, Value } from "@plumbmark/calc";
import type { Build } from "../model/build.js";
import { itemsNeeded, type NeededItem } from "../model/shared/item-uses.js";
import { type Money, moneyText, sumMoney, timesMoney } from "../repository/money.js";
import { priceOf } from "../repository/price.js";
import { asWritten, type ColumnOf, NOT_STATED, type ScheduleTable, tableOf } from "./table.js";

/** One line of a quotation: pieces of a part, or a sum. */
interface PricedLine {
  readonly name: string;
  readonly describes: string;
  readonly count: Value<"count"> | undefined;
  readonly length: Value<"length"> | undefined;
  readonly each: Money | "not stated" | undefined;
  readonly sum: Money | "not stated";
}

function lineOf({ name, describes, count, length }: NeededItem, build: Build): PricedLine {
  const each = priceOf(build.reader.parts.get(name), length);
  const sum = each && count.known && Number.isInteger(count.value) ? timesMoney(each, count.value) : NOT_STATED;
  return { name, describes, count, length, each: each ?? NOT_STATED, sum };
}

const COLUMNS: readonly ColumnOf<PricedLine>[] = [
  { name: "Part", of: ({ name }) => name },
  { name: "In all", kind: "count", of: ({ count }) => count },
  { name: "As written", of: ({ length }) => asWritten(length) },
  { name: "Description", of: ({ describes }) => describes, aside: true },
  { name: "Price of one", of: ({ each }) => (each === undefined ? "" : each === NOT_STATED ? each : moneyText(each)) },
  { name: "Sum", of: ({ sum }) => (sum === NOT_STATED ? sum : moneyText(sum)) },
  { name: "Currency", of: ({ sum }) => (sum === NOT_STATED ? "" : sum.currency) },
];

/** A quotation's list, and how many lines of it have no price. */
export interface Prices {
  readonly table: ScheduleTable;
  /** Parts of which no price, or no number, is written down: they are in no sum. */
  readonly unpriced: readonly string[];
}

/**
 * What the parts of a build cost: number times price, and the sum in each currency, exact and without tax. What has no
 * price is listed as that and is in no sum.
 */
export function pricesOf(build: Build, system: System): Prices {
  const lines = itemsNeeded(build)
    .filter(({ name }) => build.reader.parts.has(name))
    .map((need) => lineOf(need, build));
  const priced = lines.flatMap(({ sum }) => (sum === NOT_STATED ? [] : [sum]));
  const unpriced = [...new Set(lines.filter(({ sum }) => sum === NOT_STATED).map(({ name }) => name))];
  const sums = sumMoney(priced).map(
    (sum): PricedLine => ({
      name: unpriced.length > 0 ? "Sum of what has a price" : "Sum",
      ...{ describes: "without tax", count: undefined, length: undefined, each: undefined, sum },
    }),
  );
  return {
    table: tableOf({ name: "prices", title: "Prices, without tax" }, COLUMNS, [...lines, ...sums], system),
    unpriced,
  };
}
