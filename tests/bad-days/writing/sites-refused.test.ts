import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { environment, preload, scratch, tree } from "./command.js";

// A site of three pages, written with the disk refusing each of its steps in turn: a folder afterwards holds the
// earlier site or the later one, whole, and nothing else.

const program = fileURLToPath(new URL("write-sites.mjs", import.meta.url));

interface Line {
  readonly place: string;
  readonly code: string;
  readonly told: string;
  readonly struck: boolean;
}

const LEFT = /(?:^|\/)\.site-\d+-/u;

const pages = (folder: string): readonly string[] =>
  Object.keys(tree(folder, (path) => LEFT.test(path))).filter((path) => path.endsWith(".html"));

/** Where the earlier site waits when the disk refused to have even that moved back. */
const waiting = (told: string): string | undefined => /waits in (.*)\.$/u.exec(told)?.[1];

const EARLIER = ["deep/site/index.html", "deep/site/old/page.html", "deep/site/same/page.html"];
const LATER = ["deep/site/index.html", "deep/site/new/page.html", "deep/site/same/page.html"];

test.each(["none", "earlier"])(
  "a site where there was %s is written whole or not at all",
  { timeout: 120_000 },
  (which) => {
    const folder = scratch();
    const { stdout, stderr } = spawnSync(process.execPath, ["--import", preload, program, folder, which], {
      env: environment(folder),
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    const lines = stdout
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as Line);
    expect(lines.filter(({ struck }) => struck).length).toBeGreaterThan(100);
    for (const { place, code, told, struck } of lines) {
      const before = which === "none" ? [] : EARLIER;
      if (!struck) expect(told, place).toBe("done");
      if (told !== "done") expect(told, place).toContain(code);
      const waits = waiting(told);
      if (waits === undefined)
        expect(pages(`${place}-after`).toSorted(), `${place}: ${told}`).toEqual(told === "done" ? LATER : before);
      else
        expect(
          pages(waits.replace(place, `${place}-after`))
            .map((path) => `deep/site/${path}`)
            .toSorted(),
        ).toEqual(EARLIER);
      expect(pages(place).toSorted(), place).toEqual(LATER);
    }
  },
);
