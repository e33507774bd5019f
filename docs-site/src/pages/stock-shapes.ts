import type { System } from "@plumbmark/calc";
import { type DaysAway, dayAfter, openRepository, type Promised, soundIn, withWay } from "@plumbmark/core";
import { freePath, lengthAsWritten, Shelf, type ShelfShape, type ShelfShapes } from "@plumbmark/draft";
import { nameAnchor } from "../html/anchor.js";
import { type Content, h } from "../html/html.js";
import { inlineCode } from "../html/inline-code.js";
import { state } from "../html/state.js";
import { table } from "../html/table.js";
import type { WishesInput } from "../wishes/draft-wish.js";

/** Days on which as many panels of a lot are free. */
export interface FreeDays {
  readonly from: string;
  /** Undefined for good. */
  readonly to?: string;
  /** Undefined where a build does not say how many it takes. */
  readonly free?: number;
}

/** What a lot can become on its free days. Plain data, so that it can be kept for the next time. */
export interface LotShapes {
  readonly lot: string;
  readonly panel: string;
  readonly units: System;
  readonly periods: readonly FreeDays[];
  /** By the number of panels that are free. */
  readonly made: readonly { readonly free: number; readonly held: readonly ShelfShapes[] }[];
}

/** Nobody reads on. */
const MOST_PERIODS = 40;
const MOST_COUNTS = 12;

/** The days from today on, cut where panels of the lot leave or come back. Drafts and builds without days take none. */
export function freeDaysOf(
  sound: number,
  promises: readonly Promised[],
  way: DaysAway,
  today: string,
): readonly FreeDays[] {
  const away = promises.flatMap(({ draft, stay, count }) => (draft || !stay ? [] : [{ ...withWay(stay, way), count }]));
  const cuts = new Set([today]);
  for (const { from, to } of away) {
    if (from > today) cuts.add(from);
    if (to !== undefined && to >= today) cuts.add(dayAfter(to));
  }
  const days = [...cuts].sort();
  const periods: FreeDays[] = [];
  for (const [index, from] of days.entries()) {
    const next = days[index + 1];
    const there = away.filter((each) => each.from <= from && (each.to === undefined || from <= each.to));
    const counts = there.map(({ count }) => count);
    const free = counts.includes(undefined)
      ? undefined
      : Math.max(0, sound - counts.reduce<number>((sum, each) => sum + (each ?? 0), 0));
    const last = periods.at(-1);
    const to = next === undefined ? {} : { to: dayAfter(next, -1) };
    if (last && last.free === free)
      periods[periods.length - 1] = { from: last.from, ...to, ...(free === undefined ? {} : { free }) };
    else periods.push({ from, ...to, ...(free === undefined ? {} : { free }) });
  }
  return periods.slice(0, MOST_PERIODS);
}

/** What every lot can become on its free days, by the maker's limits and the house's spares. @throws StandardError */
export function stockShapes({ files, rules, today }: WishesInput, promises: readonly Promised[]): readonly LotShapes[] {
  const own = rules.filter(({ plugin }) => plugin === undefined);
  const repository = openRepository(files, own, { today, every: true, accepted: true, keep: "models", turns: false });
  const { stock, catalogue } = repository;
  if (stock.lots.size === 0) return [];
  const shelf = new Shelf({ repository, path: freePath(new Set(repository.documents), "shelf") });
  const units = (repository.standard.practice ?? "us") === "us" ? ("us" as const) : ("metric" as const);
  return [...stock.lots.values()].flatMap((lot) => {
    if (!catalogue.parts.has(lot.panel)) return [];
    const periods = freeDaysOf(
      soundIn(lot),
      promises.filter((each) => each.lot === lot.name),
      stock.days,
      today,
    );
    const counts = [...new Set(periods.flatMap(({ free }) => (free === undefined || free === 0 ? [] : [free])))];
    const made = counts.slice(0, MOST_COUNTS).map((free) => ({
      free,
      held: (["flown", "stacked"] as const).flatMap((support) => shelf.of(lot, free, support) ?? []),
    }));
    return [{ lot: lot.name, panel: lot.panel, units, periods, made }];
  });
}

export const PERIOD_COLUMNS = ["Days", "Panels free", "Hung", "Standing"] as const;
export const SHELF_COLUMNS = ["Rows", "Columns up to", "Size", "Panels with spares", "One column more"] as const;

