import { nameAnchor } from "../html/anchor.js";
import { type Content, h } from "../html/html.js";
import { state } from "../html/state.js";
import { type TableColumn, table } from "../html/table.js";
import { type ItemLine, type ItemTaker, itemLines } from "../site/items.js";
import type { SiteWithDocuments } from "../site/site.js";
import { partAnchor } from "./parts-page.js";

/** Of an item that thousands of builds take, no more are listed. */
const MOST = 100;

export const ITEM_COLUMNS: readonly TableColumn[] = [
  "Item",
  "Which",
  { title: "Usable", align: "right" },
  "Last inspected",
  "Busiest day",
  { title: "Away then", align: "right" },
  { title: "Left then", align: "right" },
  "Taken by",
];

const UNSTATED = h("em", "not stated");
const OPEN = state(["open"], "cannot be told");

/** A day that is broken at a hyphen is read as another. */
const day = (text: string): Content => h("span", { class: "whole" }, text);

const taker = ({ document, use }: ItemTaker): Content => {
  const { from, to, amounts } = use;
  const days = to === undefined ? ["from ", day(from)] : to === from ? day(from) : [day(from), " to ", day(to)];
  return h("li", [
    h("a", { href: document.page }, document.title),
    ": ",
    amounts.n === undefined ? ["number ", UNSTATED] : String(amounts.n),
    ", ",
    days,
  ]);
};

const takers = ({ takers: all }: ItemLine): Content => {
  if (all.length === 0) return "nobody";
  const more = all.length - MOST;
  return [h("ul", all.slice(0, MOST).map(taker)), more > 0 ? h("p", `${more} more take some.`) : undefined];
};

const left = ({ sound, peak }: ItemLine): Content => {
  if (peak === "open") return OPEN;
  const rest = sound - (peak?.count ?? 0);
  return rest < 0 ? h("b", `${-rest} short`) : String(rest);
};

const inspected = ({ inspected: days }: ItemLine): Content =>
  days.flatMap((each, index): Content[] => [index > 0 ? ", " : undefined, each === undefined ? UNSTATED : day(each)]);

const row = (line: ItemLine, parts: ReadonlyMap<string, unknown>) => {
  const { name, which, sound, faults, peak } = line;
  const code = h("code", parts.has(name) ? h("a", { href: `parts.html#${partAnchor(name)}` }, name) : name);
  return {
    id: nameAnchor("Item", which === "" ? name : `${name} ${which}`),
    cells: [
      code,
      which === "" ? "any" : which,
      faults.length === 0 ? String(sound) : [String(sound), h("small", ` out of use: ${faults.join("; ")}`)],
      inspected(line),
      peak === "open" ? OPEN : peak ? day(peak.day) : "none",
      peak === "open" ? OPEN : String(peak?.count ?? 0),
      left(line),
      takers(line),
    ],
  };
};

/** Everything owned besides lots of panels: how much of it, when it was inspected, who takes it when. */
export function itemsOf(site: SiteWithDocuments): Content {
  const lines = itemLines(site);
  if (lines.length === 0) return undefined;
  return h(
    "div",
    { class: "rows items" },
    table(
      "Items",
      ITEM_COLUMNS,
      lines.map((line) => row(line, site.repository.catalogue.parts)),
    ),
  );
}
