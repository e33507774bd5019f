import { readFileSync } from "node:fs";
import { type CheckEntry, type InspectionRecord, openRepository, outlineOf, type SourceFile } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, inject, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { someOfEach } from "../run/some.js";
import { changed, inspectText, inspectTexts, SMALL, starter, TODAY } from "./repository.js";

/** The published schema, read by a validator that is not the product's own. */
const schema = JSON.parse(
  readFileSync(new URL("../../packages/core/schema/record.schema.json", import.meta.url), "utf8"),
) as object;
const valid = new Ajv2020({ allErrors: true, strict: false }).compile(schema);

function described(record: InspectionRecord): void {
  // What is checked is what is written to disk: NaN and infinity become null there.
  valid(JSON.parse(JSON.stringify(record)));
  expect(valid.errors ?? []).toEqual([]);
}

const outcomes = (checks: readonly CheckEntry[]): readonly string[] => [
  ...new Set(checks.map(({ outcome }) => outcome)),
];

/** All of the starter in a deep run; else the one that is not ready, the draft and one more, another in each run. */
const { deep, seed } = inject("effort");
const kindOf = ({ path }: SourceFile): string => /gala-wall|gallery-header/u.exec(path)?.[0] ?? "ready";
const documents = deep ? starter().documents : someOfEach(starter().documents, kindOf, 1, seed);
const others = starter().documents.flatMap((file) => (documents.includes(file) ? [] : [outlineOf(file)]));
const files = { ...starter(), documents, others };
const brief = openRepository(files, rules, { today: TODAY }).all();

describe("the record follows its schema", () => {
  test("of the starter's documents", () => {
    expect(new Set(brief.documents.map(({ verdict }) => verdict)).size).toBe(3);
    described(brief);
  });

  test("of the starter's documents, every check listed", () => {
    const record = openRepository(files, rules, {
      today: TODAY,
      every: true,
      turns: false,
    }).all();
    expect(record.documents.flatMap(({ checks }) => checks).length).toBeGreaterThan(
      brief.documents.flatMap(({ checks }) => checks).length,
    );
    described(record);
  });

  test("of documents that cannot be read, are wrong, or are half written", () => {
    described(
      inspectTexts([
        "",
        "---\nbuild: [\n---\n",
        "---\nbuild: x\n---\n",
        changed("revision: 1", "revision: 1.5"),
        changed("revision: 1", "revision: .inf"),
        changed("revision: 1", "revision: 3b"),
        changed("breaker: 20 A", "breaker: 20"),
        changed("      breaker: 20 A\n", ""),
        changed("title: Small header", "title: 7"),
        changed("status: for-build", "status: 2027-01-01"),
      ]),
    );
  });

  test("the schema refuses a record with a verdict nobody knows", () => {
    const record = JSON.parse(JSON.stringify(inspectTexts([SMALL]))) as { documents: { verdict: string }[] };
    (record.documents[0] as { verdict: string }).verdict = "nearly";
    expect(valid(record)).toBe(false);
  });
});

describe("what is listed", () => {
  const text = changed("      breaker: 20 A\n", "");
  const document = inspectText(text, { every: false });
  test("by default only what does not hold", () => {
    expect(outcomes(document.checks)).not.toContain("holds");
    expect(document.checks).toHaveLength(document.counts.fails + document.counts.open + document.counts.waived);
  });

  test("with every check, as many as are counted", () => {
    const [whole, brief] = [inspectText(text, { turns: false }), document];
    expect(whole.counts).toEqual(brief.counts);
    expect(whole.checks).toHaveLength(whole.counts.checks);
    expect(outcomes(whole.checks)).toContain("holds");
  });

  test("the totals are the sums of the documents", () => {
    const { documents, totals } = brief;
    for (const key of ["checks", "holds", "fails", "open", "waived"] as const)
      expect(totals[key]).toBe(documents.reduce((sum, { counts }) => sum + counts[key], 0));
    expect(totals.ready + totals.draft + totals["not-ready"]).toBe(totals.documents);
    expect(totals.draft).toBe(documents.filter(({ status }) => status === "draft").length);
    for (const { counts } of notEmpty(documents))
      expect(counts.holds + counts.fails + counts.open + counts.waived).toBe(counts.checks);
  });
});

