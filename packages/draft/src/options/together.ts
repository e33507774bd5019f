import { type OpenRepository, stayOf, withWay } from "@plumbmark/core";
import { buyTogether, type Days, type Needs } from "../search/together.js";
import type { Wish } from "../wish/wish.js";
import { type Cost, costOf, packOf } from "./cost.js";
import type { Drafted } from "./draft.js";
import type { NeededPiece, Option } from "./option.js";

/** A wish with the options that were drafted of it. */
export interface DraftedWish {
  readonly wish: Wish;
  readonly drafted: Drafted;
}

/** Pieces that are bought or have to be there. */
export interface CountedPiece {
  readonly part: string;
  readonly kind: string;
  readonly length?: string;
  readonly count: number;
}

/** One purchase that serves every wish: panels of one kind and batch, and what goes with them. */
export interface PurchaseTogether {
  readonly panel: string;
  /** The lot that has enough of them already; undefined where a batch is bought. */
  readonly lot?: string;
  /** What has to be there on the fullest day of each. */
  readonly peak: readonly CountedPiece[];
  /** What is bought: the peak less what is owned, in whole cases and never less than the maker sells. */
  readonly buy: readonly CountedPiece[];
  /** What that costs by the catalogue, without tax. */
  readonly cost: Cost;
  /** The option of each wish it goes with, by the wish's name and the option's place among its options. */
  readonly chosen: readonly {
    readonly wish: string;
    readonly option: number;
    readonly columns: number;
    readonly rows: number;
  }[];
  /** Combinations of options that were looked at, and all there are. */
  readonly looked: number;
  readonly all: number;
}

export interface TogetherResult {
  /** One for each kind of panel that serves every wish, the one to buy least of first. */
  readonly purchases: readonly PurchaseTogether[];
  /** Wishes for which no option is left of any panel that serves others. */
  readonly unserved: readonly string[];
}

const DAY_MS = 86_400_000;
const ALWAYS: Days = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };

/** Days something is away for a wish; one without days may stand at any time, so it counts on all of them. */
function daysOf({ onSite }: Wish, { stock }: Pick<OpenRepository, "stock">): Days {
  const stay = stayOf(onSite);
  if (!stay) return ALWAYS;
  const away = withWay(stay, stock.days);
  const day = (text: string): number => Date.parse(text) / DAY_MS;
  return { from: day(away.from), to: away.to === undefined ? Number.POSITIVE_INFINITY : day(away.to) };
}

const keyOfPiece = ({ part, length }: Pick<NeededPiece, "part" | "length">): string => `${part}\t${length ?? ""}`;

/** Pieces that are owned, besides panels: those of a purchase are of one batch, and so of no lot there is. */
function ownedOf(pieces: Iterable<NeededPiece>, { stock }: Pick<OpenRepository, "stock">): Map<string, number> {
  const owned = new Map<string, number>();
  for (const piece of pieces) {
    const item = stock.items.get(piece.part);
    if (!item || piece.kind === "panel") continue;
    const listed = item.lengths?.find(
      ({ length }) => piece.metres !== undefined && Math.abs(length - piece.metres) < 1e-6,
    );
    const count = item.lengths
      ? (listed?.count ?? 0)
      : (item.count ?? item.serials?.filter(({ fault }) => fault === undefined).length ?? 0);
    owned.set(keyOfPiece(piece), count);
  }
  return owned;
}

/** Options of the face that is nearest to what was asked for: a smaller one would always be the least to buy. */
const nearestOf = (options: readonly Option[]): readonly Option[] =>
  options.filter(
    ({ scheme }) => scheme.columns === options[0]?.scheme.columns && scheme.rows === options[0]?.scheme.rows,
  );

/** The purchase of one kind of panel that serves every wish; undefined when one of them has no option of it. */
function purchaseOf(
  panel: string,
  wishes: readonly DraftedWish[],
  repository: OpenRepository,
): PurchaseTogether | undefined {
  const pieces = new Map<string, NeededPiece>();
  const lists = wishes.map(({ wish, drafted }) => {
    const options = nearestOf(drafted.options.filter(({ scheme }) => scheme.panel === panel));
    for (const { needs } of options) for (const piece of needs) pieces.set(keyOfPiece(piece), piece);
    return { wish, options, all: drafted.options };
  });
  if (lists.some(({ options }) => options.length === 0)) return undefined;
  const panelKeys = [...pieces].filter(([, { kind }]) => kind === "panel").map(([key]) => key);
  const needsOfOption = ({ needs }: Option): Needs => new Map(needs.map((piece) => [keyOfPiece(piece), piece.count]));
  const cost = (buy: Needs): readonly number[] => {
    const panels = panelKeys.reduce((sum, key) => sum + (buy.get(key) ?? 0), 0);
    return [panels, [...buy.values()].reduce((sum, count) => sum + count, 0) - panels];
  };
  const searched = (owned: Needs) =>
    buyTogether(
      lists.map(({ wish, options }) => ({
        name: wish.name,
        days: daysOf(wish, repository),
        options: options.map(needsOfOption),
      })),
      owned,
      (key) => packOf(repository.catalogue, (pieces.get(key) as NeededPiece).part),
      cost,
    );
  const owned = ownedOf(pieces.values(), repository);
  const [lot] = [...repository.stock.lots.values()]
    .filter((each) => each.panel === panel)
    .map(({ name, count, faulty = 0 }) => ({ name, count: Math.max(0, count - faulty) }))
    .sort((a, b) => b.count - a.count);
  // A lot that has enough serves; one that has too few cannot be filled up, for batches are not mixed in a face.
  const ofLot = lot && searched(new Map([...owned, ...panelKeys.map((key) => [key, lot.count] as const)]));
  const serves = ofLot && panelKeys.every((key) => !ofLot.best.buy.has(key));
  const search = serves ? ofLot : searched(owned);
  if (!search) return undefined;
  const counted = (needs: Needs): readonly CountedPiece[] =>
    [...needs].map(([key, count]) => {
      const { part, kind, length } = pieces.get(key) as NeededPiece;
      return { part, kind, ...(length === undefined ? {} : { length }), count };
    });
  return {
    panel,
    ...(serves && lot ? { lot: lot.name } : {}),
    peak: counted(search.best.peak),
    buy: counted(search.best.buy),
    cost: costOf(
      repository.catalogue,
      [...search.best.buy].map(([key, count]) => ({ ...(pieces.get(key) as NeededPiece), count })),
    ),
    chosen: lists.map(({ wish, options, all }) => {
      const option = options[search.best.chosen.get(wish.name) as number] as Option;
      return {
        wish: wish.name,
        option: all.indexOf(option) + 1,
        columns: option.scheme.columns,
        rows: option.scheme.rows,
      };
    }),
    looked: search.looked,
    all: search.all,
  };
}

const panelsBought = ({ buy }: PurchaseTogether): number =>
  buy.reduce((sum, { kind, count }) => sum + (kind === "panel" ? count : 0), 0);

/** The least that serves several wishes, of one kind of panel and one batch: summed over what stands at the same time. */
export function drawnTogether(wishes: readonly DraftedWish[], repository: OpenRepository): TogetherResult {
  const panels = [...new Set(wishes.flatMap(({ drafted }) => drafted.options.map(({ scheme }) => scheme.panel)))];
  const purchases = panels
    .flatMap((panel) => purchaseOf(panel, wishes, repository) ?? [])
    .sort((a, b) => panelsBought(a) - panelsBought(b));
  const unserved = wishes.filter(({ drafted }) => drafted.options.length === 0).map(({ wish }) => wish.name);
  return { purchases, unserved };
}
