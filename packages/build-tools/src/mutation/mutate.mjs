// Changes each figure and each sign of the computation and of the rules in turn, and tells which changes no test notices.
//   npm run mutate -- [--only PATH]... [--sample N] [--seed N] [--workers N] [--minutes N] [--list FILE] [--again FILE] [--equivalent]
import { readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { parseArgs } from "node:util";
import { top } from "../steps.mjs";
import { builtOnce, bundled } from "./bundle.mjs";
import { chooser, isTooSlow } from "./choose.mjs";
import { equivalents, LIST } from "./equivalent.mjs";
import { importsOf, isOfDrawings, isTriedOn, KEPT_FOR_DRAWINGS, PARTS, sourceFiles, testFiles } from "./files.mjs";
import { mutantsOf } from "./mutants.mjs";
import { runAll, surveyed } from "./pool.mjs";
import { shares, survivors, withoutPlace, withReasons } from "./report.mjs";
import { inTurns, sampledByPart } from "./sample.mjs";

const { values } = parseArgs({
  options: {
    only: { type: "string", multiple: true, default: [] },
    sample: { type: "string" },
    seed: { type: "string", default: String(Date.now() % 100_000) },
    workers: { type: "string", default: String(Math.min(4, availableParallelism())) },
    list: { type: "string" },
    again: { type: "string" },
    minutes: { type: "string", default: "Infinity" },
    equivalent: { type: "boolean", default: false },
  },
});

process.chdir(top);
const files = sourceFiles();
const textOf = (path) => readFileSync(path, "utf8");
const isWanted = (path) => values.only.length === 0 || values.only.some((only) => path.includes(only));
// Every file is written with its switches, also where only some are asked for: they tell which tests come near.
const mutants = files.flatMap((path) => mutantsOf(path, textOf(path))).map((each, id) => ({ ...each, id }));
/** The changes of an earlier list, by what they are and not by their line: lines move. */
const earlier = values.again && new Set(readFileSync(values.again, "utf8").split("\n").map(withoutPlace));
const isEarlier = (mutant) => !earlier || earlier.has(withoutPlace(survivors([{ ...mutant, by: undefined }])));
const { reasons, stale } = equivalents(readFileSync(LIST, "utf8"), mutants, textOf);
for (const { file, line, change } of stale)
  process.stderr.write(`${LIST} is out of date: ${file}: ${line}: ${change}\n`);
if (stale.length > 0) process.exitCode = 1;
const wanted = mutants.filter((mutant) => isWanted(mutant.path) && isEarlier(mutant));
// With --equivalent those listed are tried, to see whether a test tells them apart after all.
const all = wanted.filter((mutant) => reasons.has(mutant) === values.equivalent);
/** So many of each part, by chance; the seed tells which. */
const asked = values.sample === undefined ? all : sampledByPart(all, PARTS, Number(values.sample), Number(values.seed));
const apart = values.equivalent ? [] : wanted.filter((mutant) => reasons.has(mutant));
if (asked.length === 0) {
  const among = "the files are those of packages/calc/src, rules, core/src/takeoff and docs-site/src/drawings";
  process.stderr.write(`There is nothing to change under ${values.only.join(", ")}; ${among}.\n`);
  process.exit(2);
}

/** Files that take from a file. */
const takers = new Map();
for (const path of files)
  for (const from of importsOf(path, textOf(path))) takers.set(from, [...(takers.get(from) ?? []), path]);

const isDrawingsAlone = asked.every(({ path }) => isOfDrawings(path));
const byPath = new Map();
for (const each of mutants.filter(({ path }) => !isDrawingsAlone || isOfDrawings(path)))
  byPath.set(`${top}${each.path}`, [...(byPath.get(`${top}${each.path}`) ?? []), each]);
const program = await bundled(
  testFiles()
    .filter((test) => asked.some(({ path }) => isTriedOn(test, path)))
    .map((path) => `${top}${path}`),
  byPath,
  isDrawingsAlone ? await builtOnce(KEPT_FOR_DRAWINGS) : undefined,
);
const survey = await surveyed(program);
const tests = survey.flatMap((each) => each.tests);
for (const { file, name } of tests.filter(({ sound }) => !sound))
  process.stderr.write(`left out, since it fails as things are: ${file}${name}\n`);
for (const { file, name, ms } of tests.filter(isTooSlow))
  process.stderr.write(`left out, since it takes ${(ms / 1000).toFixed(0)} s: ${file}${name}\n`);
const sound = tests.filter((test) => test.sound && !isTooSlow(test));
const seconds = sound.reduce((sum, { ms }) => sum + ms, 0) / 1000;
if (values.sample !== undefined)
  process.stderr.write(`${asked.length} of ${all.length} changes, by seed ${values.seed}\n`);
const loading = survey.reduce((sum, each) => sum + each.loading, 0) / 1000;
process.stderr.write(
  `${asked.length} changes, ${sound.length} tests of ${seconds.toFixed(1)} s, read in ${loading.toFixed(1)} s\n`,
);

const { testsFor, learn } = chooser(survey, mutants, takers);
const results = [];
/** A sample that is ended early is a smaller one. */
const end = performance.now() + Number(values.minutes) * 60_000;
await runAll(program, inTurns(asked, PARTS), {
  workers: Number(values.workers),
  testsFor,
  isOver: () => performance.now() > end,
  told: (mutant, by) => {
    results.push({ ...mutant, by });
    if (by !== undefined) learn(mutant, by);
    else process.stderr.write(`not noticed: ${survivors([mutant])}\n`);
    if (results.length % 20 === 0) process.stderr.write(`${results.length} of ${asked.length}\n`);
  },
});
results.sort((a, b) => a.id - b.id);
const counted = `Not noticed:\n${survivors(results)}\n\nCaught:\n${shares(results)}\n`;
const text = `${counted}${withReasons(apart, reasons)}`;
process.stdout.write(text);
if (values.list) writeFileSync(values.list, text);
