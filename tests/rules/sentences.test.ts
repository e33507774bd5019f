import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, inject, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { caseFiles, root } from "./repository.js";

// A sentence belongs to its outcome: what is said of a thing that holds is never said of one that does not. Of a
// comparison the sentence tells two figures and may be the same either way; it is left out.

interface Said {
  readonly outcome: string;
  readonly says: string;
  readonly holdsFigures: boolean;
}

/** What the cases of a rule have it say. */
function saidBy(id: string): readonly Said[] {
  const folder = join(root, "rules", id.replace(".", "/"), "cases");
  const names = existsSync(folder) ? readdirSync(folder) : [];
  const own = rules.filter((rule) => rule.id === id);
  return names.flatMap((name) => {
    const repository = openRepository(caseFiles(join(folder, name)), own, {
      today: "2027-01-01",
      every: true,
      turns: false,
    });
    return repository
      .all()
      .documents.flatMap(({ checks }) =>
        checks
          .filter(({ rule }) => rule === id)
          .map(({ outcome, says, measured }) => ({ outcome, says, holdsFigures: measured !== undefined })),
      );
  });
}

/** The words of a sentence without names and figures, by which it is known again in another document. */
const plain = (says: string): string =>
  (says.replace(/`[^`]*`|\S*[\d/_-]\S*/gu, "").match(/\b[a-z]{2,}\b/gu) ?? []).join(" ");

/** Sentences that set two things side by side, like a comparison: whether they fit is told by their names and figures. */
const SIDE_BY_SIDE = [
  "has the plug circuit has the outlet",
  "has conductors its plug needs",
  "each eye of has clips are",
  "residual device of circuit is of type",
];

/** All rules in a deep run; else a third of them, others in each run. */
const { deep, seed } = inject("effort");
const ids = rules.map(({ id }) => id);
const tried = deep ? ids : some(ids, Math.ceil(ids.length / 3), seed);

describe.each(notEmpty(tried))("%s", (id) => {
  const all = saidBy(id);
  const of = (outcome: string): ReadonlySet<string> =>
    new Set(all.filter((each) => !each.holdsFigures && each.outcome === outcome).map(({ says }) => plain(says)));

  test("says nothing of what holds that it says of what does not", () => {
    const [holds, fails, open] = ["holds", "fails", "open"].map(of) as [
      ReadonlySet<string>,
      ReadonlySet<string>,
      ReadonlySet<string>,
    ];
    const both = [...holds].filter((each) => fails.has(each) || open.has(each));
    expect(both.filter((each) => !SIDE_BY_SIDE.some((known) => each.includes(known)))).toEqual([]);
    expect([...open].filter((each) => fails.has(each))).toEqual([]);
  });

  // A list of one takes the singular and a list of more the plural; nothing stands where a name or figure should.
  test("says it in whole sentences", () => {
    const bad = all
      .map(({ says }) => says)
      .filter((says) =>
        /undefined|NaN|\[object|Infinity|\bnull\b| {2}|^ | [.,;:]|\(\)|^[a-z]*\.$/u.test(
          says.replaceAll(/`[^`]*`/gu, "x"),
        ),
      );
    expect(bad).toEqual([]);
    expect(all.filter(({ says }) => !/[.!?)`”"]$/u.test(says.trim()))).toEqual([]);
  });
});
