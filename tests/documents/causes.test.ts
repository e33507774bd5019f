import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, inject, test } from "vitest";
import { textReport } from "../../packages/cli/src/report/text.js";
import { notEmpty } from "../run/not-empty.js";
import { some, someOfEach } from "../run/some.js";
import { OTHER_MISTAKES, withSurveys } from "./other-mistakes.js";
import { TODAY } from "./repository.js";
import { SINGLE_MISTAKES, type SingleMistake, withMistake } from "./single-mistakes.js";
import { TYPED_MISTAKES } from "./typed-mistakes.js";

/** A terminal as it opens on most machines: 80 columns, 24 lines, of which the prompt takes one before and one behind. */
const [WIDTH, LINES] = [80, 22];

const ALL = [...SINGLE_MISTAKES, ...OTHER_MISTAKES, ...TYPED_MISTAKES];

/** The kinds of slips: of a pen, of a word processor, of typing from papers; each in documents, parts, stock or surveys. */
const kindOf = (mistake: SingleMistake): string =>
  `${[SINGLE_MISTAKES, OTHER_MISTAKES, TYPED_MISTAKES].findIndex((list) => list.includes(mistake))} ${mistake.file?.replace(/\/.*/u, "")}`;

/** All in a deep run; else one of each kind, others in each run. */
const { deep, seed } = inject("effort");
const TRIED = deep ? ALL : someOfEach(ALL, kindOf, 1, seed);

const reports = new Map<SingleMistake, ReturnType<typeof report>>();

/** The report of a mistake, made once for all tests that look at it. */
function reported(mistake: SingleMistake): ReturnType<typeof report> {
  const made = reports.get(mistake) ?? report(mistake);
  reports.set(mistake, made);
  return made;
}

function report(mistake: SingleMistake) {
  const { files, file, line } = withMistake(mistake, SINGLE_MISTAKES.includes(mistake) ? undefined : withSurveys());
  const text = textReport(openRepository(files, rules, { today: TODAY }).all(), { width: WIDTH, colour: 0 });
  const lines = text.trimEnd().split("\n");
  const head = lines.findIndex((each) => /^ {2}(?:SHALL|SHOULD|NOTE) /u.test(each));
  const end = lines.findIndex((each, index) => index > head && each === "");
  // Lines are broken for the width; what is told is not.
  const words = lines.slice(head, end).join(" ").replace(/\s+/gu, " ");
  return { file, line, lines, first: lines[0] ?? "", words };
}

/** Words of a parser, of a validator and of programmers, which tell an author nothing. */
const JARGON =
  /\b(?:mapping|scalar|implicit|flow collection|block collection|compact|sequence|token|regex|pattern|additionalProperties|anyOf|oneOf|integer|string|boolean|object|array|schema|undefined|null|NaN)\b/iu;

describe("of sixty and more single mistakes", () => {
  test("there are that many, each of its own kind", () => {
    expect(SINGLE_MISTAKES.length).toBeGreaterThanOrEqual(60);
    expect(new Set(ALL.map(({ slip }) => slip)).size).toBe(ALL.length);
  });

  test.each(notEmpty(TRIED.map((mistake) => [mistake.slip, mistake] as const)))(
    "%s: the cause comes first, with its place, what was found and what to write",
    (_, mistake) => {
      const { file, line, lines, first, words } = reported(mistake);
      expect(first).toContain(file);
      expect(words).toMatch(/^ ?SHALL document\.(?:front-matter|parts) /u);
      expect(words).toMatch(new RegExp(` line ${line}(?: |$)`, "u"));
      expect(words).toContain(mistake.found);
      expect(words.slice(words.indexOf(" mend "))).toContain(mistake.write);
      expect(words).not.toMatch(JARGON);
      expect(lines.length).toBeLessThan(40);
    },
  );

  /** The ten that users of the product made most. */
  const TEN = [
    "misspelt key of a face",
    "comma decimal",
    "tab for blanks",
    "missing unit",
    "unit of another kind",
    "unknown panel",
    "unknown connector in a part",
    "cell out of range",
    "key that is there twice",
    "dates the wrong way round",
    "thousands separator",
    "one blank too many",
    "a range with a hyphen",
    "comma decimal inside braces",
    "comma of a place inside braces",
  ];
  test.each(notEmpty(deep ? TEN : some(TEN, 2, seed)))("%s: the whole report is seen without scrolling", (slip) => {
    const mistake = SINGLE_MISTAKES.find((each) => each.slip === slip) as SingleMistake;
    expect(reported(mistake).lines.length).toBeLessThanOrEqual(LINES);
  });
});

describe("what only follows from a mistake", () => {
  const of = (slip: string) => {
    const mistake = SINGLE_MISTAKES.find((each) => each.slip === slip) as SingleMistake;
    const { files, file, line } = withMistake(mistake);
    const { documents } = openRepository(files, rules, { today: TODAY }).all();
    return { file, line, checks: documents.find((each) => each.file.endsWith(".md"))?.checks ?? [] };
  };
  test("is in the record all the same, and says which mistake it follows from", () => {
    const { line, checks } = of("unknown panel");
    const rest = checks.filter(({ rule }) => rule !== "document.parts");
    expect(rest.length).toBeGreaterThan(50);
    for (const check of rest) expect(check["follows-from"]).toEqual({ path: "faces.banner.panel", line });
  });
  test("of a mistake of a part it names the file", () => {
    const { file, line, checks } = of("comma decimal of a part");
    expect(checks.length).toBeGreaterThan(10);
    for (const check of checks) expect(check["follows-from"]).toMatchObject({ file, line });
  });
  test("what has nothing to do with the mistake does not: it stands in the report by itself", () => {
    const mistake = SINGLE_MISTAKES.find(({ slip }) => slip === "comma decimal") as SingleMistake;
    const { files } = withMistake(mistake);
    const documents = files.documents.map((each) => ({
      ...each,
      text: each.text.replace("      breaker: 20 A\n", "").replace("lot: lot-2431", "lot: lot-2507"),
    }));
    const [entry] = openRepository({ ...files, documents }, rules, { today: TODAY }).all().documents;
    const breaker = entry?.checks.filter(({ missing }) => missing?.includes("power.circuits.stage-4.breaker")) ?? [];
    expect(breaker.length).toBeGreaterThan(0);
    for (const check of breaker) expect(check["follows-from"]).toBeUndefined();
    const text = textReport(openRepository({ ...files, documents }, rules, { today: TODAY }).all(), {
      width: WIDTH,
      colour: 0,
    });
    expect(text).toContain("1 thing is not written down; 6 checks wait for it.");
    expect(text).toContain("`power.circuits.stage-4.breaker`: breaker rating");
  });
});
