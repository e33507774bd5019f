import { cpSync } from "node:fs";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { describe, expect, test } from "vitest";
import { markdownPieces } from "../../packages/cli/src/report/markdown.js";
import { sarifPieces } from "../../packages/cli/src/report/sarif.js";
import { textReport } from "../../packages/cli/src/report/text.js";
import { notEmpty } from "../run/not-empty.js";
import { unborn } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";
const PANELS = "parts/panels.yaml";
const SCREEN = "builds/small-screen.md";

interface Slip {
  readonly what: string;
  readonly path?: string;
  /** What stands in the starter, and what is written in its place. */
  readonly from: string | RegExp;
  readonly to: string;
  /** What is taken away, and what is put there. */
  readonly was: string | RegExp;
  readonly becomes: string | RegExp;
}

/** What hides nothing else: figures and counts of a document that can be read. */
const FIGURES: readonly Slip[] = [
  {
    what: "a figure quoted in the prose",
    from: /\[\d+ lb\]\(calc:faces\.banner\.mass\)/u,
    to: "[1 lb](calc:faces.banner.mass)",
    was: "1 lb",
    becomes: /^1\d\d lb$/u,
  },
  {
    what: "the number of attachments",
    from: "hung-by: hanging-bar-500",
    to: "hung-by: {part: hanging-bar-500, count: 5}\n    extras: {hanging-bar-500: 6}",
    was: "5",
    becomes: "6",
  },
  { what: "attachments under extras", from: "extras: {", to: "extras: {", was: "hanging-bar-500: 6", becomes: "" },
  {
    what: "the length of a feed, from its route",
    from: "feed: {part: cord-12-3, hangs: 6 ft}",
    to: "feed: {part: cord-12-3, length: 25 ft, hangs: 6 ft}",
    was: "25 ft",
    becomes: /^(?:35|50) ft$/u,
  },
  {
    what: "the shortest stocked length of a jumper",
    from: "jumper: {part: power-jumper, length: 0.9 m}",
    to: "jumper: {part: power-jumper, length: 0.3 m}",
    was: "0.3 m",
    becomes: "0.9 m",
  },
];

/** Slips of the form. */
const FORM: readonly Slip[] = [
  { what: "a key with one near match", from: "    trim: 11 ft", to: "    trimm: 11 ft", was: "trimm", becomes: "trim" },
  // Nothing else of a document can be read with it.
  { what: "a tab", path: SCREEN, from: "    rows:", to: "\trows:", was: "\t", becomes: "    " },
  {
    what: "a decimal comma",
    path: PANELS,
    from: "  mass: 7.9 kg",
    to: "  mass: 7,9 kg",
    was: "7,9 kg",
    becomes: "7.9 kg",
  },
  {
    what: "a range with a hyphen",
    path: PANELS,
    from: "  supply: 100 V to 240 V",
    to: "  supply: 100-240 V",
    was: "100-240 V",
    becomes: "100 V to 240 V",
  },
];

function slipped(slips: readonly Slip[]) {
  const repository = unborn();
  for (const folder of ["builds", "venues"])
    cpSync(join(starterRepository, folder), join(repository.folder, folder), { recursive: true });
  for (const { path = BANNER, from, to } of slips) {
    const written = typeof from === "string" ? from : (from.exec(repository.read(path))?.[0] ?? "missing");
    repository.change(path, written, to);
  }
  return repository;
}

const fits = (pattern: string | RegExp, text: string): boolean =>
  typeof pattern === "string" ? pattern === text : pattern.test(text);

interface Change {
  readonly file: string;
  readonly was: string;
  readonly becomes: string;
}

const missingIn = (slips: readonly Slip[], changes: readonly Change[]): readonly string[] =>
  slips
    .filter(
      ({ path = BANNER, was, becomes }) =>
        !changes.some((each) => each.file === path && fits(was, each.was) && fits(becomes, each.becomes)),
    )
    .map(({ what }) => what);

interface Sarif {
  readonly runs: readonly {
    readonly results: readonly {
      readonly fixes?: readonly {
        readonly artifactChanges: readonly {
          readonly artifactLocation: { readonly uri: string };
          readonly replacements: readonly {
            readonly deletedRegion: {
              readonly startLine: number;
              readonly startColumn: number;
              readonly endLine: number;
              readonly endColumn: number;
            };
            readonly insertedContent: { readonly text: string };
          }[];
        }[];
      }[];
    }[];
  }[];
}

/** SARIF tells a region, and what stood there is read from the file (3.57). */
function fixesIn(out: string, read: (path: string) => string): readonly Change[] {
  const results = (JSON.parse(out) as Sarif).runs.flatMap((run) => run.results);
  const changes = results.flatMap(({ fixes = [] }) => fixes.flatMap(({ artifactChanges }) => artifactChanges));
  return changes.flatMap(({ artifactLocation: { uri }, replacements }) =>
    replacements.map(({ deletedRegion: { startLine, startColumn, endColumn }, insertedContent }) => ({
      file: uri,
      was: (read(uri).split("\n")[startLine - 1] ?? "").slice(startColumn - 1, endColumn - 1),
      becomes: insertedContent.text,
    })),
  );
}

describe.each([
  ["figures and counts", FIGURES, [BANNER], []],
  ["slips of the form", FORM, [BANNER, SCREEN], [PANELS]],
] as const)("%s", (_, slips, documents, others) => {
  test("are mended in the record and as fixes of SARIF, told in the report, shown and made", async () => {
    const repository = slipped(slips);
    const { out } = await repository.plumbmark("inspect", ...documents, "--as", "json");
    const record = JSON.parse(out) as InspectionRecord;
    const sure = record.documents.flatMap(({ file, checks }) =>
      checks.flatMap(({ mends = [] }) =>
        mends.filter((each) => each.sure).map(({ was, becomes }) => ({ file, was, becomes })),
      ),
    );
    expect(missingIn(slips, sure)).toEqual([]);
    const sarif = [...sarifPieces({ record, rules, version: "0.0.0", prefix: "" })].join("");
    expect(
      missingIn(
        slips,
        fixesIn(sarif, (path) => repository.read(path)),
      ),
    ).toEqual([]);

    const told = /`plumbmark mend` can put (\d+) of these right; `--show` shows how\./u;
    const reports = [textReport(record, { width: 80, colour: 0 }), [...markdownPieces(record)].join("")];
    for (const report of notEmpty(reports)) {
      const number = Number(told.exec(report.replaceAll(/\s+/gu, " "))?.[1]);
      expect(number).toBeGreaterThanOrEqual(slips.length);
      // Not more than there are to be put right.
      expect(number).toBeLessThanOrEqual(record.totals.checks);
    }

    const before = [BANNER, PANELS, SCREEN].map((path) => repository.read(path));
    const shown = await repository.plumbmark("mend", "--show", ...documents, ...others);
    expect(shown.status).toBe(1);
    expect([BANNER, PANELS, SCREEN].map((path) => repository.read(path))).toEqual(before);
    expect((await repository.plumbmark("mend", ...documents, ...others)).status).toBe(0);
    for (const { path = BANNER, to } of notEmpty(slips.filter(({ to }) => !to.endsWith("{")))) {
      const [wrong = ""] = to.split("\n");
      expect(shown.out).toMatch(new RegExp(`^-.*${wrong.trim().replaceAll(/[[\](){}.]/gu, "\\$&")}`, "mu"));
      expect(repository.read(path)).not.toContain(wrong);
    }
    expect((await repository.plumbmark("mend", ...documents, ...others)).out).toMatch(/^Nothing here has one answer/u);
  });
});
