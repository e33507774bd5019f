import { execFileSync } from "node:child_process";
import {
  appendFileSync,
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { gitIdentity } from "../../../../tests/git-identity.js";
import { putOldForm } from "../../../../tests/old-form.js";
import { notEmpty } from "../../../../tests/run/not-empty.js";
import { stagedScope } from "../git/scope.js";
import { ResultCache } from "./cache/cache.js";
import type { Engine, InspectRequest } from "./engine.js";
import { fastEngine } from "./fast.js";
import { plainEngine } from "./plain.js";

// One contract for every engine: what it gives is what the plain one gives, to the byte, the second time as the first.

/** So many of the documents are whole builds. */
const WHOLE = 2;
const SHORT = `---
build: short
title: Short
status: draft
faces:
  wall: {panel: tile-500-p2.9, columns: 2, rows: 1, support: wall, lot: lot-2431}
power:
  circuits:
    c1: {supply: 120 V, breaker: 20 A}
---

# Short
`;

let top: string;
let root: string;
const git = (...words: string[]) => execFileSync("git", words, { cwd: root, env: { ...process.env, ...gitIdentity } });

beforeAll(() => {
  top = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-engine-")));
  root = join(top, "docs");
  cpSync(starterRepository, root, { recursive: true });
  putOldForm(root);
  // What is to be the same is so for two builds of the starter as for nine, which take four times as long.
  for (const [folder, left] of [
    ["builds", ["over-stage-banner.md", "small-screen.md"]],
    ["wishes", ["summer-strip.yaml"]],
  ] as const) {
    const names = readdirSync(join(root, folder));
    expect(names).toEqual(expect.arrayContaining([...left]));
    for (const name of names) if (!(left as readonly string[]).includes(name)) rmSync(join(root, folder, name));
  }
  const small = readFileSync(join(root, "builds/small-screen.md"), "utf8");
  // Enough documents that workers are worth having; most of them are short, which is all that takes.
  for (let at = 0; at < 45; at += 1)
    writeFileSync(
      join(root, `builds/many-${at}.md`),
      (at < WHOLE ? small : SHORT)
        .replace(/^build: .*$/mu, `build: many-${at}`)
        .replace("breaker: 20 A", `breaker: ${10 + (at % 11)} A`),
    );
  git("init", "--quiet");
  git("add", "--all");
  git("commit", "--quiet", "--message", "Everything");
  appendFileSync(join(root, "builds/many-1.md"), "\nSeen again.\n");
  writeFileSync(join(root, "builds/many-2.md"), small.replace(/^build: .*$/mu, "build: many-5"));
  git("add", "--all");
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

const request = (more: Partial<InspectRequest> = {}): InspectRequest => ({
  folder: root,
  paths: [],
  today: "2027-01-10",
  warn: () => undefined,
  every: false,
  ...more,
});

const cached = (): Engine => fastEngine(() => new ResultCache(join(top, "cache"), "an edition"));

/** A fast engine that has nothing cached, and one that has everything. */
const caching = [
  ["that begins its cache", cached],
  ["that finds all in its cache", cached],
] as const;
/** These, and one that caches nothing. */
const engines = [...caching, ["without a cache", () => fastEngine(() => undefined)]] as const;

// A plugin has a process each time. What it comes to is joined to the rest in one way of asking, and published.
const inspections: readonly (readonly [string, () => Promise<Partial<InspectRequest>>])[] = [
  ["everything", async () => ({})],
  ["every check, without plugins", async () => ({ every: true, plugins: false })],
  ["one document, without plugins", async () => ({ paths: ["builds/small-screen.md"], plugins: false })],
  ["one folder, without plugins", async () => ({ paths: ["builds"], plugins: false })],
  ["with figures, without plugins", async () => ({ every: true, figures: true, plugins: false })],
  ["what is staged, without plugins", async () => ({ scope: await stagedScope(root), plugins: false })],
  ["what is staged", async () => ({ scope: await stagedScope(root) })],
];

/**
 * One of the two ways that are asked most, of engines with a cache, and one of the other ways, of all engines: others in
 * each run. A deep run asks all in every way.
 */
const { deep, seed } = inject("effort");
const ALWAYS = ["everything", "what is staged, without plugins"];
const others = inspections.filter(([what]) => !ALWAYS.includes(what));
const tried = inspections.filter(
  (each) =>
    deep ||
    (others.includes(each)
      ? others.indexOf(each) === seed % others.length
      : ALWAYS.indexOf(each[0]) === seed % ALWAYS.length),
);

describe.each(notEmpty(tried))("inspecting %s", { timeout: 120_000 }, (way, what) => {
  const came = async (engine: Engine): Promise<string> => {
    const more = await what();
    const { record, leftAlone, figures } = await engine.inspect(request(more)).finally(more.scope?.end);
    return JSON.stringify([record, leftAlone, [...figures]]);
  };

  test("comes to the same", async () => {
    const plain = await came(plainEngine());
    expect(JSON.parse(plain)[0].documents.length).toBeGreaterThan(0);
    for (const [name, make] of deep || !ALWAYS.includes(way) ? engines : caching)
      expect((await came(make())) === plain, name).toBe(true);
  });
});

test("publishing comes to the same files", { timeout: 300_000 }, async () => {
  for (let at = WHOLE; at < 45; at += 1) rmSync(join(root, `builds/many-${at}.md`));
  const published = async (engine: Engine, to: string) => {
    await engine.publish({ ...request(), to: join(top, to) });
    const files = readdirSync(join(top, to), { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
    return new Map(
      files
        .map((each) => join(each.parentPath, each.name))
        .sort()
        .map((path) => [path.slice(join(top, to).length), readFileSync(path, "latin1")]),
    );
  };
  const plain = await published(plainEngine(), "plain");
  expect(plain.size).toBeGreaterThan(100);
  // That a publish without a cache leaves the same as one with it, is looked at where a site is published again.
  for (const [name, make] of deep ? engines : caching) expect(await published(make(), "fast"), name).toEqual(plain);
});
