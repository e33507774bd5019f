import { type CheckEntry, type InspectedDocument, workedValues } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import type { Fallen, Scheme } from "../decide/decision.js";
import { type Candidate, FACE, ON_SIDE, offBy, type Sizes, sizesOf } from "../decide/size.js";
import { TextRoom } from "../decide/text.js";
import { OutOfTime } from "../desk/desk.js";
import { type KeptNames, withNames } from "../wish/keep-names.js";
import { draftedText } from "../write/document.js";
import { lengthAsWritten } from "../write/length.js";
import { type Buildable, canBuild, type PairOfFaces, pairsOf, worthLaying } from "./can-build.js";
import { chosen } from "./choose.js";
import { toFindOut } from "./find-out.js";
import { dominates, hangsOf } from "./measure.js";
import { needsOf, shortfallIn, shortfallText } from "./needs.js";
import type { Figure, Option, OutOfIt } from "./option.js";
import { PLAIN, planned, type Turn } from "./plan.js";
import { possibleIf } from "./possible-if.js";

/** Faces that are looked at for each kind of panel, and in all. */
const PER_OFFER = 3;
const MOST_FACES = 6;
/** The same where everything is to be shown. */
const EVERY = { perOffer: 12, faces: 48 } as const;

export interface DraftAsk {
  /** Name of the drafted build. */
  readonly name: string;
  /** Whether everything that is not dominated is shown, instead of a few. */
  readonly every: boolean;
  /** Whether two faces at a time are looked for. */
  readonly pairs?: boolean;
  /** Told what is being looked at. */
  readonly progress?: (words: string) => void;
}

/** What came of a wish. */
export interface Drafted {
  readonly options: readonly Option[];
  /** What each option of the list trades against the first, in a sentence. */
  readonly trades: readonly string[];
  /** What is dominated by another: it is left out. */
  readonly dominated: readonly OutOfIt[];
  readonly fellOut: readonly OutOfIt[];
  /** What was not looked at, where something was not. */
  readonly notLookedAt: readonly string[];
  /** Where no size was wished for: the tallest face of each number of columns. */
  readonly can: readonly Buildable[];
  readonly pairs: readonly PairOfFaces[];
  /** The face nearest to the wish that can be made, where none that suits it can. */
  readonly nearest: { readonly panel: string; readonly width: number; readonly height: number } | undefined;
}

const out = (
  { columns, rows, panel }: Pick<Scheme, "columns" | "rows" | "panel">,
  variant: readonly string[],
  why: Fallen,
): OutOfIt => ({
  panel,
  columns,
  rows,
  variant,
  ...why,
});

const figuresOf = (inspected: InspectedDocument): ReadonlyMap<string, Figure> =>
  new Map([...workedValues(inspected)].map(([path, { value, text }]) => [path, { path, value, text }]));

/** A computed length has tenths of a foot; whoever looks where the face goes has a tape of inches. */
const sideText = ({ value, text }: Figure, system: Brief["system"]): string =>
  system === "metric" || value === undefined
    ? text
    : `${lengthAsWritten(value, system)}${text.endsWith("?") ? " ?" : ""}`;

function sizeText({ columns, rows }: Scheme, figures: ReadonlyMap<string, Figure>, system: Brief["system"]): string {
  const [width, height] = ["width", "height"].map((side) => figures.get(`faces.${FACE}.${side}`));
  return width && height ? `${sideText(width, system)} × ${sideText(height, system)}` : `${columns} × ${rows} panels`;
}

const failing = (checks: readonly CheckEntry[]): CheckEntry | undefined =>
  checks.find(({ outcome, level }) => outcome === "fails" && level === "shall");

