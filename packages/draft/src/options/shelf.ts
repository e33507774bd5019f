import type { Lot } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { begun, panelSize, sparesFor } from "../decide/size.js";
import { greatest } from "../search/greatest.js";
import { shapes } from "../search/shapes.js";
import { readWish } from "../wish/read-wish.js";
import type { SupportOfFace } from "../wish/wish.js";
import { briefFor, type Start } from "./start.js";

/** Rules that judge a face by its panels alone, wherever it is. */
const RULES = ["panels.spares", "panels.batch", "rigging.column-depth", "rigging.stack-height"] as const;
/** Of so many rows no face is looked for. */
const MOST_ROWS = 60;

/** The widest face of so many rows that free panels of a lot make, with their spares. */
export interface ShelfShape {
  readonly rows: number;
  /** 0 where there are too few panels for one column. */
  readonly columns: number;
  readonly spares: number;
  /** Sides in metres. */
  readonly width: number;
  readonly height: number;
  /** Panels that would have to be there besides for one column more. */
  readonly short: number;
}

/** What free panels of a lot can become, held in one way. */
export interface ShelfShapes {
  readonly support: SupportOfFace;
  readonly shapes: readonly ShelfShape[];
  /** Rows no face can have, whatever there is, and why; undefined where only the panels end it. */
  readonly not?: { readonly rows: number; readonly says: string };
}

/**
 * Asks what free panels of lots can become, by the rules that need nothing but the panels: the maker's limits and the
 * house's spares. Whether a hall takes it is for a draft of a wish.
 */
export class Shelf {
  readonly #briefs = new Map<string, Brief>();
  readonly #spares = new Map<string, number>();

  constructor(private readonly start: Start) {}

  #briefOf(support: SupportOfFace): Brief {
    const known = this.#briefs.get(support);
    if (known) return known;
    const { wish } = readWish({ path: "", text: `wish: shelf\ntitle: Shelf\nsupport: ${support}\n` });
    const brief = briefFor(wish as NonNullable<typeof wish>, this.start);
    this.#briefs.set(support, brief);
    return brief;
  }

  #needs(brief: Brief, panel: string, columns: number, rows: number): number {
    const key = `${brief.wish.support} ${panel} ${columns * rows}`;
    const spares = this.#spares.get(key) ?? sparesFor(brief, panel, { columns, rows });
    this.#spares.set(key, spares);
    return columns * rows + spares;
  }

  /** The widest face of each number of rows out of so many free panels; undefined where the size of a panel is not known. */
  of({ name, panel }: Pick<Lot, "name" | "panel">, free: number, support: SupportOfFace): ShelfShapes | undefined {
    const brief = this.#briefOf(support);
    const size = panelSize(brief, panel);
    if (!size) return undefined;
    const offer = { panel, lot: name, free, owned: true };
    const against = (columns: number, rows: number) =>
      brief.desk
        .ask(
          begun(brief, { columns, rows, offer, spares: this.#needs(brief, panel, columns, rows) - columns * rows })
            .matter,
        )
        .fails(...RULES)[0];
    const found: ShelfShape[] = [];
    // All that so many panels can be, row by row: the search of what is wished for, with nothing asked of the sides.
    const all = shapes(size, {}, free);
    for (let rows = 1; rows <= Math.min(free, MOST_ROWS); rows += 1) {
      const not = against(1, rows);
      if (not) return { support, shapes: found, not: { rows, says: not.says } };
      const most = Math.max(0, ...all.filter((each) => each.rows === rows).map(({ columns }) => columns));
      const columns = greatest(
        most,
        (each) => this.#needs(brief, panel, each, rows) <= free && against(each, rows) === undefined,
      );
      found.push({
        rows,
        columns,
        spares: columns === 0 ? 0 : this.#needs(brief, panel, columns, rows) - columns * rows,
        width: columns * size.width,
        height: rows * size.height,
        short: this.#needs(brief, panel, columns + 1, rows) - free,
      });
      if (columns === 0) break;
    }
    return { support, shapes: found };
  }
}
