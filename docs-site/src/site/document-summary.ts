import { guessMark } from "@plumbmark/calc";
import {
  type CheckEntry,
  type DocumentEntry,
  type Outcome,
  type Stay,
  surveyNames,
  type WaitsForEntry,
} from "@plumbmark/core";
import { weightText } from "../drawings/shared/value-text.js";
import { powerOf, weightOf, worstOf } from "./build-figures.js";
import type { PublishedDocument } from "./published-document.js";
import type { Site } from "./site.js";

/** A figure as it is printed; open when it cannot be told. */
export type SummaryFigure = { readonly text: string } | "open";

/** What the pages about all documents show of one. Plain data, so that the document itself can be let go. */
export interface DocumentSummary {
  readonly entry: Omit<DocumentEntry, "checks">;
  readonly page: string;
  readonly number: string;
  readonly title: string;
  readonly venue?: string;
  readonly onSite?: string;
  /** The survey of its venue, by name. */
  readonly venueName?: string;
  readonly stay?: Stay;
  /** What of the venue it uses. */
  readonly uses?: { readonly circuits: readonly string[]; readonly points: readonly string[] };
  /** What it needs and the survey does not state. */
  readonly lacks?: readonly Pick<WaitsForEntry, "path" | "place" | "what" | "of">[];
  readonly preparedBy?: string;
  readonly approvedBy?: string;
  readonly weight?: SummaryFigure;
  readonly power?: SummaryFigure;
  /** The check nearest its limit. */
  readonly worst?: Pick<CheckEntry, "rule" | "share">;
  /** How often each rule came out which way. */
  readonly judged: Readonly<Record<string, OutcomeCounts>>;
  /** Parts of the catalogue that are named in it. */
  readonly parts: readonly string[];
  /** Whether a face names no lot. */
  readonly lotless: boolean;
}

export type OutcomeCounts = Readonly<Partial<Record<Outcome, number>>>;

function judgedIn(checks: readonly CheckEntry[]): DocumentSummary["judged"] {
  const rules: Record<string, Partial<Record<Outcome, number>>> = Object.create(null);
  for (const { rule, outcome } of checks) {
    rules[rule] ??= {};
    const counts = rules[rule];
    counts[outcome] = (counts[outcome] ?? 0) + 1;
  }
  return rules;
}

/** Every text that stands anywhere in some data, keys too, of those that are asked for. */
function textsIn(data: unknown, asked: (text: string) => boolean, into: Set<string>): Set<string> {
  if (typeof data === "string") {
    if (asked(data)) into.add(data);
  } else if (Array.isArray(data)) for (const each of data) textsIn(each, asked, into);
  else if (data !== null && typeof data === "object")
    for (const [key, value] of Object.entries(data)) {
      textsIn(key, asked, into);
      textsIn(value, asked, into);
    }
  return into;
}

/** Where and when it stands, and what of the venue it uses. */
function venueOf(build: NonNullable<PublishedDocument["build"]>): Partial<DocumentSummary> {
  const { venue, stay, circuits, bars } = build;
  const survey = venue.survey;
  if (!survey) return stay ? { stay } : {};
  const points = bars
    .flatMap(({ hangs }) => hangs)
    .flatMap(({ point }) => (point ? [`${point.structure}.${point.point}`] : []));
  const surveyed = surveyNames(survey, "circuits");
  return {
    ...(stay ? { stay } : {}),
    venueName: survey.name,
    uses: {
      circuits: circuits
        .filter(({ name }) => surveyed.includes(name))
        .map(({ name }) => name)
        .toSorted(),
      points: [...new Set(points)].toSorted(),
    },
  };
}

/** What open checks wait for in the survey of the venue, each once. */
function lackingIn(checks: readonly CheckEntry[], { build }: PublishedDocument): Pick<DocumentSummary, "lacks"> {
  const file = build?.venue.survey?.file;
  if (file === undefined) return {};
  const found = checks.flatMap((check) => (check["waits-for"] ?? []).filter((each) => each.file === file));
  const lacks = [
    ...new Map(
      found.map(({ path, place, what, of }) => [
        path,
        { path, what, ...(place === undefined ? {} : { place }), ...(of === undefined ? {} : { of }) },
      ]),
    ).values(),
  ];
  return lacks.length === 0 ? {} : { lacks };
}

/** What a build's own words and figures are. */
function ofBuild(
  { build, print, system }: PublishedDocument,
  { repository: { catalogue } }: Site,
): Partial<DocumentSummary> {
  if (!build) return {};
  const texts = { venue: "venue", onSite: "on-site", preparedBy: "prepared-by", approvedBy: "approved.by" };
  const written = Object.entries(texts).map(([name, key]) => [name, build.reader.text(key)] as const);
  const weight = weightOf(build);
  const figure = (value: ReturnType<typeof powerOf>): SummaryFigure =>
    value.known ? { text: `${print(value.value, value.kind)}${guessMark(value)}` } : "open";
  return {
    ...Object.fromEntries(written.filter(([, text]) => text !== undefined)),
    ...venueOf(build),
    weight: weight.known ? { text: weightText(weight, system) } : "open",
    power: figure(powerOf(build)),
    parts: [...textsIn(build.reader.data(""), (text) => catalogue.parts.has(text), new Set())],
    lotless: build.faces.some(({ lots }) => lots.length === 0),
  };
}

export function summaryOf(document: PublishedDocument, site: Site): DocumentSummary {
  const { checks, ...entry } = document.entry;
  const { page, number, title } = document;
  const worst = worstOf(checks);
  return {
    entry,
    page,
    number,
    title,
    ...(worst ? { worst: { rule: worst.rule, ...(worst.share === undefined ? {} : { share: worst.share }) } } : {}),
    judged: judgedIn(checks),
    parts: [],
    lotless: false,
    ...ofBuild(document, site),
    ...lackingIn(checks, document),
  };
}