/** Writes a scheme, inspects it as it is written, and takes its figures from there; one that fails a requirement falls out. */
function written(brief: Brief, ask: DraftAsk, scheme: Scheme, candidate: Candidate): Option | Fallen {
  const { desk } = brief;
  const first = desk.inspect(draftedText(brief, ask.name, scheme, []));
  const found = toFindOut(first.entry.checks, scheme);
  const document = draftedText(brief, ask.name, scheme, found);
  const { entry } = first;
  const bad = failing(entry.checks);
  const needs = needsOf(first, brief);
  const shortfall = shortfallIn(brief, needs, candidate.offer.lot);
  // What is not owned is no option out of holdings; what it would take is told in place of a count of promises.
  if (bad?.rule === "stock.promised-twice" && shortfall.length > 0)
    return { rule: bad.rule, says: `It can be made if this is bought or hired first: ${shortfallText(shortfall)}.` };
  if (bad) return { rule: bad.rule, says: bad.says };
  const figures = figuresOf(first);
  return {
    scheme,
    document,
    size: sizeText(scheme, figures, brief.system),
    figures,
    open: entry.counts.open,
    toFindOut: found,
    decisions: scheme.decisions,
    needs,
    shortfall,
    possibleIf: possibleIf(entry.checks),
    advised: entry.checks.filter(({ outcome, level }) => outcome === "fails" && level === "should"),
  };
}

/** An option as it is written under the names of the build it is like; its figures keep the names of a draft. */
export function underNames(brief: Brief, name: string, option: Option, kept: KeptNames): Option {
  const scheme = { ...option.scheme, matter: withNames(option.scheme.matter, kept) };
  const { entry } = brief.desk.inspect(draftedText(brief, name, scheme, []));
  const found = toFindOut(entry.checks, scheme);
  return {
    ...option,
    scheme,
    toFindOut: found,
    open: entry.counts.open,
    document: draftedText(brief, name, scheme, found),
  };
}

const isOption = (made: Option | Fallen): made is Option => "document" in made;

const faceOf = ({ columns, rows, rotated, offer }: Candidate): string =>
  `${columns} × ${rows} ${offer.panel}${rotated === undefined ? "" : `, ${ON_SIDE}`}`;

/** What a search that was ended before its time has left: what it was at, and the faces it had not come to. */
function leftBy(looking: string | undefined, waiting: readonly Candidate[]): readonly string[] {
  if (looking === undefined) return ["Every face: the search was ended before the first of them was laid out."];
  const more = waiting.length === 0 ? [] : [`${waiting.map(faceOf).join("; ")}: the search had not come to it.`];
  return [`${looking}, to its end: the search was ended meanwhile.`, ...more];
}

