import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { afterEach, beforeEach, expect, inject, test } from "vitest";
import { notEmpty } from "../../../../tests/run/not-empty.js";
import { keptAt } from "../kept/kept.js";
import type { KeptSheets } from "../kept/sheets.js";
import type { Surroundings } from "../surroundings.js";
import { publishOnce } from "./publish-once.js";

// Whatever changes between two publishes, in one process or in two, the second leaves the folder that a publish from
// nothing does.

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), "plumbmark-again-"));
  mkdirSync(join(top, "docs/builds"), { recursive: true });
  for (const name of ["parts", "stock.yaml", "builds/over-stage-banner.md", "builds/small-screen.md"])
    cpSync(join(starterRepository, name), join(top, "docs", name), { recursive: true });
  write("house-standard.yaml", () => "house-standard: Watched\npractice: us\n");
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

const at = (path: string): string => join(top, "docs", path);
const read = (path: string): string => readFileSync(at(path), "utf8");
const write = (path: string, change: (text: string) => string | Buffer, from?: string): void =>
  writeFileSync(at(path), change(from === undefined ? "" : read(from)));
const edit = (path: string, change: (text: string) => string): void => {
  const [before, after] = [read(path), change(read(path))];
  // A change that changes nothing would test nothing.
  expect(after).not.toBe(before);
  writeFileSync(at(path), after);
};

const around = (today: string): Surroundings => ({
  folder: top,
  today,
  width: 100,
  colour: 0,
  print: () => undefined,
  warn: () => undefined,
});

const nothing = (): undefined => undefined;
const publish = (to: string, earlier: KeptSheets, today: string) =>
  publishOnce("docs", { to }, around(today), earlier, nothing);

/** As a process of its own would, with what is kept on the disk; gives how many files were made. */
async function publishAnew(today: string): Promise<number> {
  let made = 0;
  const progress = (text: string): void => {
    if (text.includes(" of about ")) made += 1;
  };
  const kept = () => keptAt(join(top, "kept"), "an edition");
  await publishOnce("docs", { to: "site" }, { ...around(today), progress }, new Map(), kept);
  return made;
}

/** Every file of a site by its path; its own list of files in the order it is written in. */
const filesIn = (folder: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(join(top, folder), { recursive: true, withFileTypes: true })
      .filter((each) => each.isFile())
      .map((each) => join(each.parentPath, each.name))
      .sort()
      .map((path) => [path.slice(join(top, folder).length + 1), readFileSync(path, "latin1")]),
  );

function expectSame(one: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>): void {
  expect([...one.keys()]).toEqual([...other.keys()]);
  for (const [path, text] of one) expect(text === other.get(path), path).toBe(true);
}

// One white pixel, after the PNG specification (ISO/IEC 15948): signature, IHDR, IDAT, IEND.
const PNG = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAsVF8nwAAAABJRU5ErkJggg==",
  "base64",
);

const BANNER = "builds/over-stage-banner.md";
const SMALL = "builds/small-screen.md";
const ADDED = "builds/z-last.md";
let today = "2027-01-01";
const halfAYearOn = (): void => {
  today = "2027-06-01";
};

/** What is changed, and which sheets are then made again; undefined where that is not said. */
const changes: readonly (readonly [what: string, change: () => void, again?: readonly string[]])[] = [
  ["nothing", () => undefined, []],
  ["words of a document", () => edit(SMALL, (text) => `${text}\nOne more line.\n`), [SMALL]],
  [
    "a picture that is shown",
    () => edit(SMALL, (text) => `${text}\n![plan](plan.png) [to come](z-last.md)\n`),
    [SMALL],
  ],
  ["the picture comes", () => write("builds/plan.png", () => PNG), [SMALL]],
  ["the picture changes", () => write("builds/plan.png", () => Buffer.concat([PNG, PNG])), [SMALL]],
  ["both show it", () => edit(BANNER, (text) => `${text}\n![plan](plan.png)\n`), [BANNER]],
  ["one shows it no longer", () => edit(SMALL, (text) => text.replace("![plan](plan.png)", "")), [SMALL]],
  [
    "a new document, to which one links",
    () => write(ADDED, (text) => text.replace(/^build: .*$/mu, "build: added"), SMALL),
  ],
  ["a name that another has", () => edit(ADDED, (text) => text.replace(/^build: .*$/mu, "build: over-stage-banner"))],
  ["a name of its own again", () => edit(ADDED, (text) => text.replace(/^build: .*$/mu, "build: own"))],
  ["a document that cannot be read as one", () => edit(ADDED, (text) => text.replace(/^build: own$/mu, "build: [own"))],
  ["it is whole again", () => edit(ADDED, (text) => text.replace("build: [own", "build: own"))],
  ["a document is renamed", () => renameSync(at(ADDED), at("builds/a-first.md"))],
  ["a document is taken away", () => rmSync(at("builds/a-first.md"))],
  ["a part", () => edit("parts/panels.yaml", (text) => text.replace(/\d+(?:\.\d+)? kg/u, "9.9 kg"))],
  ["the stock", () => edit("stock.yaml", (text) => text.replace(/count: \d+/u, "count: 3"))],
  ["the stock has a mistake", () => edit("stock.yaml", (text) => text.replace(/count: \d+/u, "count: many"))],
  [
    "the house standard",
    () => edit("house-standard.yaml", (text) => `${text}topics: { rigging: { level: should } }\n`),
  ],
  ["a house standard of the folder", () => write("builds/house-standard.yaml", () => "house-standard: Folder\n")],
  ["the day", halfAYearOn],
];

