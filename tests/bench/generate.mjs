// Writes docs repositories of any size: the starter's builds in other halls, on other days and out of other lots.
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { starterRepository } from "@plumbmark/starter";

/** A small generator of numbers below 1, the same for the same beginning (mulberry32, in the public domain). */
function numbers(beginning) {
  let state = beginning >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const templates = readdirSync(`${starterRepository}/builds`)
  .filter((name) => name.endsWith(".md"))
  .map((name) => ({ name: name.slice(0, -3), text: readFileSync(`${starterRepository}/builds/${name}`, "utf8") }));

const surveys = readdirSync(`${starterRepository}/venues`).map((name) => ({
  name: name.slice(0, -3),
  text: readFileSync(`${starterRepository}/venues/${name}`, "utf8"),
}));

const dayAfter = (text, days) => new Date(Date.parse(text) + days * 86_400_000).toISOString().slice(0, 10);

/** More would not fit into the one stock list a docs repository has: a megabyte of YAML is read at most. */
const MOST_GROUPS = 2500;
/** Builds that take panels from the same lots and stand in the same halls: those of the starter, as often as it takes. */
const groupOf = (count) => templates.length * Math.ceil(count / templates.length / MOST_GROUPS);

/** A group is the starter at another time: what goes together there goes together here. */
function documentOf(index, sharing) {
  const { name, text } = templates[index % templates.length];
  const group = Math.floor(index / sharing);
  const later = Math.floor(numbers(group + 1)() * 60);
  const written = text
    .replace(/^build: .*$/mu, `build: ${name}-${index}`)
    .replace(/^venue: (.*)$/mu, `venue: $1-${group}`)
    .replace(/^on-site: .*$/mu, (line) => line.replace(/\d{4}-\d{2}-\d{2}/gu, (day) => dayAfter(day, later)))
    .replace(/\blot-(\d{4})\b/gu, `lot-$1-${group}`)
    .replace(/\]\(\.\.\/venues\/([a-z-]+)\.md\)/gu, `](../../venues/$1-${group}.md)`)
    .replace(/\]\(([a-z-]+)\.md\)/gu, (_, link) => {
      const at = templates.findIndex((each) => each.name === link);
      const other = index - (index % templates.length) + at;
      return `](../${folderOf(other)}/${link}-${other}.md)`;
    });
  return { path: `builds/${folderOf(index)}/${name}-${index}.md`, text: written };
}

const folderOf = (index) => String(Math.floor(index / 100)).padStart(4, "0");

/** The documents one after another, the same for the same count. */
export function* documents(count) {
  for (let index = 0; index < count; index += 1) yield documentOf(index, groupOf(count));
}

/** Lots for each group; of everything else so much that every group has enough. */
function stock(count) {
  const text = readFileSync(`${starterRepository}/stock.yaml`, "utf8");
  const [, lots] = /^lots:\n((?: {2}.*\n)+)/mu.exec(text);
  const [, items] = /^items:\n((?: {2}.*\n?)+)/mu.exec(text);
  const all = Array.from({ length: Math.ceil(count / groupOf(count)) }, (_, group) =>
    lots.replace(/\blot-(\d{4})\b/gu, `lot-$1-${group}`),
  );
  const enough = items.replace(/count: (\d+)/gu, (_, number) => `count: ${Number(number) * 1000}`);
  return `lots:\n${all.join("")}items:\n${enough}`;
}

/** Writes a docs repository with so many build documents into a new folder. */
export function generate(folder, count) {
  mkdirSync(folder, { recursive: true });
  for (const name of ["house-standard.yaml", "parts", "letters"])
    cpSync(`${starterRepository}/${name}`, `${folder}/${name}`, { recursive: true });
  // A plugin is run by a process of its own: it is measured by itself.
  const standard = `${folder}/house-standard.yaml`;
  writeFileSync(standard, readFileSync(standard, "utf8").replace(/^rules-from: .*\n/mu, ""));
  writeFileSync(`${folder}/stock.yaml`, stock(count));
  mkdirSync(`${folder}/venues`);
  for (let group = 0; group * groupOf(count) < count; group += 1)
    for (const { name, text } of surveys)
      writeFileSync(`${folder}/venues/${name}-${group}.md`, text.replace(/^survey: .*$/mu, `survey: ${name}-${group}`));
  let made = "";
  for (const { path, text } of documents(count)) {
    const within = `${folder}/${path.slice(0, path.lastIndexOf("/"))}`;
    if (within !== made) mkdirSync(within, { recursive: true });
    made = within;
    writeFileSync(`${folder}/${path}`, text);
  }
}
