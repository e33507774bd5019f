import { spawn } from "node:child_process";
import {
  existsSync,
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
import { fileURLToPath } from "node:url";
import { publish, SiteError, siteFiles, writeSite } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { build } from "esbuild";
import { afterEach, beforeEach, describe, expect, inject, it } from "vitest";
import { some } from "../run/some.js";
import { starterFiles, TODAY } from "./starter-files.js";

const pages = (...paths: readonly string[]) => new Map(paths.map((path) => [path, `text of ${path}`]));

const { deep, seed } = inject("effort");

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), "site-"));
});
afterEach(() => rmSync(top, { recursive: true }));

describe("writing a site", () => {
  it("makes the folder with every page and leaves nothing beside it", async () => {
    await writeSite(pages("index.html", "rules/a.html"), join(top, "deep", "site"));
    expect(readFileSync(join(top, "deep/site/rules/a.html"), "utf8")).toBe("text of rules/a.html");
    expect(readdirSync(join(top, "deep"))).toEqual(["site"]);
  });

  it("replaces an earlier site whole", async () => {
    await writeSite(pages("index.html", "old.html"), join(top, "site"));
    await writeSite(pages("index.html", "new.html"), join(top, "site"));
    expect(existsSync(join(top, "site/old.html"))).toBe(false);
    expect(existsSync(join(top, "site/new.html"))).toBe(true);
    expect(readdirSync(top)).toEqual(["site"]);
  });

  it("takes away a page that is no longer there, though nothing else has changed", async () => {
    await writeSite(pages("index.html", "old.html"), join(top, "site"));
    expect(await writeSite(pages("index.html"), join(top, "site"))).toEqual({ written: 0, unchanged: 1 });
    expect(readdirSync(join(top, "site")).sort()).toEqual([".plumbmark-site", "index.html"]);
  });

  it("does not write anew what has not changed", async () => {
    await writeSite(pages("index.html", "same.html"), join(top, "site"));
    const long = new Date("2020-02-02T02:02:02Z");
    for (const name of ["index.html", "same.html"]) utimesSync(join(top, "site", name), long, long);
    const changed = new Map([...pages("same.html"), ["index.html", "other"]]);
    expect(await writeSite(changed, join(top, "site"))).toEqual({ written: 1, unchanged: 1 });
    expect(statSync(join(top, "site/same.html")).mtime).toEqual(long);
    expect(statSync(join(top, "site/index.html")).mtime).not.toEqual(long);
    expect(readFileSync(join(top, "site/index.html"), "utf8")).toBe("other");
  });

  it("leaves the earlier site as it was when a page cannot be made", async () => {
    await writeSite(pages("index.html", "old.html"), join(top, "site"));
    function* broken(): Generator<[string, string]> {
      yield ["index.html", "half of it"];
      throw new Error("a page cannot be made");
    }
    await expect(writeSite(broken(), join(top, "site"))).rejects.toThrow("cannot be made");
    expect(readFileSync(join(top, "site/index.html"), "utf8")).toBe("text of index.html");
    expect(readdirSync(top)).toEqual(["site"]);
  });

  it("refuses a folder that is not a site of ours, and changes nothing", async () => {
    mkdirSync(join(top, "mine"));
    writeFileSync(join(top, "mine/letter.txt"), "keep");
    await expect(writeSite(pages("index.html"), join(top, "mine"))).rejects.toThrow(SiteError);
    expect(readdirSync(join(top, "mine"))).toEqual(["letter.txt"]);
  });

  it("refuses a site to which somebody added a file", async () => {
    await writeSite(pages("index.html"), join(top, "site"));
    writeFileSync(join(top, "site/notes.txt"), "keep");
    await expect(writeSite(pages("index.html"), join(top, "site"))).rejects.toThrow("notes.txt");
    expect(readFileSync(join(top, "site/notes.txt"), "utf8")).toBe("keep");
  });

  it("refuses a page outside the site", async () => {
    await expect(writeSite(pages("../x.html"), join(top, "site"))).rejects.toThrow(SiteError);
    expect(readdirSync(top)).toEqual([]);
  });
});