/** A site from nothing takes as long as all else here: a deep run compares after every change, others after some. */
const isCompared = (index: number): boolean => inject("effort").deep || index % 4 === 3 || index === changes.length - 1;

test("after every change the site is that of a publish from nothing", { timeout: 600_000 }, async () => {
  today = "2027-01-01";
  let sheets = (await publish("site", new Map(), today)).sheets;
  expect(sheets.size).toBe(2);
  for (const [index, [what, change, again]] of changes.entries()) {
    change();
    const next = (await publish("site", sheets, today)).sheets;
    const made = [...next].filter(([path, sheet]) => sheets.get(path) !== sheet).map(([path]) => path);
    if (again) expect([what, made]).toEqual([what, again]);
    sheets = next;
    if (!isCompared(index)) continue;
    await publish("fresh", new Map(), today);
    expectSame(filesIn("site"), filesIn("fresh"));
    rmSync(join(top, "fresh"), { recursive: true });
  }
});

test("so it is in processes that share nothing but what is kept on the disk", { timeout: 600_000 }, async () => {
  today = "2027-01-01";
  const whole = await publishAnew(today);
  // Of two sheets none is made: each has its page, its print style, a drawing and a schedule at the least.
  expect(await publishAnew(today)).toBeLessThanOrEqual(whole - 8);
  for (const [index, [, change]] of changes.entries()) {
    change();
    await publishAnew(today);
    if (!isCompared(index)) continue;
    await publish("fresh", new Map(), today);
    expectSame(filesIn("site"), filesIn("fresh"));
    rmSync(join(top, "fresh"), { recursive: true });
  }
});

test("a file that only looks as it was written is told by what is in it", { timeout: 120_000 }, async () => {
  await publishAnew("2027-01-01");
  const before = filesIn("site");
  const page = join(top, "site/builds/small-screen.html");
  const { atime, mtime } = statSync(page);
  const text = readFileSync(page, "utf8");
  writeFileSync(page, text.replace("<body", "<bodi"));
  utimesSync(page, atime, mtime);
  expect(readFileSync(page, "utf8")).not.toBe(text);
  await publishAnew("2027-01-01");
  expectSame(filesIn("site"), before);
});

test("a file of the site that was changed by hand is made again", { timeout: 120_000 }, async () => {
  const { sheets } = await publish("site", new Map(), "2027-01-01");
  const before = filesIn("site");
  writeFileSync(join(top, "site/builds/small-screen.html"), "changed");
  rmSync(join(top, "site/builds/over-stage-banner.html"));
  await publish("site", sheets, "2027-01-01");
  expectSame(filesIn("site"), before);
});

test("a publish that fails leaves the earlier site and what is kept of it", { timeout: 120_000 }, async () => {
  const { sheets } = await publish("site", new Map(), "2027-01-01");
  const before = filesIn("site");
  const good = read("house-standard.yaml");
  writeFileSync(at("house-standard.yaml"), "house-standard: X\nrequirements: { no.such: { level: shall } }\n");
  await expect(publish("site", sheets, "2027-01-01")).rejects.toThrow("no.such");
  expectSame(filesIn("site"), before);
  writeFileSync(at("house-standard.yaml"), good);
  const next = (await publish("site", sheets, "2027-01-01")).sheets;
  for (const [path, sheet] of notEmpty(next)) expect(sheets.get(path)).toBe(sheet);
  expectSame(filesIn("site"), before);
});
