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
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { oldForm } from "../../../../tests/old-form.js";
import { notEmpty } from "../../../../tests/run/not-empty.js";
import { ResultCache } from "../engine/cache/cache.js";
import { fastEngine } from "../engine/fast.js";

// Whatever changes between two publishes, the second leaves the folder that a publish from
// nothing does.

// A site from nothing takes longest, so every test goes on from the folder as the one before has left it.
let top: string;
beforeAll(() => {
  top = mkdtempSync(join(tmpdir(), "plumbmark-again-"));
  mkdirSync(join(top, "docs/builds"), { recursive: true });
  for (const name of ["parts", "stock.yaml"])
    cpSync(join(starterRepository, name), join(top, "docs", name), { recursive: true });
  for (const name of ["builds/over-stage-banner.md", "builds/small-screen.md"])
    cpSync(join(oldForm, name), join(top, "docs", name));
  write("house-standard.yaml", () => "house-standard: Watched\npractice: us\n");
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

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

const published = (to: string, caches: () => ResultCache | undefined) =>
  fastEngine(caches).publish({ folder: top, paths: ["docs"], to: join(top, to), today, warn: () => undefined });

/** With what earlier publishes left on the disk, and without. */
const publish = () => published("site", () => new ResultCache(join(top, "cache"), "an edition"));
const publishFresh = () => published("fresh", () => undefined);

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
type Change = readonly [what: string, change: () => void, again?: readonly string[]];

const ofWords: readonly Change[] = [
  ["nothing", () => undefined, []],
  ["words of a document", () => edit(SMALL, (text) => `${text}\nOne more line.\n`), [SMALL]],
  ["a picture that is shown", () => edit(SMALL, (text) => `${text}\n![plan](plan.png)\n`), [SMALL]],
  ["the picture comes", () => write("builds/plan.png", () => PNG), [SMALL]],
  ["the picture changes", () => write("builds/plan.png", () => Buffer.concat([PNG, PNG])), [SMALL]],
  ["both show it", () => edit(BANNER, (text) => `${text}\n![plan](plan.png)\n`), [BANNER]],
  ["one shows it no longer", () => edit(SMALL, (text) => text.replace("![plan](plan.png)", "")), [SMALL]],
];
const ofDocuments: readonly Change[] = [
  ["a link to a document to come", () => edit(SMALL, (text) => `${text}\n[to come](z-last.md)\n`), [SMALL]],
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
];
const ofWhatAllRestOn: readonly Change[] = [
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

const { deep, seed } = inject("effort");
const all = [ofWords, ofDocuments, ofWhatAllRestOn];
/** All in a deep run; else one of the three kinds, another in each run. */
const changes = deep ? all.flat() : (all[seed % all.length] ?? ofWords);

/** A site from nothing takes as long as all else here: a deep run compares after every change, others after some. */
const isCompared = (index: number): boolean => deep || index === 3 || index === changes.length - 1;

test("after every change the site is that of a publish from nothing", { timeout: 600_000 }, async () => {
  expect((await publish()).anew.length).toBe(2);
  for (const [index, [what, change, again]] of notEmpty(changes.entries())) {
    change();
    const { anew } = await publish();
    if (again) expect([what, anew]).toEqual([what, again]);
    if (!isCompared(index)) continue;
    await publishFresh();
    expectSame(filesIn("site"), filesIn("fresh"));
    rmSync(join(top, "fresh"), { recursive: true });
  }
});

test("a file that only looks as it was written is told by what is in it", { timeout: 120_000 }, async () => {
  await publish();
  const before = filesIn("site");
  const page = join(top, "site/builds/small-screen.html");
  const { atime, mtime } = statSync(page);
  const text = readFileSync(page, "utf8");
  writeFileSync(page, text.replace("<body", "<bodi"));
  utimesSync(page, atime, mtime);
  expect(readFileSync(page, "utf8")).not.toBe(text);
  await publish();
  expectSame(filesIn("site"), before);
});

test("a file of the site that was changed by hand is made again", { timeout: 120_000 }, async () => {
  await publish();
  const before = filesIn("site");
  writeFileSync(join(top, "site/builds/small-screen.html"), "changed");
  rmSync(join(top, "site/builds/over-stage-banner.html"));
  await publish();
  expectSame(filesIn("site"), before);
});

test("a publish that fails leaves the earlier site and what is kept of it", { timeout: 120_000 }, async () => {
  await publish();
  const before = filesIn("site");
  const good = read("house-standard.yaml");
  writeFileSync(at("house-standard.yaml"), "house-standard: X\nrequirements: { no.such: { level: shall } }\n");
  await expect(publish()).rejects.toThrow("no.such");
  expectSame(filesIn("site"), before);
  writeFileSync(at("house-standard.yaml"), good);
  expect((await publish()).anew).toEqual([]);
  expectSame(filesIn("site"), before);
});
