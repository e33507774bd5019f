import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { type CheckEntry, inspect, type RepositoryFiles, type Rule } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { caseFiles, root } from "./repository.js";

const KINDS = ["holds", "fails", "open"] as const;
type Kind = (typeof KINDS)[number];

/** What stands in a file can always be read or not: these rules hold or fail and are never open. */
const NEVER_OPEN: readonly string[] = ["document.front-matter"];

const casesOf = (rule: Rule): readonly string[] => {
  const folder = join(root, "rules", rule.id.replace(".", "/"), "cases");
  return existsSync(folder)
    ? readdirSync(folder)
        .sort()
        .map((name) => join(folder, name))
    : [];
};

const nameOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);
const kindOf = (path: string): Kind | undefined =>
  KINDS.find((kind) => new RegExp(`^${kind}(?![a-z])`, "u").test(nameOf(path)));

/** Only one rule is asked; the others are there by name, as a waiver may name them. */
const asked = (rule: Rule): readonly Rule[] =>
  rules.map((each) => (each === rule ? rule : { ...each, checks: () => [] }));

const inspected = (files: RepositoryFiles, rule: Rule): readonly CheckEntry[] =>
  inspect(files, asked(rule), { today: "2027-01-01", every: true }).documents.flatMap(({ checks }) => checks);

/** What a case of each kind has to come out as; the checks are those of the rule alone. */
const EXPECTED: Readonly<Record<Kind, (checks: readonly CheckEntry[]) => void>> = {
  holds: (checks) => expect(checks.map(({ outcome }) => outcome)).toEqual(checks.map(() => "holds")),
  fails: (checks) => {
    const failed = checks.filter(({ outcome }) => outcome === "fails");
    expect(failed, "no check fails").not.toEqual([]);
    for (const check of failed) expect(check.mend, `no mend: ${check.says}`).toBeTruthy();
  },
  open: (checks) => {
    const outcomes = checks.map(({ outcome }) => outcome);
    expect(outcomes).toContain("open");
    expect(outcomes).not.toContain("fails");
  },
};

describe.each(rules.map((rule) => [rule.id, rule] as const))("%s", (id, rule) => {
  const cases = casesOf(rule);

  test("has a case of each kind, and no other", () => {
    expect(new Set(cases.map(kindOf))).toEqual(
      new Set(KINDS.filter((kind) => kind !== "open" || !NEVER_OPEN.includes(id))),
    );
  });

  test.each(cases.map((path) => [nameOf(path), path] as const))("%s", (_, path) => {
    const all = inspected(caseFiles(path), rule);
    const checks = all.filter((check) => check.rule === id);
    expect(checks, "the rule has nothing to say").not.toEqual([]);
    EXPECTED[kindOf(path) as Kind](checks);
    // A slip in the case itself must not be what makes it come out; only the document's own rules are about slips.
    if (!id.startsWith("document."))
      expect(all.filter((check) => check.rule !== id).map(({ says }) => says)).toEqual([]);
  });
});
