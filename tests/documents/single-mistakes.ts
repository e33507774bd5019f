import { outlineOf, type RepositoryFiles } from "@plumbmark/core";
import { starter } from "./repository.js";

/** One slip of a pen in the starter's banner or in its parts, and what has to be said of it first. */
export interface SingleMistake {
  /** What the slip is. */
  readonly slip: string;
  /** What stands there as it should, and what was written instead. */
  readonly from: string;
  readonly to: string;
  /** A file of the parts catalogue or the stock list; the banner when it is left out. */
  readonly file?: string;
  /** Words of the line the first finding has to name; the line that was changed when left out. */
  readonly at?: string;
  /** What was found, as the finding quotes it. */
  readonly found: string;
  /** What the finding says to write. */
  readonly write: string;
}

const BANNER = "builds/over-stage-banner.md";
const PANELS = "parts/panels.yaml";
const POWER = "parts/power.yaml";
const RIGGING = "parts/rigging.yaml";
const SIGNAL = "parts/signal.yaml";

/** Slips people make, one at a time; what they are is common knowledge and rests on no source. */
export const SINGLE_MISTAKES: readonly SingleMistake[] = [
  // Keys.
  {
    slip: "misspelt key that is needed",
    from: "    columns: 6",
    to: "    colums: 6",
    found: "`colums`",
    write: "`columns`",
  },
  {
    slip: "misspelt key of a face",
    from: "    trim: 11 ft",
    to: "    trimm: 11 ft",
    found: "`trimm`",
    write: "`trim`",
  },
  {
    slip: "misspelt key inside braces",
    from: "wiring: {conductor: 12 AWG, length: 50 ft",
    to: "wiring: {conducter: 12 AWG, length: 50 ft",
    at: "conducter",
    found: "`conducter`",
    write: "`conductor`",
  },
  {
    slip: "misspelt key of a hang",
    from: "H2: {at: 3 ft 10 in",
    to: "H2: {att: 3 ft 10 in",
    found: "`att`",
    write: "`at`",
  },
  {
    slip: "misspelt key of the whole document",
    from: "\nrigging:\n",
    to: "\nriging:\n",
    at: "riging:",
    found: "`riging`",
    write: "`rigging`",
  },
  {
    slip: "key of another thing",
    from: "      breaker: 20 A",
    to: "      fuse: 20 A",
    found: "`fuse`",
    write: "`breaker`",
  },
  {
    slip: "key with an underscore",
    from: "on-site: 2027",
    to: "on_site: 2027",
    found: "`on_site`",
    write: "`on-site`",
  },
  {
    slip: "key in capitals",
    from: "    support: flown",
    to: "    Support: flown",
    found: "`Support`",
    write: "`support`",
  },
  {
    slip: "key without a blank behind its colon",
    from: "    trim: 11 ft",
    to: "    trim:11 ft",
    found: "`trim:11 ft`",
    write: "`trim: 11 ft`",
  },
  { slip: "key without a colon", from: "    rows: 1", to: "    rows 1", found: "`rows 1`", write: "`rows: 1`" },
  {
    slip: "key that is there twice",
    from: "    rows: 1",
    to: "    rows: 1\n    columns: 5",
    at: "    columns: 5",
    found: "`columns`",
    write: "one of them",
  },
  {
    slip: "circuit that is there twice",
    from: "    stage-5:  ",
    to: "    stage-4:  ",
    at: "    stage-4:  ",
    found: "`stage-4`",
    write: "one of them",
  },
  {
    slip: "key twice inside braces",
    from: "{target: 400 cd/m2}",
    to: "{target: 400 cd/m2, target: 500 cd/m2}",
    found: "`target`",
    write: "one of them",
  },
  // Form of the YAML.
  { slip: "tab for blanks", from: "    rows: 1", to: "\trows: 1", found: "tab", write: "blanks" },
  { slip: "tab behind blanks", from: "    rows: 1", to: "  \trows: 1", found: "tab", write: "blanks" },
  { slip: "one blank too many", from: "    rows: 1", to: "     rows: 1", found: "indented by 5", write: "4 blanks" },
  { slip: "one blank too few", from: "    rows: 1", to: "   rows: 1", found: "indented by 3", write: "4 blanks" },
  {
    slip: "last key moved out of its group",
    from: "      panels: banner A1..A6\n\ndata",
    to: "    panels: banner A1..A6\n\ndata",
    at: "    panels: banner A1..A6\n\ndata",
    found: "`panels`",
    write: "`P1`",
  },
  {
    slip: "key moved out of its group",
    from: "    trim: 11 ft",
    to: "  trim: 11 ft",
    found: "`trim: 11 ft`",
    write: "4 blanks",
  },
  { slip: "brace left open", from: "{target: 400 cd/m2}", to: "{target: 400 cd/m2", found: "`{`", write: "`}`" },
  {
    slip: "bracket left open",
    from: "second: {at: each hang, assembly: [steel-safety-1-8, shackle-3-8]",
    to: "second: {at: each hang, assembly: [steel-safety-1-8, shackle-3-8",
    found: "`[`",
    write: "`]",
  },
  {
    slip: "quote left open",
    from: "licence: state register 4417",
    to: 'licence: "state register 4417',
    found: '`"`',
    write: "quote",
  },
  {
    slip: "colon in a text",
    from: "title: Over-stage text banner",
    to: "title: Banner: over the stage",
    found: "`: `",
    write: "quotes",
  },
  {
    slip: "number sign in a text",
    from: "title: Over-stage text banner",
    to: "title: Banner #2 and #3",
    found: "#2 and #3",
    write: "quotes",
  },
  {
    slip: "comma between braces left out",
    from: "{nearest: 15 ft, farthest: 72 ft, eye-height: 45 in}",
    to: "{nearest: 15 ft farthest: 72 ft, eye-height: 45 in}",
    found: "farthest",
    write: "comma",
  },
  {
    slip: "comma decimal inside braces",
    from: "jumper: {part: power-jumper, length: 0.9 m}",
    to: "jumper: {part: power-jumper, length: 0,9 m}",
    found: "`0,9 m`",
    write: "`0.9 m`",
  },
  {
    slip: "comma of a place inside braces",
    from: "  at:\n    banner: 0,0",
    to: "  at: {banner: 0,0}",
    at: "  at: {banner: 0,0}",
    found: "`0,0`",
    write: '`"0,0"`',
  },
  {
    slip: "two colons after each other",
    from: "    trim: 11 ft",
    to: "    trim:: 11 ft",
    found: "`trim:`",
    write: "`trim`",
  },
  {
    slip: "comma behind a closing brace",
    from: "light: {target: 400 cd/m2}",
    to: "light: {target: 400 cd/m2},",
    found: "`}` stands `,`",
    write: "Take it out",
  },
  {
    slip: "end of the front matter left out",
    from: "\n---\n\n# Over-stage",
    to: "\n\n# Over-stage",
    at: "---",
    found: "`---`",
    write: "`---`",
  },
  {
    slip: "dash without a blank",
    from: "    - {part: hdmi-cable, length: 6 ft}",
    to: "    -{part: hdmi-cable, length: 6 ft}",
    found: "`-{",
    write: "`- {",
  },
  // Numbers and units.
  { slip: "comma decimal", from: "    trim: 11 ft", to: "    trim: 3,35 m", found: "`3,35 m`", write: "`3.35 m`" },
  {
    slip: "comma decimal of a part",
    file: PANELS,
    from: "  mass: 7.9 kg",
    to: "  mass: 7,9 kg",
    found: "`7,9 kg`",
    write: "`7.9 kg`",
  },
  {
    slip: "thousands separator",
    from: "structure: 1000 lb",
    to: "structure: 1,000 lb",
    found: "`1,000 lb`",
    write: "`1000 lb`",
  },
  {
    slip: "thousands separator in braces",
    from: "pipe-collar], structure: 500 lb}\n        H2",
    to: "pipe-collar], structure: 1,500 lb}\n        H2",
    at: "        H1:",
    found: "`1,500 lb`",
    write: "`1500 lb`",
  },
  {
    slip: "blank as thousands separator",
    from: "structure: 1000 lb",
    to: "structure: 1 000 lb",
    found: "`1 000 lb`",
    write: "`1000 lb`",
  },
  { slip: "missing unit", from: "    trim: 11 ft", to: "    trim: 11", found: "`11`", write: "`11 ft`" },
  {
    slip: "missing unit of a current",
    from: "      breaker: 20 A",
    to: "      breaker: 20",
    found: "`20`",
    write: "`20 A`",
  },
  {
    slip: "missing unit of a mass",
    file: PANELS,
    from: "  mass: 7.9 kg",
    to: "  mass: 7.9",
    found: "`7.9`",
    write: "`7.9 kg`",
  },
  { slip: "unit of another kind", from: "    trim: 11 ft", to: "    trim: 11 lb", found: "`11 lb`", write: "a length" },
  {
    slip: "watts for amperes",
    from: "      breaker: 20 A",
    to: "      breaker: 2400 W",
    found: "`2400 W`",
    write: "a current",
  },
  { slip: "unit nobody knows", from: "    trim: 11 ft", to: "    trim: 11 fet", found: "`fet`", write: "`11 ft`" },
  {
    slip: "a range where one value belongs",
    from: "      supply: 120 V",
    to: "      supply: 100-240 V",
    at: "      supply: 100-240 V",
    found: "`100-240 V`",
    write: "one value",
  },
  {
    slip: "a range with a hyphen",
    file: PANELS,
    from: "  supply: 100 V to 240 V",
    to: "  supply: 100-240 V",
    found: "`100-240 V`",
    write: "`100 V to 240 V`",
  },
  { slip: "word for a number", from: "    columns: 6", to: "    columns: six", found: "`six`", write: "`6`" },
  { slip: "number in quotes", from: "    columns: 6", to: '    columns: "6"', found: '`"6"`', write: "`6`" },
  {
    slip: "fraction of a panel",
    from: "    columns: 6",
    to: "    columns: 6.5",
    found: "`6.5`",
    write: "a whole number",
  },
  {
    slip: "length below nothing",
    from: "length: 35 ft, hangs: 6 ft",
    to: "length: -35 ft, hangs: 6 ft",
    found: "`-35 ft`",
    write: "0 or more",
  },
  {
    slip: "pair with a comma",
    from: "  raster: 1920 x 1080",
    to: "  raster: 1920, 1080",
    found: "`1920, 1080`",
    write: "`1920 x 1080`",
  },
  {
    slip: "pair with one half",
    file: PANELS,
    from: "  pixels: 160 x 160",
    to: "  pixels: 160",
    found: "`160`",
    write: "`160 x 160`",
  },
  { slip: "nothing behind a key", from: "    trim: 11 ft", to: "    trim:", found: "nothing", write: "a length" },
  // Words.
  {
    slip: "dates the wrong way round",
    from: "2027-03-05 to 2027-03-08",
    to: "2027-03-08 to 2027-03-05",
    found: "2027-03-08",
    write: "`2027-03-05 to 2027-03-08`",
  },
  {
    slip: "date of another form",
    from: "2027-03-05 to 2027-03-08",
    to: "05.03.2027 to 08.03.2027",
    found: "`05.03.2027 to 08.03.2027`",
    write: "`2027-03-05 to 2027-03-08`",
  },
  {
    slip: "day that is in no calendar",
    from: "2027-03-05 to 2027-03-08",
    to: "2027-02-26 to 2027-02-30",
    found: "2027-02-30",
    write: "calendar",
  },
  {
    slip: "word that is not allowed",
    from: "status: for-build",
    to: "status: for build",
    found: "`for build`",
    write: "`for-build`",
  },
  {
    slip: "how the face is held misspelt",
    from: "    support: flown",
    to: "    support: flow",
    found: "`flow`",
    write: "`flown`",
  },
  {
    slip: "unknown panel",
    from: "    panel: tile-500-p3.1",
    to: "    panel: tile-500-p2.8",
    found: "`tile-500-p2.8`",
    write: "`tile-500-p3.1`",
  },
  {
    slip: "unknown part of a hang",
    from: "H1: {at: 1 ft, assembly: [beam-clamp,",
    to: "H1: {at: 1 ft, assembly: [beam-clip,",
    found: "`beam-clip`",
    write: "`beam-clamp`",
  },
  {
    slip: "unknown cable",
    from: "feed: {part: cord-12-3,",
    to: "feed: {part: cord-12-4,",
    found: "`cord-12-4`",
    write: "`cord-12-3`",
  },
  {
    slip: "unknown processor",
    from: "{part: processor-6, place: rack A}",
    to: "{part: processor-5, place: rack A}",
    found: "`processor-5`",
    write: "`processor-6`",
  },
  {
    slip: "part of another kind",
    from: "    panel: tile-500-p3.1",
    to: "    panel: beam-clamp",
    found: "`beam-clamp`",
    write: "`tile-500-p3.1`",
  },
  {
    slip: "unknown outlet",
    from: "      outlet: nema-5-20",
    to: "      outlet: nema-5-21",
    found: "`nema-5-21`",
    write: "`nema-5-20`",
  },
  {
    slip: "unknown connector in a part",
    file: POWER,
    from: "connectors: [nema-5-20, ac-locking-16]}",
    to: "connectors: [nema-5-21, ac-locking-16]}",
    found: "`nema-5-21`",
    write: "`nema-5-20`",
  },
  {
    slip: "unknown connector of a panel",
    file: PANELS,
    from: "{power-in: ac-locking-16, power-out",
    to: "{power-in: ac-loking-16, power-out",
    found: "`ac-loking-16`",
    write: "`ac-locking-16`",
  },
  {
    slip: "unknown kind of a part",
    file: RIGGING,
    from: "beam-clamp: {kind: hardware",
    to: "beam-clamp: {kind: hardwear",
    found: "`hardwear`",
    write: "`hardware`",
  },
  {
    slip: "misspelt key of a part",
    file: RIGGING,
    from: "lower flange of a beam, effective: 4 in, wll: 1000 lb",
    to: "lower flange of a beam, effective: 4 in, wl: 1000 lb",
    found: "`wl`",
    write: "`wll`",
  },
  {
    slip: "tab in the catalogue",
    file: PANELS,
    from: "  pixels: 160 x 160",
    to: "\tpixels: 160 x 160",
    found: "tab",
    write: "blanks",
  },
  {
    slip: "comma decimal inside braces of a part",
    file: POWER,
    from: "jacket: SOOW, mass: 0.25 kg/m",
    to: "jacket: SOOW, mass: 0,25 kg/m",
    found: "`0,25 kg/m`",
    write: "`0.25 kg/m`",
  },
  {
    slip: "unknown signal of a part",
    file: SIGNAL,
    from: "  inputs: [hdmi-1.4]",
    to: "  inputs: [hdmi1.4]",
    found: "`hdmi1.4`",
    write: "`hdmi-1.4`",
  },
  {
    slip: "unknown section of a bar",
    from: "      section: pipe-1.5-std",
    to: "      section: pipe-1.6-std",
    found: "`pipe-1.6-std`",
    write: "`pipe-1.5-std`",
  },
  { slip: "unknown lot", from: "    lot: lot-2431", to: "    lot: lot-2413", found: "`lot-2413`", write: "`lot-2431`" },
  {
    slip: "unknown face",
    from: "carries: {face: banner,",
    to: "carries: {face: baner,",
    found: "`baner`",
    write: "`banner`",
  },
  {
    slip: "face named in cells unknown",
    from: "      panels: banner A1..A6\n\ndata",
    to: "      panels: baner A1..A6\n\ndata",
    at: "      panels: baner",
    found: "`baner`",
    write: "`banner A1..A6`",
  },
  {
    slip: "circuit unknown",
    from: "      from: stage-4",
    to: "      from: stage-6",
    found: "`stage-6`",
    write: "`stage-4`",
  },
  {
    slip: "cell out of range",
    from: "      panels: banner A1..A6\n\ndata",
    to: "      panels: banner A1..A7\n\ndata",
    at: "      panels: banner A1..A7",
    found: "A7",
    write: "`A1`",
  },
  {
    slip: "row of cells out of range",
    from: "      panels: banner A1..A6\n\ndata",
    to: "      panels: banner B1..B6\n\ndata",
    at: "      panels: banner B1..B6",
    found: "B1",
    write: "`A1`",
  },
  {
    slip: "cells that are no cells",
    from: "      panels: banner A1..A6\n\ndata",
    to: "      panels: banner 1..6\n\ndata",
    at: "      panels: banner 1..6",
    found: "`1..6`",
    write: "`A1..A6`",
  },
];

