import { type ScheduleTable, tableMarkdown } from "@plumbmark/core";
import { type CountedPiece, costText, type PurchaseTogether, type TogetherResult } from "@plumbmark/draft";
import type { Colour } from "../../terminal/context.js";
import { SAFETY } from "../form.js";
import { plain, wrap } from "../lines.js";
import { tableText } from "../table-text.js";
import { inert } from "./options-markdown.js";

const cell = (text: string) => ({ text, stated: true });

const NUMERIC = new Set(["Count", "Price of one", "Sum"]);

/** What is bought, with what the catalogue says it costs. */
function buying({ cost }: PurchaseTogether): ScheduleTable {
  return {
    name: "to-buy",
    title: "To buy, without tax",
    columns: ["Part", "Length", "Count", "Price of one", "Sum"].map((name) => ({ name, numeric: NUMERIC.has(name) })),
    rows: cost.pieces.map(({ part, length = "", buy, each = "not priced", sum = "not priced" }) => [
      cell(part),
      cell(length),
      { text: String(buy), number: buy, stated: true },
      cell(each),
      cell(sum),
    ]),
  };
}

/** What all of it costs, in a sentence. */
const costs = ({ cost }: PurchaseTogether): string =>
  cost.pieces.length === 0 ? "Nothing has to be bought." : `It costs, without tax: ${costText(cost)}.`;

function table(title: string, pieces: readonly CountedPiece[]): ScheduleTable {
  return {
    name: "together",
    title,
    columns: ["Part", "Length", "Count"].map((name) => ({ name, numeric: name === "Count" })),
    rows: pieces.map(({ part, length, count }) => [
      cell(part),
      cell(length ?? ""),
      { text: String(count), number: count, stated: true },
    ]),
  };
}

const bought = ({ buy, panel }: PurchaseTogether): number => buy.find(({ part }) => part === panel)?.count ?? 0;

/** The purchase in a sentence. */
function sentence(purchase: PurchaseTogether): string {
  const { panel, lot, chosen } = purchase;
  const shapes = chosen
    .map(({ wish, columns, rows, option }) => `${wish} ${columns} × ${rows} (its option ${option})`)
    .join(", ");
  const count = bought(purchase);
  return count === 0 && lot !== undefined
    ? `Buy no panels: ${lot} has enough ${panel}, and these are yours: ${shapes}.`
    : `Buy ${count} ${panel} of one batch, and these are yours: ${shapes}.`;
}

const gap = ({ looked, all }: PurchaseTogether): string =>
  looked < all
    ? `${looked} of ${all} ways to combine options were looked at.`
    : "Every way to combine options was looked at.";

const nothing = ({ unserved }: TogetherResult): string =>
  unserved.length > 0
    ? `No panel serves them all: ${unserved.join(", ")} can be met by none. Draft it by itself to see what is in the way.`
    : "No panel serves them all: what one can be made of serves another not at all.";

const NOT_LOOKED_AT = "Not looked at:";

/**
 * What serves several wishes, for a terminal.
 * @param notLookedAt what of any of them was not, and what could not be asked
 */
export function togetherText(
  result: TogetherResult,
  notLookedAt: readonly string[],
  around: { readonly width: number; readonly colour: Colour },
): string {
  const line = (text: string): string => `${wrap(plain(text), around.width).join("\n")}\n`;
  const not = notLookedAt.map((each) => line(`${NOT_LOOKED_AT} ${each}`));
  if (result.purchases.length === 0) return [line(nothing(result)), ...not].join("\n");
  const pieces = result.purchases.flatMap((purchase) => [
    line(sentence(purchase)),
    line(costs(purchase)),
    ...(purchase.buy.length > 0 ? [tableText(buying(purchase), around)] : []),
    tableText(table("What has to be there on the fullest day", purchase.peak), around),
    line(gap(purchase)),
  ]);
  return [...pieces, ...not, line(SAFETY)].join("\n");
}

/** The same as Markdown. */
export function togetherMarkdown(result: TogetherResult, notLookedAt: readonly string[]): string {
  const not = notLookedAt.map((each) => `${NOT_LOOKED_AT} ${inert(each)}\n`);
  if (result.purchases.length === 0) return [`${nothing(result)}\n`, ...not].join("\n");
  return [
    ...result.purchases.flatMap((purchase) => [
      `${sentence(purchase)}\n`,
      `${costs(purchase)}\n`,
      ...(purchase.buy.length > 0 ? [tableMarkdown(buying(purchase))] : []),
      tableMarkdown(table("What has to be there on the fullest day", purchase.peak)),
      `${gap(purchase)}\n`,
    ]),
    ...not,
    `_${SAFETY}_\n`,
  ].join("\n");
}
