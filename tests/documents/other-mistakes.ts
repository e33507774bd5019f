import { readdirSync, readFileSync } from "node:fs";
import type { RepositoryFiles, SourceFile } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import type { SingleMistake } from "./single-mistakes.js";

const one = (path: string): SourceFile => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const folder = (name: string): readonly SourceFile[] =>
  readdirSync(`${starterRepository}/${name}`)
    .sort()
    .map((file) => one(`${name}/${file}`));

/** The starter as it is, with the surveys its builds rest on. */
export const withSurveys = (): RepositoryFiles => {
  const { path, text } = one("house-standard.yaml");
  return {
    houseStandard: { path, text: text.replace(/^rules-from:.*\n/mu, "") },
    ...{ parts: folder("parts"), stock: one("stock.yaml"), surveys: folder("venues") },
    papers: readdirSync(`${starterRepository}/letters`).map((name) => `letters/${name}`),
    documents: [one("builds/over-stage-banner.md")],
  };
};

const PANELS = "parts/panels.yaml";
const RIGGING = "parts/rigging.yaml";
const HALL = "venues/marlow-quay-hall.md";
const STOCK = "stock.yaml";

/** Slips that come in with a word processor, a web page or a merge, and slips in files beside the document. */
export const OTHER_MISTAKES: readonly SingleMistake[] = [
  // Signs of a word processor or a web page.
  {
    slip: "blanks that do not break in front of a line",
    from: "    trim: 11 ft",
    to: "\u00a0\u00a0\u00a0\u00a0trim: 11 ft",
    found: "`trim: 11 ft`",
    write: "ordinary blanks",
  },
  {
    slip: "a long dash in front of a line of a list",
    from: "    - {part: hdmi-cable, length: 6 ft}",
    to: "    — {part: hdmi-cable, length: 6 ft}",
    found: "`— {part",
    write: "`- {part",
  },
  {
    slip: "long dashes for the first line",
    from: "---\nbuild",
    to: "———\nbuild",
    found: "`———`",
    write: "`---`",
  },
  {
    slip: "an empty line first",
    from: "---\nbuild",
    to: "\n---\nbuild",
    at: "\n---",
    found: "empty line",
    write: "out",
  },
  {
    slip: "wide digits",
    from: "    columns: 6",
    to: "    columns: \uff16",
    found: "wide digits",
    write: "`6`",
  },
  {
    slip: "a wide colon",
    from: "    columns: 6",
    to: "    columns\uff1a 6",
    at: "    columns",
    found: "wide colon",
    write: "`columns: 6`",
  },
  {
    slip: "a letter of a key that cannot be seen",
    from: "    columns: 6",
    to: "    columns\u200b: 6",
    found: "`columns`",
    write: "`columns`",
  },
  { slip: "curly quotes", from: "'4:2:2'", to: "\u20184:2:2\u2019", found: "\u20184:2:2\u2019", write: "`4:2:2`" },
  {
    slip: "a minus of a word processor",
    from: "middle: {right: 0 ft}",
    to: "middle: {right: \u22121 ft}",
    found: "`\u22121 ft`",
    write: "`-1 ft`",
  },
  {
    slip: "a fraction of one letter",
    from: "reach: 14 in",
    to: "reach: 14\u00bd in",
    found: "`14\u00bd in`",
    write: "`14 1/2 in`",
  },
  {
    slip: "signs of bold round a key",
    from: "    trim: 11 ft",
    to: "    **trim**: 11 ft",
    found: "`**trim**: 11 ft`",
    write: "`trim: 11 ft`",
  },
  {
    slip: "an equals sign for a colon",
    from: "    trim: 11 ft",
    to: "    trim = 11 ft",
    found: "equals sign",
    write: "`trim: 11 ft`",
  },
  {
    slip: "two versions of a merge",
    from: "    columns: 6",
    to: "<<<<<<< ours\n    columns: 6\n=======\n    columns: 7\n>>>>>>> theirs",
    found: "`<<<<<<< ours`",
    write: "one version",
  },
  // Lists.
  {
    slip: "a line of a list indented too far",
    from: "    - {part: hdmi-to-sdi, place: booth}",
    to: "      - {part: hdmi-to-sdi, place: booth}",
    found: "indented by 6",
    write: "4 blanks",
  },
  {
    slip: "a line of a list without its dash",
    from: "    - {part: hdmi-to-sdi, place: booth}",
    to: "      {part: hdmi-to-sdi, place: booth}",
    found: "no dash",
    write: "`- {part: hdmi-to-sdi",
  },
  // What stands for something else.
  {
    slip: "an alias",
    from: "    columns: 6\n    rows: 1",
    to: "    columns: &n 6\n    rows: *n",
    at: "    rows: *n",
    found: "alias",
    write: "`6`",
  },
  {
    slip: "keys copied by a merge key",
    from: "faces:\n  banner:\n    panel: tile-500-p3.1\n    columns: 6\n    rows: 1",
    to: "base: &base\n  columns: 6\n  rows: 1\nfaces:\n  banner:\n    panel: tile-500-p3.1\n    <<: *base",
    at: "    <<: *base",
    found: "`<<: *base`",
    write: "`columns: 6`, `rows: 1`",
  },
  { slip: "a tag", from: "    columns: 6", to: "    columns: !panels 6", found: "`!panels`", write: "`6`" },
  { slip: "a question mark alone", from: "    trim: 11 ft", to: "    trim: ?", found: "question mark", write: "guess" },
  // Values.
  { slip: "nearly", from: "    trim: 11 ft", to: "    trim: approx. 11 ft", found: "nearly", write: "`11 ft ?`" },
  { slip: "a span", from: "    trim: 11 ft", to: "    trim: 11 ft ± 1 in", found: "span", write: "`11 ft`" },
  { slip: "a remark", from: "    trim: 11 ft", to: "    trim: 11 ft // by tape", found: "remark", write: "`11 ft`" },
  { slip: "a raster by its lines", from: "1920 x 1080", to: "1080p", found: "`1080p`", write: "`1920 x 1080`" },
  { slip: "frames in a second", from: "rate: 60 Hz", to: "rate: 60 fps", found: "`60 fps`", write: "`60 Hz`" },
  {
    slip: "per cent for a factor",
    file: PANELS,
    from: "factor: 0.95",
    to: "factor: 95 %",
    found: "`95 %`",
    write: "`0.95`",
  },
  {
    slip: "per cent without its sign",
    file: PANELS,
    from: "factor: 0.95",
    to: "factor: 95",
    found: "`95`",
    write: "`0.95`",
  },
  {
    slip: "pounds by their sign",
    file: RIGGING,
    from: "breaking: 5000 lb, mass: 5 lb",
    to: "breaking: 5000#, mass: 5 lb",
    found: "`5000#`",
    write: "`5000 lb`",
  },
  {
    slip: "tons of nobody knows which",
    file: RIGGING,
    from: "breaking: 5000 lb, mass: 5 lb",
    to: "breaking: 2.5 tons, mass: 5 lb",
    found: "`2.5 tons`",
    write: "`2.5 short ton` (5000 lb)",
  },
  // Other files.
  {
    slip: "misspelt venue",
    from: "venue: marlow-quay-hall",
    to: "venue: marlow-quay-hal",
    found: "`marlow-quay-hal`",
    write: "`marlow-quay-hall`",
  },
  {
    slip: "a venue like none that was surveyed",
    from: "venue: marlow-quay-hall",
    to: "venue: town-house",
    found: "`town-house`",
    write: "`marlow-quay-hall`",
  },
  {
    slip: "unknown part of an assembly of the catalogue",
    file: RIGGING,
    from: "of: [beam-clamp, shackle-3-8, wire-rope-1-4, turnbuckle-3-8, pipe-collar]}",
    to: "of: [beam-clamp, shackel-3-8, wire-rope-1-4, turnbuckle-3-8, pipe-collar]}",
    found: "`shackel-3-8`",
    write: "`shackle-3-8`",
  },
  {
    slip: "unknown assembly that other hangs copy",
    from: "assembly: beam-hang}",
    to: "assembly: beam-hangs}",
    found: "`beam-hangs`",
    write: "`beam-hang`",
  },
  { slip: "like nothing there", from: "H2: {like: H1,", to: "H2: {like: H0,", found: "`H0`", write: "`H1`" },
  {
    slip: "misspelt key of a survey that other circuits copy",
    file: HALL,
    from: "    breaker: 20 A",
    to: "    braker: 20 A",
    found: "`braker`",
    write: "`breaker`",
  },
  {
    slip: "missing unit in a survey",
    file: HALL,
    from: "    supply: 120 V",
    to: "    supply: 120",
    found: "`120`",
    write: "`120 V`",
  },
  {
    slip: "tab in a survey",
    file: HALL,
    from: "    breaker: 20 A",
    to: "\tbreaker: 20 A",
    found: "tab",
    write: "blanks",
  },
  {
    slip: "a gauge by its sign in a survey",
    file: HALL,
    from: "{conductor: 12 AWG, length: 35 ft",
    to: "{conductor: #12, length: 35 ft",
    found: "`#12`",
    write: "`12 AWG`",
  },
  {
    slip: "a number by its sign, which begins a comment",
    file: HALL,
    from: "    breaker: 20 A",
    to: "    breaker: #20",
    at: "    breaker: #20",
    found: "`#20`",
    write: '`"#20"`',
  },
  {
    slip: "misspelt key of a lot",
    file: STOCK,
    from: 'batch: "24-31", count: 40',
    to: 'batch: "24-31", cout: 40',
    found: "`cout`",
    write: "`count`",
  },
  {
    slip: "brace of a lot left open",
    file: STOCK,
    from: 'bought: 2025-11-03, at: "Unit 4, bay A"}',
    to: 'bought: 2025-11-03, at: "Unit 4, bay A"',
    found: "`{`",
    write: "`}`",
  },
];