describe("the same input", () => {
  it("gives the same bytes, and nothing is written the second time", async () => {
    // To draft the wishes takes as long as all else; that drafts come out alike is looked at where wishes are.
    const documents = deep ? starterFiles.documents : some(starterFiles.documents, 2, seed);
    const input = { files: { ...starterFiles, documents, wishes: [] }, rules, today: TODAY };
    const [one, other] = [new Map(siteFiles(input)), publish(input)];
    expect([...one.keys()]).toEqual([...other.keys()]);
    expect(one.size).toBeGreaterThan(60);
    for (const [path, text] of one) expect(other.get(path) === text, path).toBe(true);
    await writeSite(one, join(top, "site"));
    expect(await writeSite(other, join(top, "site"))).toEqual({ written: 0, unchanged: one.size });
  });
});

const ATTEMPTS = deep ? 36 : 5;

describe("a publish that is killed", () => {
  // A program of its own that writes site after site, each with one word on all of its hundred pages.
  const program = `
    import { writeSite } from "@plumbmark/docs-site";
    const word = process.argv[2];
    const pages = new Map(Array.from({ length: 100 }, (_, number) => ["p" + number + "/page.html", word.repeat(1000)]));
    process.stdout.write("begins");
    for (let round = 0; ; round += 1) {
      await writeSite(new Map([...pages, ["round.html", String(round)]]), process.argv[3]);
      for (const path of pages.keys()) pages.set(path, word.repeat(1000) + round);
    }
  `;

  it("leaves a whole site, whenever it is killed", { timeout: 240_000 }, async () => {
    const script = fileURLToPath(new URL(`../dist/killed-${process.pid}.mjs`, import.meta.url));
    await build({
      stdin: { contents: program, resolveDir: fileURLToPath(new URL("..", import.meta.url)) },
      bundle: true,
      platform: "node",
      format: "esm",
      conditions: ["source"],
      banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
      outfile: script,
    });
    const site = join(top, "site");
    await writeSite(new Map(Array.from({ length: 100 }, (_, number) => [`p${number}/page.html`, "first"])), site);
    for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
      const child = spawn(process.execPath, [script, `w${attempt}`, site], { stdio: ["ignore", "pipe", "inherit"] });
      await new Promise((resolve) => child.stdout.once("data", resolve));
      await new Promise((resolve) => setTimeout(resolve, 20 + (400 / ATTEMPTS) * attempt));
      child.kill("SIGKILL");
      await new Promise((resolve) => child.once("exit", resolve));
      // Between the last two moves the earlier site stands beside its place; whoever publishes next puts it back.
      if (!existsSync(site)) await writeSite(new Map([["../x", ""]]), site).catch(() => undefined);
      const texts = new Set(
        Array.from({ length: 100 }, (_, number) => readFileSync(join(site, `p${number}/page.html`), "utf8")),
      );
      expect(texts.size, "pages of two sites stand side by side").toBe(1);
    }
    rmSync(script);
    // What the killed ones left is cleared away by the next.
    await writeSite(pages("index.html"), site);
    expect(readdirSync(top)).toEqual(["site"]);
  });

  it("between its last two moves is put right by the next", async () => {
    const site = join(top, "site");
    await writeSite(pages("index.html"), site);
    // No process has this number: it is above what the system gives.
    const beside = join(top, ".site-99999999-abc123");
    mkdirSync(beside);
    renameSync(site, join(beside, "old"));
    await expect(writeSite(pages("../x.html"), site)).rejects.toThrow(SiteError);
    expect(readFileSync(join(site, "index.html"), "utf8")).toBe("text of index.html");
    expect(readdirSync(top)).toEqual(["site"]);
  });
});
