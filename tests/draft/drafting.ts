import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { openRepository, type RepositoryFiles, type SourceFile } from "@plumbmark/core";
import { type Brief, briefFor, type Drafted, draft, readWish, type Wish } from "@plumbmark/draft";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";

export const TODAY = "2026-12-01";
/** Where a draft is put in memory. */
export const PATH = "builds/drafted.md";

const one = (path: string): SourceFile => ({ path, text: readFileSync(join(starterRepository, path), "utf8") });
const all = (folder: string): readonly SourceFile[] =>
  readdirSync(join(starterRepository, folder)).map((name) => one(`${folder}/${name}`));

/** The starter's files without its plugin, whose process would take longer than all else a test does. */
export const starterFiles = (): RepositoryFiles => {
  const standard = one("house-standard.yaml");
  return {
    houseStandard: { ...standard, text: standard.text.replace(/^rules-from: .*\n/mu, "") },
    parts: all("parts"),
    stock: one("stock.yaml"),
    papers: readdirSync(join(starterRepository, "letters")).map((name) => `letters/${name}`),
    documents: [],
  };
};

export const opened = (files: RepositoryFiles = starterFiles()) =>
  openRepository(files, rules, { today: TODAY, every: true, keep: "models", turns: false });

/** A wish read from its text. @throws Error with its mistakes */
export function wished(text: string): Wish {
  const { wish, mistakes } = readWish({ path: "wishes/wish.yaml", text });
  if (!wish) throw new Error(mistakes.map(({ path, says }) => `${path}: ${says}`).join("\n") || "no wish");
  return wish;
}

export interface Laid extends Drafted {
  readonly brief: Brief;
}

/** Drafts from a wish over the starter's parts and stock. */
export function laidOut(wish: string, { every = false, files = starterFiles() } = {}): Laid {
  const repository = opened(files);
  const brief = briefFor(wished(wish), { repository, path: PATH });
  return { brief, ...draft(brief, { name: "drafted", every }) };
}

/** What is laid out first, and nothing after it: the search is ended where it comes to the second way. */
export function laidOutFirst(wish: string, { files = starterFiles() } = {}): Laid {
  let begun = 0;
  const repository = opened(files);
  const brief = briefFor(wished(wish), { repository, path: PATH, isOver: () => begun > 1 });
  const progress = (): void => {
    begun += 1;
  };
  return { brief, ...draft(brief, { name: "drafted", every: false, progress }) };
}

/** A banner over a stage whose beam, circuits and ways are known. */
export const BANNER = `
wish: spring-banner
title: Spring concert banner
on-site: 2027-05-14 to 2027-05-16
shows: {text: {lines: 2, characters: 20}}
size: {width: at most 10 ft, height: at most 2 ft}
support: flown
over: {middle: {right: 30 ft, upstage: 2 ft}, under: front-beam, trim: at least 10 ft}
over-people: true
out-of: holdings
feed-from: {power: [stage-4, stage-5], data: rack-a}
venue:
  exposure: indoors
  on-stage: true
  places:
    rack-a: {right: 12 ft, upstage: 2 ft, up: 0 ft}
    left-wall-top: {right: 10 ft, upstage: 2 ft, up: 18 ft}
  routes:
    rack-a to front-beam: {via: [left-wall-top], led: {by: R. Tallow, on: 2026-10-02}}
  circuits:
    stage-4: {supply: 120 V, breaker: 20 A, rides-through: 200 A, outlet: nema-5-20, outlets: 1, wiring: {conductor: 12 AWG, length: 50 ft, feeder-drop: 1 %}, control: constant, other-load: none, residual: none}
    stage-5: {like: stage-4, breaker: 15 A, rides-through: 150 A, outlet: nema-5-15, outlets: 2}
  structure:
    front-beam:
      from: {right: 18 ft, upstage: 2 ft, up: 17 ft 10 in}
      to: {right: 42 ft, upstage: 2 ft, up: 17 ft 10 in}
      girth: 40 in
      structure: 1000 lb
      points:
        F1: {at: 7 ft 9 in, structure: 500 lb, catch: 900 lb}
        F2: {at: 10 ft 7 in, structure: 500 lb, catch: 900 lb}
        F3: {at: 13 ft 5 in, structure: 500 lb, catch: 900 lb}
        F4: {at: 16 ft 3 in, structure: 500 lb, catch: 900 lb}
      letter: {by: I. Brandt, licence: state register 4417, on: 2026-10-12, file: letters/mq-7.txt, counted: together, other-loads: included, until: 2028-10-12}
  audience: {nearest: 15 ft, farthest: 72 ft, eye-height: 45 in}
  light: {ambient: 50 lx}
`;
