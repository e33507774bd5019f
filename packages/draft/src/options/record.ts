import type { Brief } from "../brief.js";
import { FACE } from "../decide/size.js";
import type { Buildable, PairOfFaces } from "./can-build.js";
import { type Cost, costOf, costText } from "./cost.js";
import type { Drafted } from "./draft.js";
import { circuitsOf, fullest, hangsOf, staysHalf } from "./measure.js";
import { shortfallText } from "./needs.js";
import { notSaid } from "./not-said.js";
import type { Option, OutOfIt, Shortfall } from "./option.js";

/** One option as plain data, for any surface and any program. */
export interface OptionEntry {
  readonly number: number;
  /** What it trades for what, against the first. */
  readonly trades: string;
  readonly panel: string;
  readonly lot?: string;
  readonly columns: number;
  readonly rows: number;
  /** Degrees the panels are turned by. */
  readonly rotated?: number;
  readonly spares: number;
  readonly support: string;
  /** Width by height as they are read off a tape. */
  readonly size: string;
  readonly hangs: number;
  readonly circuits: readonly string[];
  /** Load of the fullest circuit over what it carries for hours. */
  readonly "fullest-circuit"?: number;
  readonly "half-lit-on-a-trip": boolean;
  /** Computed values by path, as the document says them. */
  readonly figures: Readonly<Record<string, { readonly value?: number; readonly text: string }>>;
  readonly decisions: readonly {
    readonly what: string;
    readonly why: string;
    readonly exact: boolean;
    readonly gap?: string;
    readonly figures: readonly string[];
  }[];
  readonly "to-find-out": readonly { readonly what: string; readonly by: string }[];
  readonly shortfall: readonly Shortfall[];
  /** What the shortfall costs by the catalogue, without tax, in whole packs as it is sold. */
  readonly cost: Cost;
  /** What has to be done before the build. */
  readonly "possible-if": readonly string[];
  /** Recommendations it does not meet. */
  readonly advised: readonly { readonly rule: string; readonly says: string }[];
  readonly open: number;
}

/** What came of a wish, as plain data. */
export interface DraftRecord {
  readonly draft: 1;
  readonly wish: string;
  readonly title: string;
  readonly file: string;
  /** Units its author writes in. */
  readonly units: "us" | "metric";
  readonly "not-said": readonly string[];
  readonly options: readonly OptionEntry[];
  /** Where no size was wished for: the tallest face of each number of columns, and what is in the way of one row more. */
  readonly "can-build"?: readonly Buildable[];
  /** Two faces the same panels make at the same time; whether the venue takes both at once was not looked at. */
  readonly pairs?: readonly PairOfFaces[];
  readonly dominated: readonly OutOfIt[];
  readonly "fell-out": readonly OutOfIt[];
  readonly "not-looked-at": readonly string[];
  /** Sides of the face nearest to the wish where no whole number of panels suits it, in metres. */
  readonly nearest?: { readonly panel: string; readonly width: number; readonly height: number };
}

function optionEntry({ catalogue }: Brief, option: Option, index: number, trades: string): OptionEntry {
  const { scheme, size, figures, decisions, toFindOut, shortfall, advised, open } = option;
  const full = fullest(option);
  const faces = scheme.matter.faces as Readonly<
    Record<string, { readonly spares?: number; readonly support?: string }>
  >;
  const face = faces[FACE];
  return {
    number: index + 1,
    trades,
    panel: scheme.panel,
    ...(scheme.lot === undefined ? {} : { lot: scheme.lot }),
    columns: scheme.columns,
    rows: scheme.rows,
    ...(scheme.rotated === undefined ? {} : { rotated: scheme.rotated }),
    spares: face?.spares ?? 0,
    support: face?.support ?? FLOWN,
    size,
    hangs: hangsOf(option),
    circuits: circuitsOf(option),
    ...(full === undefined ? {} : { "fullest-circuit": full }),
    "half-lit-on-a-trip": staysHalf(option),
    figures: Object.fromEntries(
      [...figures].map(([path, { value, text }]) => [path, { ...(value === undefined ? {} : { value }), text }]),
    ),
    decisions,
    "to-find-out": toFindOut,
    shortfall,
    cost: costOf(catalogue, shortfall),
    "possible-if": option.possibleIf,
    advised: advised.map(({ rule, says }) => ({ rule, says })),
    open,
  };
}

export function draftRecord(brief: Brief, drafted: Drafted): DraftRecord {
  const { wish } = brief;
  return {
    draft: 1,
    wish: wish.name,
    title: wish.title,
    file: wish.file,
    units: brief.system,
    "not-said": notSaid(brief),
    options: drafted.options.map((option, index) => optionEntry(brief, option, index, drafted.trades[index] as string)),
    ...(drafted.can.length > 0 ? { "can-build": drafted.can } : {}),
    ...(drafted.pairs.length > 0 ? { pairs: drafted.pairs } : {}),
    dominated: drafted.dominated,
    "fell-out": drafted.fellOut,
    "not-looked-at": drafted.notLookedAt,
    ...(drafted.nearest && drafted.options.length === 0 ? { nearest: drafted.nearest } : {}),
  };
}