describe("a waiver", () => {
  /** Six panels of 140 VA and this are 18.67 A; 120 V × 20 A × 75 % = 1800 VA, 15 A, is the house's limit. */
  const OVERLOADED = changed("other-load: none", "other-load: 1400 VA");
  const waived = (fields: string): string =>
    changed("practice: us", `practice: us\nwaivers: [{${fields}}]`, OVERLOADED);
  const judged = (text: string): InspectionRecord["documents"][number] =>
    inspectText(text, { rules: ["power.circuit-load"], turns: false });
  const load = (text: string): CheckEntry | undefined =>
    judged(text).checks.find(({ rule }) => rule === "power.circuit-load");
  /** What the circuit carries is more than its breaker may, and less than this. */
  const SIGNED =
    "because: the season ends in May, by: M. Finch, accepts: 19 A, licensed: {by: N. Amser, licence: EL 4821, on: 2026-11-02, file: letters/tests.pdf}";

  test("is needed: without it the check fails", () => expect(load(OVERLOADED)?.outcome).toBe("fails"));

  test("that is in force waives, and says who and why", () => {
    const text = waived(`rule: power.circuit-load, ${SIGNED}, until: 2027-06-30`);
    const record = inspectTexts([text]);
    const [document] = record.documents;
    expect(document?.checks.find(({ rule }) => rule === "power.circuit-load")).toMatchObject({
      outcome: "waived",
      waiver: { because: "the season ends in May", by: "M. Finch", until: "2027-06-30", accepts: "19 A" },
    });
    expect([document?.verdict, document?.counts.waived]).toEqual(["ready", 1]);
    described(record);
  });

  test.each([
    ["to the last day on site it is in force", "2027-03-08", "waived"],
    ["for less it is not", "2027-03-07", "fails"],
    ["on the day before the inspection it is not", "2026-11-24", "fails"],
    ["long after it is not", "2019-01-01", "fails"],
  ])("%s", (_, until, outcome) =>
    expect(load(waived(`rule: power.circuit-load, ${SIGNED}, until: ${until}`))?.outcome).toBe(outcome),
  );

  test.each([
    ["of another rule", `rule: power.voltage-drop, ${SIGNED}, until: 2027-06-30`],
    ["of another place", `rule: power.circuit-load, where: power.circuits.c2, ${SIGNED}, until: 2027-06-30`],
    [
      "of a place whose name only begins alike",
      `rule: power.circuit-load, where: power.circuits.c, ${SIGNED}, until: 2027-06-30`,
    ],
    ["without a reason", "rule: power.circuit-load, by: M. Finch, until: 2027-06-30"],
    ["without a person", "rule: power.circuit-load, because: so, until: 2027-06-30"],
    ["without a last day", `rule: power.circuit-load, ${SIGNED}`],
    ["whose last day is no date", `rule: power.circuit-load, ${SIGNED}, until: whenever`],
  ])("%s waives nothing", (_, fields) => {
    const { checks, verdict } = judged(waived(fields));
    expect(checks.find(({ rule }) => rule === "power.circuit-load")?.outcome).toBe("fails");
    expect(verdict).toBe("not ready");
  });

  test("of the place above waives what is below", () =>
    expect(load(waived(`rule: power.circuit-load, where: power.circuits, ${SIGNED}, until: 2027-06-30`))?.outcome).toBe(
      "waived",
    ));

  test("cannot hide a front matter that is wrong", () => {
    const text = changed(
      "    columns: 4",
      "    colums: 4",
      changed("practice: us", `practice: us\nwaivers: [{rule: document.front-matter, ${SIGNED}, until: 2027-06-30}]`),
    );
    expect(inspectText(text, { rules: ["document.front-matter"] }).verdict).toBe("not ready");
  });
});

describe("the verdict", () => {
  const open = changed("      breaker: 20 A\n", "");
  const judged = (text: string): InspectionRecord["documents"][number] => inspectText(text, { turns: false });
  test("open checks keep a build that is for building from being ready", () => {
    const document = judged(open);
    expect(document.checks.filter(({ level, outcome }) => level === "shall" && outcome === "fails")).toEqual([]);
    expect(document.verdict).toBe("not ready");
    expect(document.counts.open).toBeGreaterThan(0);
  });

  test("as-built, too", () =>
    expect(judged(changed("status: for-build", "status: as-built", open)).verdict).toBe("not ready"));

  test("in a draft they do not count", () => {
    const document = judged(changed("status: for-build", "status: draft", open));
    expect(document.counts.open).toBeGreaterThan(0);
    expect(document.verdict).toBe("draft");
  });

  test("what fails counts in a draft as well", () =>
    expect(
      judged(changed("breaker: 20 A", "breaker: 1 A", changed("status: for-build", "status: draft"))).verdict,
    ).toBe("not ready"));

  test("a status that is no status is not taken for a draft", () =>
    expect(judged(changed("status: for-build", "status: Draft", open)).verdict).toBe("not ready"));
});

// NEC 210.20(A): 80 % of 20 A for what burns for hours, 1,920 VA at 120 V; 3,000 VA are over it.
test("a circuit of other load alone is mended by moving that, not panels it has not", () => {
  const text = changed("  runs:\n", "    c2: {supply: 120 V, breaker: 20 A, other-load: 3000 VA}\n  runs:\n");
  const found = inspectText(text, { rules: ["power.circuit-load"] }).checks.filter(
    ({ rule, at }) => rule === "power.circuit-load" && /c2$/u.test(at.path),
  );
  expect(found.map(({ outcome, mend }) => [outcome, mend])).toEqual([
    ["fails", "Move some of the other load to another circuit."],
  ]);
});
