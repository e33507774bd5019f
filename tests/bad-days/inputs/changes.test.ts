import { execFileSync } from "node:child_process";
import { appendFileSync, chmodSync, mkdirSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { describe, expect, inject, test } from "vitest";
import { gitIdentity } from "../../git-identity.js";
import { plumbmark } from "../../plumbmark.js";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { asNobody, whyNot } from "./nobody.js";
import { SMALL, small } from "./small.js";

// What a change touched, when links stand between, files cannot be read or nothing can be written.

const git = (folder: string, ...words: string[]): string =>
  execFileSync("git", words, { cwd: folder, env: { ...process.env, ...gitIdentity }, encoding: "utf8" });

function committed(work: (folder: string) => void = () => undefined): string {
  const folder = small({ "builds/other.md": SMALL["builds/a.md"].replace("build: a", "build: other") });
  chmodSync(folder, 0o755);
  work(folder);
  git(folder, "init", "--quiet");
  git(folder, "add", "--all");
  git(folder, "commit", "--quiet", "--no-verify", "--message", "All of it");
  return folder;
}

const SINCE = ["--since", "HEAD"];
async function files(folder: string, ...words: string[]): Promise<readonly string[]> {
  const { out, err } = await plumbmark(folder, ["inspect", "--as", "json", "--no-plugins", ...words]);
  expect(err).toBe("");
  return (JSON.parse(out) as InspectionRecord).documents.map(({ file }) => file);
}

describe("a document that links lead to", () => {
  const linked = (folder: string): void => {
    mkdirSync(join(folder, "archive"));
    mkdirSync(join(folder, "older"));
    const text = SMALL["builds/a.md"];
    writeFileSync(join(folder, "archive/a.md"), text.replace(/^build: .*/mu, "build: way-a"));
    writeFileSync(join(folder, "older/a.md"), text.replace(/^build: .*/mu, "build: older-a"));
    writeFileSync(join(folder, "archive/notes.txt"), text.replace(/^build: .*/mu, "build: b"));
    symlinkSync("../way", join(folder, "builds/2025"));
    symlinkSync("archive", join(folder, "way"));
    symlinkSync("../archive/notes.txt", join(folder, "builds/b.md"));
  };
  const relink = (to: string, path: string) => (folder: string) => {
    rmSync(join(folder, path));
    symlinkSync(to, join(folder, path));
  };
  const append = (path: string) => (folder: string) => appendFileSync(join(folder, path), "\nMore.\n");

  test.each([
    ["a folder", append("archive/a.md"), "builds/2025/a.md"],
    ["a file", append("archive/notes.txt"), "builds/b.md"],
    ["a folder that is now another", relink("../older", "builds/2025"), "builds/2025/a.md"],
    ["a link that is now another", relink("older", "way"), "builds/2025/a.md"],
  ])("by %s is judged when what it leads to is changed", async (_, change, file) => {
    const folder = committed(linked);
    change(folder);
    expect(await files(folder, ...SINCE)).toContain(file);
    git(folder, "add", "--all");
    expect(await files(folder, "--staged")).toContain(file);
  });

  test("is left alone when nothing on its way is changed", async () => {
    const folder = committed(linked);
    append("builds/other.md")(folder);
    git(folder, "add", "--all");
    for (const scope of [["--staged"], SINCE]) {
      const found = await files(folder, ...scope);
      expect(found).toContain("builds/other.md");
      expect(found.filter((file) => /2025|b\.md/u.test(file))).toEqual([]);
    }
  });
});

const reason = whyNot();
/** Each starts the command as another user: an ordinary run tries some, others each time, a deep run all. */
const { deep, seed } = inject("effort");
const UNREADABLE = ["parts/p.yaml", "parts", "builds/2027", "builds/other.md", "stock.yaml"];
const TRUSTED = { GIT_CONFIG_COUNT: "1", GIT_CONFIG_KEY_0: "safe.directory", GIT_CONFIG_VALUE_0: "*" };
const env = (home: string): NodeJS.ProcessEnv => ({ PATH: process.env.PATH, HOME: home, ...TRUSTED });

describe.skipIf(reason !== undefined)(
  `what may not be read or written${reason ? ` (not tried: ${reason})` : ""}`,
  () => {
    test.each(notEmpty(deep ? UNREADABLE : some(UNREADABLE, 2, seed)))(
      "%s that nobody touched and nobody may read is told by --since",
      (path) => {
        const folder = committed((made) => {
          mkdirSync(join(made, "builds/2027"));
          writeFileSync(join(made, "builds/2027/b.md"), SMALL["builds/a.md"].replace("build: a", "build: b"));
        });
        appendFileSync(join(folder, "builds/a.md"), "\nMore.\n");
        chmodSync(join(folder, path), 0);
        const { status, out, err } = asNobody(
          folder,
          ["inspect", "--as", "gnu", "--no-plugins", ...SINCE],
          env(folder),
        );
        chmodSync(join(folder, path), 0o755);
        expect(status, err).toBeGreaterThan(0);
        expect(out + err).toContain(path);
      },
    );

    /** Everything in a folder, for reading only, as on a disk that is. */
    function close(folder: string): void {
      for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true }))
        chmodSync(join(entry.parentPath, entry.name), entry.isDirectory() ? 0o555 : 0o444);
      chmodSync(folder, 0o555);
    }
    function reopen(folder: string): void {
      chmodSync(folder, 0o755);
      for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true }))
        if (entry.isDirectory()) chmodSync(join(entry.parentPath, entry.name), 0o755);
    }

    test.each([["--staged"], SINCE])(
      "a repository nobody may write to is inspected with %s, and nothing is kept",
      (...scope) => {
        const folder = committed();
        appendFileSync(join(folder, "builds/a.md"), "\nMore.\n");
        git(folder, "add", "--all");
        close(folder);
        const words = ["inspect", "--as", "gnu", "--no-plugins", ...scope];
        const told = [asNobody(folder, words, env(folder)), asNobody(folder, words, env(folder))];
        reopen(folder);
        for (const { status, err } of told) expect([status, err]).toEqual([0, ""]);
        expect(readdirSync(join(folder, ".git"))).not.toContain("plumbmark");
      },
    );
  },
);
