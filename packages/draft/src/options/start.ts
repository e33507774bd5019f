import { choices, type Free, type Mistake, nearest, type OpenRepository, type Part, stayOf } from "@plumbmark/core";
import type { Brief, PanelsOnOffer } from "../brief.js";
import { grouped, type Mapping, mappingOf } from "../data.js";
import { Desk } from "../desk/desk.js";
import { venueFactsOf } from "../venue/facts.js";
import type { Wish } from "../wish/wish.js";

export interface Start {
  /** One of its own: a document is put into it. */
  readonly repository: OpenRepository;
  /** Where the drafted document is going to be. */
  readonly path: string;
  readonly isOver?: () => boolean;
}

const HOLDINGS = "holdings";
const CATALOGUE = "catalogue";

/** What a wish may be made of: lots, or panels of the catalogue that would have to be bought. */
function offersOf(wish: Wish, { repository }: Start, free: Free | undefined): readonly PanelsOnOffer[] {
  const { stock, catalogue } = repository;
  const panels = [...catalogue.parts.values()].filter((part: Part) => part.kind === "panel").map(({ name }) => name);
  const wanted = (panel: string): boolean => wish.panel === undefined || wish.panel === panel;
  const outOf = wish.outOf ?? (stock.lots.size > 0 ? HOLDINGS : CATALOGUE);
  if (outOf === CATALOGUE)
    return panels
      .filter(wanted)
      .map((panel) => ({ panel, lot: undefined, free: Number.POSITIVE_INFINITY, owned: false }));
  return [...stock.lots.values()]
    .filter(({ name, panel }) => (outOf === HOLDINGS || outOf === name) && wanted(panel) && panels.includes(panel))
    .map(({ name, panel, count, faulty = 0 }) => ({
      panel,
      lot: name,
      free: free?.lot(name)?.free ?? Math.max(0, count - faulty),
      owned: true,
    }));
}

/** Lots and panels a wish names and nobody has. */
export function unknownIn(
  wish: Wish,
  { stock, catalogue }: Pick<OpenRepository, "stock" | "catalogue">,
): readonly Pick<Mistake, "path" | "says" | "mend">[] {
  const told: Pick<Mistake, "path" | "says" | "mend">[] = [];
  const tell = (path: string, name: string, says: string, names: readonly string[]): void => {
    const near = nearest(name, names);
    told.push({ path, says, mend: near === undefined ? choices(names, name) : `Did you mean \`${near}\`?` });
  };
  const { outOf, panel } = wish;
  if (outOf !== undefined && ![HOLDINGS, CATALOGUE].includes(outOf) && !stock.lots.has(outOf))
    tell("out-of", outOf, `No lot \`${outOf}\` is in the holdings.`, [HOLDINGS, CATALOGUE, ...stock.lots.keys()]);
  const panels = [...catalogue.parts.values()].filter((part) => part.kind === "panel").map(({ name }) => name);
  if (panel !== undefined && !panels.includes(panel))
    tell("panel", panel, `No panel \`${panel}\` is in the catalogue.`, panels);
  return told;
}

/**
 * What decides how every front matter of a draft is judged.
 * @param facts of a venue that has no survey: those of one that has are found there
 */
const givenIn = (practice: "us" | "iec", facts: Mapping): Mapping =>
  grouped({ practice, exposure: facts.exposure, "on-stage": facts["on-stage"] });

/** Everything a draft of a wish is made from. */
export function briefFor(wish: Wish, start: Start): Brief {
  const { repository, path } = start;
  const facts = venueFactsOf(wish.venue);
  const stay = stayOf(wish.onSite);
  const free =
    stay && repository.free({ stay, but: path, ...(wish.venueName === undefined ? {} : { venue: wish.venueName }) });
  const stated = mappingOf(facts.survey?.placed.data);
  const surveyed = repository.surveys.byName.get(wish.venueName ?? "") ? wish.venueName : undefined;
  const practice =
    wish.practice ??
    (stated.practice === "iec" ? "iec" : stated.practice === "us" ? "us" : undefined) ??
    repository.standard.practice ??
    "us";
  return {
    wish,
    facts,
    surveyed,
    desk: new Desk(repository, path, start.isOver, givenIn(practice === "iec" ? "iec" : "us", surveyed ? {} : stated)),
    catalogue: repository.catalogue,
    stock: repository.stock,
    practice: practice === "iec" ? "iec" : "us",
    system: practice === "iec" ? "metric" : "us",
    free,
    outOfHoldings: wish.outOf !== "catalogue",
    offers: offersOf(wish, start, free),
  };
}

/** A path no document has, for what is only looked at. */
export function freePath(taken: ReadonlySet<string>, name: string): string {
  for (let number = 0; ; number += 1) {
    const path = `builds/${name}${number === 0 ? "" : `-${number}`}.md`;
    if (!taken.has(path)) return path;
  }
}
