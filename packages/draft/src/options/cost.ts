import { tabled } from "@plumbmark/calc";
import { type Catalogue, type Money, moneyText, priceOf, sumMoney, timesMoney } from "@plumbmark/core";
import { mappingOf, wholeAt } from "../data.js";
import { type Pack, packed } from "../search/together.js";

/** Pieces that have to be bought. */
export interface ToBuy {
  readonly part: string;
  /** In metres, of what is counted by length. */
  readonly metres?: number;
  readonly length?: string;
  readonly count: number;
}

/** The same with what they cost, without tax. Amounts are exact, `412.00 USD`. */
export interface PricedPiece {
  readonly part: string;
  readonly length?: string;
  /** What is needed. */
  readonly count: number;
  /** What has to be bought for it: in whole cases, and never less than the maker sells. */
  readonly buy: number;
  /** Price of one; left out where the catalogue has none. */
  readonly each?: string;
  readonly sum?: string;
}

export interface Cost {
  readonly pieces: readonly PricedPiece[];
  /** One for each currency, of what has a price. */
  readonly sums: readonly string[];
  /** Parts without a price, with their length: they are in no sum. */
  readonly unpriced: readonly string[];
}

/** How a part is sold: at least so many, in cases of so many. */
export function packOf(catalogue: Catalogue, part: string): Pack {
  const sold = mappingOf(catalogue.parts.get(part)?.data.sold);
  return { least: wholeAt(sold, "least") ?? 1, step: wholeAt(sold, "case") ?? 1 };
}

const written = (money: Money): string => `${moneyText(money)} ${money.currency}`;

/** What pieces cost by the catalogue, without tax. What has no price there is named, and is in no sum. */
export function costOf(catalogue: Catalogue, pieces: readonly ToBuy[]): Cost {
  const sums: Money[] = [];
  const unpriced: string[] = [];
  const priced = pieces.map(({ part, metres, length, count }): PricedPiece => {
    const buy = packed(count, packOf(catalogue, part));
    const reach = metres === undefined ? undefined : tabled(metres, "length", "part", "length");
    const each = priceOf(catalogue.parts.get(part), reach);
    const own = { part, ...(length === undefined ? {} : { length }), count, buy };
    if (!each) {
      unpriced.push(length === undefined ? part : `${part} of ${length}`);
      return own;
    }
    const sum = timesMoney(each, buy);
    sums.push(sum);
    return { ...own, each: written(each), sum: written(sum) };
  });
  return { pieces: priced, sums: sumMoney(sums).map(written), unpriced };
}

/** What it costs in a few words; what has no price is never left unsaid. */
export function costText({ pieces, sums, unpriced }: Cost): string {
  if (pieces.length === 0) return "nothing";
  const not = unpriced.length === 0 ? [] : [`not priced: ${unpriced.join(", ")}`];
  return [...(sums.length === 0 ? [] : [sums.join(" and ")]), ...not].join("; ");
}
