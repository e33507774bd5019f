import { chmodSync, cpSync, mkdirSync, renameSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, inject, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { asNobody, repository, whyNot } from "./nobody.js";

const reason = whyNot();
const { deep, seed } = inject("effort");
/** Each starts the command as another user: an ordinary run tries some, others each time, a deep run all. */
const taken = <T>(all: readonly T[], count: number): readonly T[] => (deep ? all : some(all, count, seed));

// POSIX.1-2017, 4.5: reading a folder lists it, searching it (x) leads to what is in it.
describe.skipIf(reason !== undefined)(`what may not be read${reason ? ` (not tried: ${reason})` : ""}`, () => {
  const NOT_KNOWN = "The folder may not be read, so what is in it is not known.";
  const listed: readonly (readonly [path: string, mode: number, says: string])[] = [
    [
      "builds/small-screen.md",
      0,
      "builds/small-screen.md:1:1: shall document.front-matter fails: The file may not be read.",
    ],
    ["parts/panels.yaml", 0, "parts/panels.yaml:1:1: shall document.front-matter fails: The file may not be read."],
    ["stock.yaml", 0, "stock.yaml:1:1: shall document.front-matter fails: The file may not be read."],
    ["builds", 0, `builds:1:1: shall document.front-matter fails: ${NOT_KNOWN}`],
    ["builds", 0o111, `builds:1:1: shall document.front-matter fails: ${NOT_KNOWN}`],
    ["builds", 0o444, "builds/small-screen.md:1:1: shall document.front-matter fails: The file may not be read."],
    ["builds/2027", 0, `builds/2027:1:1: shall document.front-matter fails: ${NOT_KNOWN}`],
    ["parts", 0, `parts:1:1: shall document.front-matter fails: ${NOT_KNOWN}`],
  ];
  test.each(notEmpty(taken(listed, 2)))("%s with mode %o is told and not ready", (path, mode, says) => {
    const folder = repository();
    mkdirSync(join(folder, "builds/2027"));
    renameSync(join(folder, "builds/side-strips.md"), join(folder, "builds/2027/side-strips.md"));
    chmodSync(join(folder, path), mode);
    const { status, out } = asNobody(folder, ["inspect", "--as", "gnu"]);
    chmodSync(join(folder, path), 0o755);
    expect(out.split("\n")).toContain(says);
    expect(status).toBe(1);
  });

  const trouble: readonly (readonly [path: string, mode: number, says: RegExp])[] = [
    ["house-standard.yaml", 0, /The house standard house-standard\.yaml cannot be read\. The file may not be read/u],
    ["builds/house-standard.yaml", 0, /The house standard builds\/house-standard\.yaml cannot be read/u],
    ["house-rules/turnaround/plugin.mjs", 0, /plugin\.mjs failed/u],
    ["house-rules", 0, /house-standard\.yaml:9:14: the plugin .* cannot be read \(EACCES\)/u],
    ["", 0, /cannot be read/u],
    ["", 0o111, /The folder .* may not be read/u],
  ];
  test.each(notEmpty(taken(trouble, 2)))("%j with mode %o is trouble", (path, mode, says) => {
    const folder = repository({ plugin: path.startsWith("house-rules") });
    if (path.startsWith("builds")) cpSync(join(folder, "house-standard.yaml"), join(folder, path));
    chmodSync(join(folder, path), mode);
    const { status, err } = asNobody("/", ["inspect", "--as", "gnu", folder]);
    chmodSync(join(folder, path), 0o755);
    expect(err).toMatch(says);
    expect(status).toBe(2);
  });

  test("a tree nobody may write to is inspected and shown all the same", () => {
    const folder = repository();
    for (const words of [
      ["inspect", "builds/small-screen.md"],
      ["workings", "builds/small-screen.md"],
      ["rules"],
      ["takeoff", "builds/small-screen.md"],
    ]) {
      const { status, err } = asNobody(folder, words, { ...process.env, HOME: folder, XDG_CACHE_HOME: "" });
      expect([status, err]).toEqual([0, ""]);
    }
  });

  const homes = [{ HOME: "" }, { HOME: "/nowhere" }, { HOME: "/proc" }, { XDG_CACHE_HOME: "/proc/nothing" }, {}];
  test.each(notEmpty(taken(homes, 2)))("without a home that can be written to: %j", (env) => {
    const { status, err } = asNobody(repository(), ["inspect", "builds/small-screen.md"], {
      PATH: process.env.PATH,
      ...env,
    });
    expect([status, err]).toEqual([0, ""]);
  });
});
