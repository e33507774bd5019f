import type { Brief, PanelsOnOffer } from "../brief.js";
import { type Candidate, panelSize, sparesFor } from "../decide/size.js";
import { greatest } from "../search/greatest.js";
import { pairs, type Shape } from "../search/shapes.js";
import { PLAIN, planned } from "./plan.js";

/** The tallest face of so many columns that can be made, and what is in the way of one row more. */
export interface Buildable {
  readonly panel: string;
  readonly lot?: string;
  readonly columns: number;
  /** Rows of the tallest; 0 where none can be made. */
  readonly rows: number;
  /** Sides of the tallest, in metres. */
  readonly width: number;
  readonly height: number;
  /** One row more. */
  readonly more: {
    readonly rows: number;
    readonly outcome: "possible-if" | "not";
    /** Panels that would have to be there besides those that are free. */
    readonly short?: number;
    readonly rule: string;
    readonly says: string;
  };
}

/** Two faces that the same panels make at the same time. */
export interface PairOfFaces {
  readonly panel: string;
  readonly lot?: string;
  readonly faces: readonly [Shape, Shape];
  readonly left: number;
}

const MOST_PAIRS = 20;

/** Asks about faces of one offer, each once. */
class Asking {
  readonly #plans = new Map<string, { readonly rule: string; readonly says: string } | undefined>();
  readonly #spares = new Map<number, number>();

  constructor(
    readonly brief: Brief,
    readonly offer: PanelsOnOffer,
  ) {}

  spares({ columns, rows }: Shape): number {
    const count = columns * rows;
    const known = this.#spares.get(count) ?? sparesFor(this.brief, this.offer.panel, { columns, rows });
    this.#spares.set(count, known);
    return known;
  }

  needs(shape: Shape): number {
    return shape.columns * shape.rows + this.spares(shape);
  }

  candidate(shape: Shape): Candidate {
    return { ...shape, offer: this.offer, spares: this.spares(shape) };
  }

  /** What is in the way of a face, panels aside; undefined where nothing is. */
  against(shape: Shape): { readonly rule: string; readonly says: string } | undefined {
    const key = `${shape.columns} ${shape.rows}`;
    if (!this.#plans.has(key)) {
      const plan = planned(this.brief, this.candidate(shape), PLAIN);
      this.#plans.set(key, plan.ok ? undefined : plan.fallen);
    }
    return this.#plans.get(key);
  }
}

/** For each number of columns the tallest face that the free panels make and the venue takes. */
export function canBuild(brief: Brief, tell: (words: string) => void = () => undefined): readonly Buildable[] {
  const offers = [
    ...new Map([...brief.offers].sort((a, b) => a.free - b.free).map((each) => [each.panel, each])).values(),
  ];
  return offers.flatMap((offer) => {
    const size = panelSize(brief, offer.panel);
    if (!size || !Number.isFinite(offer.free)) return [];
    const asking = new Asking(brief, offer);
    const found: Buildable[] = [];
    for (let columns = 1; asking.needs({ columns, rows: 1 }) <= offer.free; columns += 1) {
      tell(`${columns} columns of ${offer.panel}`);
      const byPanels = greatest(
        Math.floor(offer.free / columns),
        (rows) => rows === 0 || asking.needs({ columns, rows }) <= offer.free,
      );
      const rows = greatest(byPanels, (each) => each === 0 || asking.against({ columns, rows: each }) === undefined);
      const next = { columns, rows: rows + 1 };
      const against = asking.against(next);
      const short = asking.needs(next) - offer.free;
      found.push({
        panel: offer.panel,
        ...(offer.lot === undefined ? {} : { lot: offer.lot }),
        columns,
        rows,
        width: columns * size.width,
        height: rows * size.height,
        more: against
          ? { rows: next.rows, outcome: "not", ...against }
          : {
              rows: next.rows,
              outcome: "possible-if",
              short,
              rule: "stock.promised-twice",
              says: `${short} more panel${short === 1 ? "" : "s"} of the same batch.`,
            },
      });
      // What does not hold up one row of so many columns holds up no row of more.
      if (rows === 0) break;
    }
    return found;
  });
}

/** Faces worth laying out of what can be built: the largest, the widest and the tallest. */
export function worthLaying(brief: Brief, can: readonly Buildable[]): readonly Candidate[] {
  const there = can.filter(({ rows }) => rows > 0);
  const first = (by: (each: Buildable) => number): Buildable | undefined =>
    [...there].sort((a, b) => by(b) - by(a) || b.columns * b.rows - a.columns * a.rows)[0];
  const picked = [
    first(({ columns, rows }) => columns * rows),
    first(({ width }) => width),
    first(({ height }) => height),
  ];
  const shapes = new Map(
    picked.flatMap((each) => (each ? [[`${each.panel} ${each.columns} ${each.rows}`, each] as const] : [])),
  );
  return [...shapes.values()].flatMap(({ panel, lot, columns, rows }) => {
    const offer = brief.offers.find((each) => each.panel === panel && each.lot === lot);
    return offer ? [new Asking(brief, offer).candidate({ columns, rows })] : [];
  });
}

/** Two faces at a time out of the panels that are free, those first that leave the fewest on the shelf. */
export function pairsOf(brief: Brief, can: readonly Buildable[]): readonly PairOfFaces[] {
  return [...new Set(can.map(({ panel }) => panel))].flatMap((panel) => {
    const own = can.filter((each) => each.panel === panel);
    const offer = brief.offers.find((each) => each.panel === panel && each.lot === own[0]?.lot);
    if (!offer) return [];
    const asking = new Asking(brief, offer);
    // One row less is lighter, draws less and sends fewer pixels.
    const all = own.flatMap(({ columns, rows }) =>
      Array.from({ length: rows }, (_, row) => ({ columns, rows: row + 1 })),
    );
    return pairs(all, offer.free)
      .map((faces) => ({
        panel,
        ...(offer.lot === undefined ? {} : { lot: offer.lot }),
        faces,
        left: offer.free - asking.needs(faces[0]) - asking.needs(faces[1]),
      }))
      .filter(({ left }) => left >= 0)
      .sort((a, b) => a.left - b.left)
      .slice(0, MOST_PAIRS);
  });
}