let others: NonNullable<RepositoryFiles["others"]> | undefined;

/** What has to be known of the documents but the banner, read once. */
export function otherDocuments(): NonNullable<RepositoryFiles["others"]> {
  others ??= starter()
    .documents.filter(({ path }) => path !== BANNER)
    .map((each) => ({ ...outlineOf(each), text: each.text }));
  return others;
}

/** The files of a starter with one mistake; refuses one that changes nothing. */
export function withMistake(
  { from, to, file = BANNER, at }: SingleMistake,
  whole: RepositoryFiles = starter(),
): {
  readonly files: RepositoryFiles;
  readonly file: string;
  readonly line: number;
} {
  const { stock, surveys = [] } = whole;
  const texts = [...whole.parts, ...whole.documents, ...surveys, ...(stock ? [stock] : [])];
  const text = texts.find(({ path }) => path === file)?.text ?? "";
  const start = text.indexOf(from);
  if (start < 0 || from === to) throw new Error(`${file} has no ${from}`);
  const mistaken = text.slice(0, start) + to + text.slice(start + from.length);
  // The line with the first letter that is another.
  const same = [...to].findIndex((letter, index) => letter !== from[index]);
  const offset = at === undefined ? start + Math.max(0, same) : mistaken.indexOf(at);
  const put = <File extends { readonly path: string }>(each: File): File =>
    each.path === file ? { ...each, text: mistaken } : each;
  return {
    file,
    line: mistaken.slice(0, offset).split("\n").length,
    files: {
      ...whole,
      parts: whole.parts.map(put),
      surveys: surveys.map(put),
      ...(stock ? { stock: put(stock) } : {}),
      documents: whole.documents.filter(({ path }) => path === BANNER).map(put),
      others: otherDocuments(),
    },
  };
}
