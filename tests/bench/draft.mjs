// How much a draft asks, in warm inspections of the starter's banner: a ratio measured in one run, never a limit that a
// test waits for. The bars are 60 for a wish at the starter's venue, and 300 for 200 panels over 12 circuits and 24 points.
import { readdirSync, readFileSync } from "node:fs";
import { openRepository, readSurveys } from "@plumbmark/core";
import { briefFor, draft, readWish } from "@plumbmark/draft";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";

const BANNER = "builds/over-stage-banner.md";
const file = (path) => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const all = (folder) => readdirSync(`${starterRepository}/${folder}`).map((name) => file(`${folder}/${name}`));
const standard = file("house-standard.yaml");
const files = {
  houseStandard: { ...standard, text: standard.text.replace(/^rules-from: .*\n/mu, "") },
  parts: all("parts"),
  stock: file("stock.yaml"),
  surveys: all("venues"),
  papers: readdirSync(`${starterRepository}/letters`).map((name) => `letters/${name}`),
  documents: all("builds"),
};
const opened = (more = {}) =>
  openRepository({ ...files, ...more }, rules, { today: "2026-12-01", every: true, keep: "models" });

const milliseconds = (work) => {
  const begun = performance.now();
  work();
  return performance.now() - begun;
};

/** One inspection of the banner with a value laid over it, once the code is warm. */
function warmInspection() {
  const repository = opened();
  const one = (spares) =>
    repository.with([{ op: "replace", document: BANNER, path: "/faces/banner/spares", value: spares }]).one(BANNER);
  for (let at = 0; at < 20; at += 1) one(at + 2);
  return milliseconds(() => Array.from({ length: 20 }, (_, at) => one(at + 30))) / 20;
}

function drafted(wish, surveys, more) {
  const { wish: read, mistakes } = readWish(wish, surveys);
  if (!read) throw new Error(mistakes.map(({ says }) => says).join(" "));
  const once = () => {
    const brief = briefFor(read, { repository: opened(more), path: "builds/drafted.md" });
    const { options } = draft(brief, { name: "drafted", every: false });
    return { options: options.length, ...brief.desk.counts };
  };
  once();
  let result;
  const spent = milliseconds(() => {
    result = once();
  });
  return { spent, ...result };
}

/** 200 panels over 12 circuits of 30 A and 24 points. */
const LARGE = `
wish: wall
title: Wall of two hundred
size: {width: exactly 10 m, height: exactly 5 m}
support: flown
over: {middle: {right: 6 m, upstage: 0 m}, under: beam, trim: at least 3 m}
over-people: false
out-of: catalogue
panel: tile-coarse
feed-from: {data: rack}
venue:
  practice: iec
  places: {rack: {right: 0 m, upstage: 0 m, up: 0 m}}
  circuits:
    c-1: {supply: 230 V, breaker: 16 A, rides-through: 5000 A, outlet: iec-60309-16-3, outlets: 4, residual: 30 mA, residual-type: A, control: constant, other-load: none, wiring: {conductor: 2.5 mm2, length: 10 m, method: C, feeder-drop: 0.5 %}}
${Array.from({ length: 11 }, (_, at) => `    c-${at + 2}: {like: c-1}`).join("\n")}
  structure:
    beam:
      from: {right: 0 m, upstage: 0 m, up: 10 m}
      to: {right: 12 m, upstage: 0 m, up: 10 m}
      girth: 1 m
      points: {${Array.from({ length: 24 }, (_, at) => `P${at + 1}: {at: ${(at + 0.5) / 2} m, structure: 1000 kg, catch: 1500 kg}`).join(", ")}}
  audience: {nearest: 8 m, farthest: 40 m}
`;

/** The starter's tile with fewer pixels, so that two hundred of them go onto a raster its links carry. */
const coarse = () => {
  const text = files.parts.map((part) => /^tile-500-p3\.1:\n(?: {2}.*\n)+/mu.exec(part.text)?.[0]).find(Boolean);
  const tile = text.replace("tile-500-p3.1:", "tile-coarse:").replace(/pixels: .*/u, "pixels: 80 x 80");
  const takes = (part) => ({
    ...part,
    text: part.text.replaceAll("takes: [tile-500-p3.1", "takes: [tile-coarse, tile-500-p3.1"),
  });
  return { parts: [...files.parts.map(takes), { path: "parts/coarse.yaml", text: tile }] };
};

const warm = warmInspection();
const surveys = readSurveys(files.surveys).byName;
const cases = [
  ["spring-banner", file("wishes/spring-banner.yaml"), 60],
  ["200 panels, 12 circuits, 24 points", { path: "wishes/wall.yaml", text: LARGE }, 300, coarse()],
];
console.log(`warm inspection of the banner: ${warm.toFixed(1)} ms`);
for (const [name, wish, bar, more] of cases) {
  const { spent, options, asked, rules: run, inspections } = drafted(wish, surveys, more);
  if (options === 0) throw new Error(`${name} has no option: its time is that of a refusal`);
  console.log(
    `${name}: ${(spent / warm).toFixed(1)} warm inspections, at most ${bar}; ${options} options, ${asked} questions, ${run} rules run, ${inspections} inspections`,
  );
}
