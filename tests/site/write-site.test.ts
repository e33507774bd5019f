import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { SiteError, writeSite } from "@plumbmark/docs-site";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

const pages = (...paths: readonly string[]) => new Map(paths.map((path) => [path, `text of ${path}`]));

describe("writing a site", () => {
  let top: string;
  beforeEach(() => {
    top = mkdtempSync(join(tmpdir(), "site-"));
  });
  afterEach(() => rmSync(top, { recursive: true }));

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