const HELD = { flown: "Hung", stacked: "Standing", wall: "On a wall", deck: "On a deck" } as const;

/** A day that is broken at a hyphen is read as another. */
const day = (text: string): Content => h("span", { class: "whole" }, text);

const days = ({ from, to }: FreeDays): Content =>
  to === undefined ? ["from ", day(from)] : to === from ? day(from) : [day(from), " to ", day(to)];

/** A strip, a screen and a tower: the widest face, the one whose shorter side is longest, and the tallest. */
function telling(held: ShelfShapes | undefined): readonly ShelfShape[] {
  const there = (held?.shapes ?? []).filter(({ columns }) => columns > 0);
  const most = (of: (shape: ShelfShape) => number): ShelfShape | undefined =>
    [...there].sort((a, b) => of(b) - of(a) || b.columns * b.rows - a.columns * a.rows)[0];
  const picked = [
    most(({ width }) => width),
    most(({ width, height }) => Math.min(width, height)),
    most(({ height }) => height),
  ];
  return [...new Set(picked.filter((each) => each !== undefined))];
}

const shapeText = (shapes: readonly ShelfShape[]): string =>
  shapes.length === 0 ? "none" : shapes.map(({ columns, rows }) => `${columns} × ${rows}`).join(", ");

const anchor = (lot: string, free: number): string => nameAnchor("Shapes", `${lot} ${free}`);

function shapeTable({ support, shapes, not }: ShelfShapes, units: System, of: string): Content {
  const length = (metres: number): string => lengthAsWritten(metres, units);
  return [
    h(
      "div",
      { class: "rows shelf" },
      table(
        `${HELD[support]}, of ${of}`,
        SHELF_COLUMNS,
        shapes.map(({ rows, columns, spares, width, height, short }) => [
          String(rows),
          columns === 0 ? "none" : String(columns),
          columns === 0 ? "–" : `${length(width)} × ${length(height)}`,
          columns === 0 ? "–" : `${columns * rows} and ${spares} spare${spares === 1 ? "" : "s"}`,
          `with ${short} more of the same batch`,
        ]),
      ),
    ),
    not === undefined
      ? undefined
      : h("p", [`${not.rows} rows, ${HELD[support].toLowerCase()}: not. `, inlineCode(not.says)]),
  ];
}

const lotShapes = ({ lot, panel, units, periods, made }: LotShapes): Content => {
  const of = (free: number | undefined) => made.find((each) => each.free === free);
  const best = (free: number | undefined, support: "flown" | "stacked"): Content => {
    const found = of(free);
    if (free === undefined) return state(["open"], "cannot be told");
    if (!found) return free === 0 ? "none" : "not looked at";
    return h(
      "a",
      { href: `#${anchor(lot, free)}` },
      shapeText(telling(found.held.find((each) => each.support === support))),
    );
  };
  return [
    h("h3", [h("code", lot), ", ", h("code", panel)]),
    h(
      "div",
      { class: "rows periods" },
      table(
        `Free panels of ${lot}`,
        PERIOD_COLUMNS,
        periods.map((each) => [
          days(each),
          each.free === undefined ? state(["open"], "cannot be told") : String(each.free),
          best(each.free, "flown"),
          best(each.free, "stacked"),
        ]),
      ),
    ),
    made.map(({ free, held }) =>
      h("details", { id: anchor(lot, free) }, [
        h("summary", `What ${free} panels of ${lot} can become`),
        held.map((each) => shapeTable(each, units, `${free} panels of ${lot}`)),
      ]),
    ),
  ];
};

/** Shapes that can be made of what is on the shelf, on the days it is there. */
export const shapesOf = (all: readonly LotShapes[]): Content =>
  all.length === 0
    ? undefined
    : [
        h("h2", { id: "Shapes" }, "Shapes that can be made on free days"),
        h(
          "p",
          "The widest face of each number of rows, of one lot with the spares the house asks for, by the maker's limits on panels alone: in columns and rows, the widest, the one whose shorter side is longest, and the tallest. Days out and back count as away. Whether a hall, its circuits and its structure take a face is another question: write a wish, and draft it.",
        ),
        all.map(lotShapes),
      ];
