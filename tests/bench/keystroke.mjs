// From a keystroke to the findings of the document, in process and warm, over random edits of the starter's longest
// document, against what the libraries take to parse the whole text. Ratios of one run, at the 95th percentile of the
// valid edits: asked 0.3 after an edit of the body, 0.75 after one of the front matter. Of processor time besides the
// clock's, which tells nothing where the machine is busy with something else.
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import { openRepository, surveyKind } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";

const own = createRequire(new URL("../../packages/core/package.json", import.meta.url));
const bring = (name) => import(pathToFileURL(own.resolve(name)).href);
const [{ unified }, markdown, matter, gfm, yaml] = await Promise.all(
  ["unified", "remark-parse", "remark-frontmatter", "remark-gfm", "yaml"].map(bring),
);
const processor = unified().use(markdown.default).use(matter.default, ["yaml"]).use(gfm.default);

function parseWhole(text) {
  const [front] = processor.parse(text).children;
  return yaml.parseDocument(front?.type === "yaml" ? front.value : "", { version: "1.2" }).toJS();
}

const folder = (name) =>
  readdirSync(`${starterRepository}/${name}`)
    .sort()
    .map((file) => ({ path: `${name}/${file}`, text: readFileSync(`${starterRepository}/${name}/${file}`, "utf8") }));
const one = (path) => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const documents = folder("builds");
const files = {
  houseStandard: one("house-standard.yaml"),
  parts: folder("parts"),
  stock: one("stock.yaml"),
  surveys: folder("venues").filter(({ text }) => surveyKind(text) === "survey"),
  papers: folder("letters").map(({ path }) => path),
  documents,
};
const longest = documents.reduce((most, each) => (each.text.length > most.text.length ? each : most));
const repository = openRepository(files, rules, { today: "2026-11-25", keep: "models", written: true });
repository.all();

/** Random numbers that are the same in every run. */
let seed = 20261125;
const random = () => {
  seed = (seed * 1103515245 + 12345) % 2 ** 31;
  return seed / 2 ** 31;
};

const { text } = longest;
const end = text.indexOf("\n---", 4);

/** Another digit in the place of one in the front matter; a letter more in the prose. */
function edited(isFront) {
  const places = isFront
    ? [...text.slice(0, end).matchAll(/(?<=: |\{[\w-]+: )\d/gu)].map(({ index }) => index)
    : [...text.slice(end).matchAll(/(?<=[a-z])(?=[a-z]{2} )/gu)].map(({ index }) => end + index);
  const at = places[Math.floor(random() * places.length)];
  if (!isFront) return `${text.slice(0, at)}x${text.slice(at)}`;
  const others = [..."123456789"].filter((digit) => digit !== text[at]);
  return `${text.slice(0, at)}${others[Math.floor(random() * others.length)]}${text.slice(at + 1)}`;
}

/** Milliseconds by the clock and of the processor. */
const time = (work) => {
  const [start, used] = [performance.now(), process.cpuUsage()];
  work();
  const { user, system } = process.cpuUsage(used);
  return { wall: performance.now() - start, cpu: (user + system) / 1000 };
};
const at95 = (times) => times.toSorted((one, other) => one - other)[Math.floor(times.length * 0.95)];
const median = (times) => times.toSorted((one, other) => one - other)[Math.floor(times.length / 2)];

const EDITS = 300;
/**
 * The whole row of edits is made so many times, and of each edit the middle time counts: what else a machine does in
 * between counts for nothing, on either side.
 */
const ROUNDS = 3;

const find = (next) => {
  repository.replace(longest.path, next);
  repository.one(longest.path);
};

/**
 * A round of edits: all of one kind of work, then all of the other, so that neither clears away what the other left.
 * Every edit is made to the document as it is: after the one before it, it would be two edits in one, in two places.
 */
function round(texts) {
  const parse = texts.map((next) => time(() => parseWhole(next)));
  const found = texts.map((next) => {
    find(text);
    return time(() => find(next));
  });
  return texts.map((_, edit) => ({ parse: parse[edit], find: found[edit] }));
}

for (const isFront of [false, true]) {
  const texts = Array.from({ length: EDITS / 2 }, () => edited(isFront));
  // What cannot be read is typed all the same and not counted; the first round warms up.
  const rounds = Array.from({ length: ROUNDS + 1 }, () => round(texts)).slice(1);
  const isValid = texts.map((next) => {
    repository.replace(longest.path, next);
    return repository.one(longest.path).entry.checks.every(({ rule }) => rule !== "document.front-matter");
  });
  const where = isFront ? "front matter" : "body";
  for (const [key, clock] of [
    ["wall", "by the clock"],
    ["cpu", "of processor"],
  ]) {
    const middle = (what) =>
      texts.map((_, edit) => median(rounds.map((round) => round[edit][what][key]))).filter((_, edit) => isValid[edit]);
    const [found, whole] = [middle("find"), median(middle("parse"))];
    console.log(
      `${`keystroke to findings, ${where}, ${clock}`.padEnd(54)}${at95(found).toFixed(1).padStart(7)} ms ${(at95(found) / whole).toFixed(2).padStart(7)} of parsing the text (${whole.toFixed(1)} ms; its own 95th: ${at95(middle("parse")).toFixed(1)} ms), median ${(median(found) / whole).toFixed(2)}, ${found.length} edits`,
    );
  }
}