const NONE = "none";
const FLOWN = "flown";
const NOT_LAID_OUT = "not laid out";

/** The columns options are compared in: a name, and the words of one option. */
const COLUMNS: readonly (readonly [name: string, of: (entry: OptionEntry) => string])[] = [
  ["Option", ({ number }) => String(number)],
  ["Panels", ({ columns, rows, rotated }) => `${columns} × ${rows}${rotated === undefined ? "" : ", on their side"}`],
  ["Panel", ({ panel, spares }) => `${panel}, ${spares} spare${spares === 1 ? "" : "s"}`],
  ["Size", ({ size }) => size],
  [
    "Pixels",
    (entry) =>
      `${bare(figure(entry, `faces.${FACE}.pixels-wide`))} × ${bare(figure(entry, `faces.${FACE}.pixels-high`))}`,
  ],
  ["Capitals", (entry) => figure(entry, `viewing.${FACE}.cap-height`)],
  ["Characters", (entry) => figure(entry, `viewing.${FACE}.characters`)],
  ["Bears on structure", (entry) => bears(entry)],
  ["Hangs", ({ hangs, support }) => (hangs > 0 ? String(hangs) : support === FLOWN ? NOT_LAID_OUT : NONE)],
  ["Circuits", ({ circuits }) => (circuits.length === 0 ? NOT_LAID_OUT : circuits.join(", "))],
  [
    "Fullest circuit",
    (entry) =>
      entry["fullest-circuit"] === undefined ? "not told" : `${Math.round(entry["fullest-circuit"] * 100)} %`,
  ],
  ["To buy or hire", ({ shortfall }) => (shortfall.length === 0 ? "nothing" : shortfallText(shortfall))],
  ["Price, without tax", ({ cost }) => (cost.pieces.length === 0 ? "–" : costText(cost))],
  ["Still to find out", (entry) => String(entry["to-find-out"].length)],
];

const figure = ({ figures }: OptionEntry, path: string): string => figures[path]?.text ?? "–";
/** What each bar bears on the structure, from the audience's left. */
const bears = ({ figures }: OptionEntry): string => {
  const all = Object.keys(figures).filter((path) => /^rigging\.bars\.[^.]+\.on-structure$/u.test(path));
  return all.length === 0 ? "–" : all.map((path) => figures[path]?.text).join(" + ");
};
const bare = (text: string): string => text.replace(/ px$/u, "");

/** The options as a table of words, what none of them has left out. */
export function optionsTable({ options, title }: DraftRecord) {
  const columns = COLUMNS.filter(([, of]) => options.some((entry) => of(entry) !== "–"));
  return {
    name: "options",
    title,
    columns: columns.map(([name]) => ({ name, numeric: false })),
    rows: options.map((entry) => columns.map(([, of]) => ({ text: of(entry), stated: true }))),
  };
}

/** The options as a table of what tells them apart, and in words what is the same of all; one option is told in full. */
export function comparedOptions(record: DraftRecord): {
  readonly table: ReturnType<typeof optionsTable>;
  readonly alike: string | undefined;
} {
  const whole = optionsTable(record);
  const [first, ...others] = whole.rows;
  if (!first || others.length === 0) return { table: whole, alike: undefined };
  const isSame = whole.columns.map((_, at) => others.every((row) => row[at]?.text === first[at]?.text));
  const differing = <Each>(list: readonly Each[]): Each[] => list.filter((_, at) => !isSame[at]);
  const same = whole.columns.flatMap(({ name }, at) =>
    isSame[at] ? [`${name.toLowerCase()}: ${first[at]?.text}`] : [],
  );
  return {
    table: { ...whole, columns: differing(whole.columns), rows: whole.rows.map(differing) },
    alike: same.length === 0 ? undefined : `The same of all: ${same.join("; ")}.`,
  };
}

const cell = (text: string) => ({ text, stated: true });

/** What can be built of the panels that are free, as a table of words. */
export function buildableTable({ "can-build": can = [] }: DraftRecord, length: (metres: number) => string) {
  const columns = ["Panel", "Columns", "Rows up to", "Size", "One row more"];
  return {
    name: "can-build",
    title: "What can be built",
    columns: columns.map((name) => ({ name, numeric: false })),
    rows: can.map(({ panel, columns: wide, rows, width, height, more }) => [
      cell(panel),
      cell(String(wide)),
      cell(rows === 0 ? NONE : String(rows)),
      cell(rows === 0 ? NONE : `${length(width)} × ${length(height)}`),
      cell(more.outcome === "possible-if" ? `possible with ${more.says}` : more.says),
    ]),
  };
}

/** Two faces at a time, as a table of words. */
export function pairsTable({ pairs = [] }: DraftRecord) {
  const shape = ({ columns, rows }: { readonly columns: number; readonly rows: number }): string =>
    `${columns} × ${rows}`;
  return {
    name: "pairs",
    title: "Two faces at the same time",
    columns: ["Panel", "One", "The other", "Panels left"].map((name) => ({ name, numeric: false })),
    rows: pairs.map(({ panel, faces, left }) => [
      cell(panel),
      cell(shape(faces[0])),
      cell(shape(faces[1])),
      cell(String(left)),
    ]),
  };
}
