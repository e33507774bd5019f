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
const repository = openRepository(files, rules, { today: "2026-11-25", keep: "models" });
repository.all();

/** Random numbers that are the same in every run. */
let seed = 20261125;
const random = () => {
  seed = (seed * 1103515245 + 12345) % 2 ** 31;
  return seed / 2 ** 31;
};

const { text } = longest;
const end = text.indexOf("\n---", 4);

/** A digit for another in the front matter; a letter more in the prose. */
function edited(isFront) {
  const places = isFront
    ? [...text.slice(0, end).matchAll(/(?<=: |\{[\w-]+: )\d/gu)].map(({ index }) => index)
    : [...text.slice(end).matchAll(/(?<=[a-z])(?=[a-z]{2} )/gu)].map(({ index }) => end + index);
  const at = places[Math.floor(random() * places.length)];
  return isFront
    ? `${text.slice(0, at)}${1 + Math.floor(random() * 9)}${text.slice(at + 1)}`
    : `${text.slice(0, at)}x${text.slice(at)}`;
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
for (const isFront of [false, true]) {
  const parses = [];
  const finds = [];
  for (let edit = 0; edit < EDITS / 2 + 20; edit += 1) {
    const next = edited(isFront);
    const parse = time(() => parseWhole(next));
    const find = time(() => {
      repository.replace(longest.path, next);
      repository.one(longest.path);
    });
    const { entry } = repository.one(longest.path);
    // The first ones warm up; what cannot be read is not counted.
    if (edit < 20 || entry.checks.some(({ rule }) => rule === "document.front-matter")) continue;
    parses.push(parse);
    finds.push(find);
  }
  const where = isFront ? "front matter" : "body";
  for (const [key, clock] of [
    ["wall", "by the clock"],
    ["cpu", "of processor"],
  ]) {
    const of = (all) => all.map((each) => each[key]);
    const [whole, found] = [median(of(parses)), of(finds)];
    console.log(
      `${`keystroke to findings, ${where}, ${clock}`.padEnd(54)}${at95(found).toFixed(1).padStart(7)} ms ${(at95(found) / whole).toFixed(2).padStart(7)} of parsing the text (${whole.toFixed(1)} ms; its own 95th: ${at95(of(parses)).toFixed(1)} ms), median ${(median(found) / whole).toFixed(2)}, ${finds.length} edits`,
    );
  }
}