/** Options of one wish: faces in turn, each as plain as can be; then the first of them in other ways. */
export function draft(brief: Brief, ask: DraftAsk): Drafted {
  const options: Option[] = [];
  const fellOut: OutOfIt[] = [];
  const notLookedAt: string[] = [];
  let looking: string | undefined;
  const attempt = (candidate: Candidate, turn: Turn): Option | undefined => {
    looking = `${faceOf(candidate)}${turn.apart ? ", over two circuits" : ""}${turn.moreHangs > 0 ? ", on one hang more" : ""}`;
    ask.progress?.(looking);
    const plan = planned(brief, candidate, turn);
    const about = { ...candidate, panel: candidate.offer.panel };
    const variant = [
      ...(candidate.rotated === undefined ? [] : [ON_SIDE]),
      ...(turn.apart ? ["over two circuits"] : turn.moreHangs > 0 ? ["on one hang more"] : []),
    ];
    if (!plan.ok) {
      fellOut.push(out(about, variant, plan.fallen));
      return undefined;
    }
    const made = written(brief, ask, plan.scheme, candidate);
    if (isOption(made)) options.push(made);
    else fellOut.push(out(about, variant, made));
    return isOption(made) ? made : undefined;
  };
  let nearest: Drafted["nearest"];
  let waiting: readonly Candidate[] = [];
  const { wish } = brief;
  const isSized = wish.width !== undefined || wish.height !== undefined || wish.outOf === "catalogue";
  let can: readonly Buildable[] = [];
  try {
    can = isSized ? [] : canBuild(brief, ask.progress);
    const text = new TextRoom(brief);
    const sizes: Sizes = !isSized
      ? { candidates: worthLaying(brief, can), short: [], narrow: [], odd: [], nearest: undefined }
      : sizesOf(brief, ask.every ? EVERY.perOffer : PER_OFFER, (panel, shape) => text.holds(panel, shape));
    nearest = sizes.nearest;
    for (const { panel, shape, says } of sizes.odd) fellOut.push(out({ ...shape, panel }, [], { rule: "", says }));
    for (const { offer, shape } of sizes.narrow) {
      const room = text.roomOn(offer.panel, shape);
      fellOut.push(
        out({ ...shape, panel: offer.panel }, ["with all of the text"], {
          rule: "viewing.text",
          says: text.shortOf(offer.panel, shape, room),
        }),
      );
    }
    // What another lot of the same panel has enough of is not short.
    const isShort = ({ offer, needs }: Sizes["short"][number]): boolean =>
      !brief.offers.some(({ panel, free }) => panel === offer.panel && free >= needs);
    for (const { offer, shape, needs } of sizes.short.filter(isShort))
      fellOut.push(
        out({ ...shape, panel: offer.panel }, [], {
          rule: "panels.stock",
          says: `${needs} panels are needed, spares included; ${offer.free} of ${offer.lot ?? offer.panel} are free.`,
        }),
      );
    let turned = false;
    const faces = sizes.candidates.slice(0, ask.every ? EVERY.faces : MOST_FACES);
    if (faces.length < sizes.candidates.length)
      notLookedAt.push(`${sizes.candidates.length - faces.length} more faces that suit the wish`);
    for (const [index, candidate] of faces.entries()) {
      waiting = faces.slice(index + 1);
      const plain = attempt(candidate, PLAIN);
      if (!plain || turned) continue;
      turned = true;
      attempt(candidate, { apart: true, moreHangs: 0 });
      if (hangsOf(plain) > 0) attempt(candidate, { apart: false, moreHangs: 1 });
    }
  } catch (error) {
    if (!(error instanceof OutOfTime)) throw error;
    notLookedAt.push(...leftBy(looking, waiting));
  }
  if (options.length === 0 && isSized && !brief.desk.over) nearest = nearestThatCan(brief, ask.progress) ?? nearest;
  const kept = options.filter((option) => !options.some((other) => other !== option && dominates(other, option)));
  const dominated = options
    .filter((option) => !kept.includes(option))
    .map(({ scheme }) =>
      out(scheme, scheme.variant, {
        rule: "",
        says: "Another option is at least as good in everything, and better in something.",
      }),
    );
  const shown = ask.every ? { options: kept, trades: chosen(kept, kept.length).trades } : chosen(kept, MOST_OPTIONS);
  const together = ask.pairs ? pairsOf(brief, can) : [];
  return { ...shown, can, pairs: together, dominated, fellOut, notLookedAt, nearest };
}

/** The face nearest to a size that cannot be met, of what can be made at all. */
function nearestThatCan(brief: Brief, progress: DraftAsk["progress"]): Drafted["nearest"] {
  const { wish } = brief;
  try {
    const can = canBuild({ ...brief, wish: { ...wish, width: undefined, height: undefined } }, progress);
    const faces = can.flatMap(({ panel, rows, width, height }) =>
      Array.from({ length: rows }, (_, row) => ({ panel, width, height: (height / rows) * (row + 1) })),
    );
    const far = (face: (typeof faces)[number]): number =>
      offBy(wish.width, face.width) + offBy(wish.height, face.height);
    return faces.sort((a, b) => far(a) - far(b))[0];
  } catch (error) {
    if (error instanceof OutOfTime) return undefined;
    throw error;
  }
}

/** A table of more is not weighed but read over. */
const MOST_OPTIONS = 5;
