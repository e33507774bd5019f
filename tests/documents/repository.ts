import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import {
  type InspectionRecord,
  type OpenRepository,
  openRepository,
  type RepositoryFiles,
  type SourceFile,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { oldForm, oldFormText } from "../old-form.js";

/** The starter's docs repository, which is whole and invented: the documents of these tests are made from it. */
export const STARTER = new URL("../../packages/starter/repository/", import.meta.url).pathname;

export const TODAY = "2026-11-25";

const read = (path: string): SourceFile => ({ path, text: readFileSync(STARTER + path, "utf8") });
const folder = (name: string, ending: string): readonly SourceFile[] =>
  readdirSync(STARTER + name)
    .filter((file) => file.endsWith(ending))
    .sort()
    .map((file) => read(`${name}/${basename(file)}`));

/** A paper that only tests know of. */
export const PAPER = "letters/tests.pdf";

const papers = (): readonly string[] =>
  existsSync(`${STARTER}letters`) ? readdirSync(`${STARTER}letters`).map((name) => `letters/${name}`) : [];

let whole: RepositoryFiles | undefined;

/** House standard, parts and stock of the starter, and its builds in the form that says everything itself. */
export const starter = (): RepositoryFiles => {
  whole ??= approvedAsTheyAre({
    houseStandard: read("house-standard.yaml"),
    parts: folder("parts", ".yaml"),
    stock: read("stock.yaml"),
    papers: [...papers(), PAPER],
    documents: readdirSync(`${oldForm}builds`)
      .sort()
      .map((name) => ({ path: `builds/${name}`, text: oldFormText(`builds/${name}`) })),
  });
  return whole;
};

let opened: OpenRepository | undefined;

/** The starter's repository, opened once for all tests that only look at it, with every check listed. */
export const openedStarter = (): OpenRepository => {
  opened ??= openRepository(starter(), rules, { today: TODAY, every: true, keep: "models" });
  return opened;
};

/** The documents with the codes of what they are: a test that changes one is about something else than its approval. */
export function approvedAsTheyAre(files: RepositoryFiles): RepositoryFiles {
  const repository = openRepository(files, [], { today: TODAY });
  const done = doneBefore(files);
  const documents = files.documents.map(({ path, text }) => ({
    path,
    // Only a document that has one is made a model of for it.
    text: done.has(text)
      ? text
      : text.replace(/(^approved: \{.*code: )[0-9A-Z-]+/mu, (whole, before: string) => {
          const { code } = repository.model(path).build.approval;
          return code === undefined ? whole : `${before}${code}`;
        }),
  }));
  return { ...files, documents };
}

/** Texts that have their codes: those of the starter, where what an approval is of besides the document is the starter's. */
function doneBefore({ documents: _, ...files }: RepositoryFiles): ReadonlySet<string> {
  if (!whole) return new Set();
  const { documents, ...own } = whole;
  const isSame = Object.keys({ ...own, ...files }).every(
    (key) => files[key as keyof typeof files] === own[key as keyof typeof own],
  );
  return new Set(isSame ? documents.map(({ text }) => text) : []);
}

/** How a text is inspected. */
export interface Inspecting {
  readonly every?: boolean;
  readonly today?: string;
  /** The rules that are looked at: to ask all the others takes ten times as long. All of them when left out. */
  readonly rules?: readonly string[];
  /** Whether it is told at which figure what fails would turn, which takes as long as all the rest; it is when left out. */
  readonly turns?: boolean;
}

/** All rules, of which only these look at anything: the house standard sets the others, too. */
export function onlyRules(ids: readonly string[]): typeof rules {
  const missing = ids.filter((id) => !rules.some((rule) => rule.id === id));
  if (missing.length > 0) throw new Error(`there is no rule ${missing.join(", ")}`);
  return rules.map((rule) => (ids.includes(rule.id) ? rule : { ...rule, checks: () => [] }));
}

/** Inspects texts as documents among the starter's parts and stock, with every check listed unless told otherwise. */
export function inspectTexts(
  texts: readonly string[],
  { every = true, today = TODAY, rules: ids, turns = true }: Inspecting = {},
): InspectionRecord {
  const documents = texts.map((text, index) => ({ path: `builds/${index + 1}.md`, text }));
  const files = { ...starter(), documents };
  const asked = ids ? onlyRules(ids) : rules;
  const isApprovalAsked = !ids || ids.includes("document.sign-off");
  return openRepository(isApprovalAsked ? approvedAsTheyAre(files) : files, asked, { today, every, turns }).all();
}

export function inspectText(text: string, options: Inspecting = {}): InspectionRecord["documents"][number] {
  const [document] = inspectTexts([text], options).documents;
  if (!document) throw new Error("one document in, one document out");
  return document;
}

/** A build small enough to read at a glance and complete enough that no requirement on it is open. */
export const SMALL = `---
build: small-header
title: Small header
revision: 1
status: for-build
on-site: 2027-03-05 to 2027-03-08
practice: us
prepared-by: R. Tallow
approved: {by: M. Finch, on: 2026-11-20, code: 0000-0000}
cautions-confirmed: {by: M. Finch, on: 2026-11-02}
exposure: indoors
on-stage: true
camera: none
faces:
  header:
    panel: tile-500-p3.1
    columns: 4
    rows: 1
    support: flown
    trim: 11 ft
    lot: lot-2431
    spares: 2
    hung-by: hanging-bar-500
    text: {lines: 1, cap-height: 70 %}
audience: {nearest: 15 ft, farthest: 40 ft}
light: {target: 400 cd/m2}
power:
  circuits:
    c1:
      supply: 120 V
      breaker: 20 A
      rides-through: 200 A
      outlet: nema-5-20
      wiring: {conductor: 12 AWG, length: 30 ft, feeder-drop: 1 %}
      serves: [rack]
      control: constant
      other-load: none
      residual: none
  runs:
    P1:
      from: c1
      feed: {part: cord-12-3, length: 35 ft}
      jumper: {part: power-jumper, length: 0.9 m}
      panels: header A1..A4
data:
  processor: {part: processor-6, place: rack}
  chains:
    D1:
      port: 1
      back-up-port: 2
      feed: {part: cat6-solid, length: 60 ft}
      jumper: {part: data-jumper, length: 0.9 m}
      return: {part: cat6-solid, length: 60 ft}
      panels: header A1..A4
picture:
  raster: 1920 x 1080
  rate: 60 Hz
  depth: 8 bit
  path:
    - {part: playback-computer, place: rack}
    - {part: hdmi-cable, length: 6 ft}
  at:
    header: 0,0
rigging:
  over-people: true
  bars:
    b1:
      section: pipe-1.5-std
      length: 8 ft
      carries: {face: header, from: 6 in}
      height: 12 ft 10-3/4 in
      flange: 6 in
      bearing-height: 16 ft 5-3/4 in
      second: {at: each hang, assembly: [steel-safety-1-8, shackle-3-8], girth: 40 in, slack: none}
      hangs:
        H1: {at: 1 ft, assembly: [beam-clamp, wire-rope-1-4, pipe-collar], structure: 500 lb}
        H2: {at: 7 ft, assembly: [beam-clamp, wire-rope-1-4, pipe-collar], structure: 500 lb}
  letter:
    by: I. Brandt
    licence: state register 4417
    on: 2026-10-12
    file: letters/mq-7.txt
    until: no-end
    counted: together
    other-loads: included
    points: {H1: {structure: 500 lb, catch: 900 lb}, H2: {structure: 500 lb, catch: 900 lb}}
  lifting: {people: 2, from: 30 in, to: 55 in, reach: 14 in, turn: 0 deg, grip: good, rate: 1, for: 1 h}
---

# Small header

## Scope

Four tiles.

## Cautions

Work on mains is done by licensed electricians, lifting by qualified riggers.

## Lift plan

Two people.

## Power-up

Close the breaker.

## Load-out

Breaker open and locked; then plugs, tiles and bar; counted back.

## Sign-off

- [ ] Accepted: name, date, time
`;

/** The small build with one line changed; refuses a change that changes nothing. */
export function changed(from: string, to: string, text = SMALL): string {
  if (!text.includes(from)) throw new Error(`the document has no ${from}`);
  return text.replace(from, () => to);
}
