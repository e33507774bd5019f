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

const PLACES = ["Marlow", "Tern", "Aldbrook", "Quillhaven", "Osmere", "Fenwick Row", "Larkrise", "Dunmarsh"];
const HALLS = ["Quay Hall", "Playhouse", "Corn Exchange", "Arena", "Assembly Rooms", "Pavilion", "Depot", "Gallery"];
const PEOPLE = ["R. Tallow", "M. Finch", "S. Okoro", "L. Brandt", "P. Iyer", "J. Maas", "T. Quill", "A. Sorel"];

const templates = readdirSync(`${starterRepository}/builds`)
  .filter((name) => name.endsWith(".md"))
  .map((name) => ({ name: name.slice(0, -3), text: readFileSync(`${starterRepository}/builds/${name}`, "utf8") }));

const day = (number) => new Date(Date.UTC(2027, 0, 1 + number)).toISOString().slice(0, 10);

/** More would not fit into the one stock list a docs repository has: a megabyte of YAML is read at most. */
const MOST_GROUPS = 2500;
/** Builds that take panels from the same lots: a handful and not all. */
const groupOf = (count) => Math.max(12, Math.ceil(count / MOST_GROUPS));

function documentOf(index, sharing, random) {
  const { name, text } = templates[index % templates.length];
  const pick = (list) => list[Math.floor(random() * list.length)];
  const from = Math.floor(random() * 2000);
  const group = Math.floor(index / sharing);
  const written = text
    .replace(/^build: .*$/mu, `build: ${name}-${index}`)
    .replace(/^venue: .*$/mu, `venue: ${pick(PLACES)} ${pick(HALLS)}`)
    .replace(/^on-site: .*$/mu, `on-site: ${day(from)} to ${day(from + 1 + Math.floor(random() * 6))}`)
    .replace(/^prepared-by: .*$/mu, `prepared-by: ${PEOPLE[index % 4]}`)
    .replace(/^approved-by: .*$/mu, `approved-by: ${PEOPLE[4 + (index % 4)]}`)
    .replace(/\blot-(\d{4})\b/gu, `lot-$1-${group}`)
    .replace(/\]\(([a-z-]+)\.md\)/gu, (_, link) => `](${link}-${index - (index % templates.length)}.md)`);
  return { path: `builds/${String(Math.floor(index / 100)).padStart(4, "0")}/${name}-${index}.md`, text: written };
}

/** The documents one after another, the same for the same count. */
export function* documents(count, beginning = 1) {
  const random = numbers(beginning);
  for (let index = 0; index < count; index += 1) yield documentOf(index, groupOf(count), random);
}

function stock(count) {
  const lots = /^lots:\n([\s\S]*)$/mu.exec(readFileSync(`${starterRepository}/stock.yaml`, "utf8"))[1];
  const all = Array.from({ length: Math.ceil(count / groupOf(count)) }, (_, group) =>
    lots.replace(/\blot-(\d{4})\b/gu, `lot-$1-${group}`),
  );
  return `lots:\n${all.join("")}`;
}

/** Writes a docs repository with so many build documents into a new folder. */
export function generate(folder, count) {
  mkdirSync(folder, { recursive: true });
  for (const name of ["house-standard.yaml", "parts"])
    cpSync(`${starterRepository}/${name}`, `${folder}/${name}`, { recursive: true });
  // A plugin is run by a process of its own: it is measured by itself.
  const standard = `${folder}/house-standard.yaml`;
  writeFileSync(standard, readFileSync(standard, "utf8").replace(/^rules-from: .*\n/mu, ""));
  writeFileSync(`${folder}/stock.yaml`, stock(count));
  let made = "";
  for (const { path, text } of documents(count)) {
    const within = `${folder}/${path.slice(0, path.lastIndexOf("/"))}`;
    if (within !== made) mkdirSync(within, { recursive: true });
    made = within;
    writeFileSync(`${folder}/${path}`, text);
  }
}
