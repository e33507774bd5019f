import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { approvedAsTheyAre, starter, TODAY } from "../documents/repository.js";

// Documents that came out as ready once and should not have, and the other way round, each by its own name.

const BANNER = "builds/over-stage-banner.md";
const HANG = /^ {8}H\d: .*\n/gmu;
const hang = (name: string, at: string, more = ""): string =>
  `        ${name}: {at: ${at}, assembly: [beam-clamp, shackle-3-8, wire-rope-1-4, turnbuckle-3-8, pipe-collar]${more}}\n`;

type Edit = (text: string) => string;

const swap =
  (from: string | RegExp, to: string): Edit =>
  (text) => {
    const made = text.replace(from, to);
    if (made === text) throw new Error(`nothing to change: ${String(from)}`);
    return made;
  };

/** The banner over the stage, changed, approved as it then is; parts may be changed with it. */
function found(edit: Edit, parts: Edit = (text) => text) {
  const files = starter();
  const changed = approvedAsTheyAre({
    ...files,
    documents: files.documents
      .filter(({ path }) => path === BANNER)
      // Figures and lists of the prose are about the build as it was.
      .map((each) => ({ ...each, text: edit(each.text).replace(/\]\(calc:[^)]*\)/gu, "](#scope)") })),
    parts: files.parts.map((each) => ({
      ...each,
      text: each.path.endsWith("rigging.yaml") ? parts(each.text) : each.text,
    })),
  });
  const [document] = openRepository(changed, rules, { today: TODAY, turns: false }).all().documents;
  const checks = document?.checks.filter(({ level, outcome }) => level !== "note" && outcome !== "holds") ?? [];
  return [...new Set(checks.filter(({ rule }) => rule.startsWith("rigging.") || rule === "document.plausible"))].map(
    ({ rule, outcome }) => `${rule} ${outcome}`,
  );
}

test("the banner as it stands has nothing to say of its rigging", () => expect(found((text) => text)).toEqual([]));

test("a symmetric bar on three hangs can be told: end hangs bear it, and a second suspension catches it", () => {
  const three = hang("H1", "1 ft") + hang("H2", "5 ft 3 in") + hang("H3", "9 ft 6 in");
  const edit: Edit = (text) =>
    swap(
      /^ {6}H4: \{structure.*\n/mu,
      "",
    )(
      swap(
        "carries: {face: banner, from: 4 in}",
        "carries: {face: banner, from: 3-15/16 in}",
      )(text.replace(HANG, "").replace("      hangs:\n", `      hangs:\n${three}`)),
    );
  expect(found(edit).filter((each) => each.includes("slack-hang"))).toEqual([]);
});

describe("was ready, and is refused", () => {
  const LETTER = /^ {2}letter:\n(?: {4}.*\n)+/mu;
  const SECOND = /^ {6}second: .*\n/mu;
  const refused: readonly (readonly [string, string, Edit, Edit?])[] = [
    [
      "a hanging bar rated 6 kg",
      "rigging.attachment fails",
      (t) => t,
      swap("wll: 150 kg, breaking: 900 kg", "wll: 6 kg, breaking: 36 kg"),
    ],
    ["no hanging bar at all", "rigging.attachment open", swap(/^ {4}hung-by: .*\n/mu, "")],
    [
      "a rope whose WLL is above its breaking strength",
      "rigging.design-factor fails",
      (t) => t,
      swap("breaking: 7000 lb\n  wll: 1300 lb", "breaking: 1000 lb\n  wll: 3000 lb"),
    ],
    [
      "a second suspension of two shackles",
      "rigging.secondary fails",
      swap(SECOND, "      second: {at: each hang, assembly: [shackle-3-8, shackle-3-8], girth: 40 in, slack: none}\n"),
    ],
    [
      "a second suspension of a rope with nothing that joins its eyes",
      "rigging.secondary open",
      swap(SECOND, "      second: {at: each hang, assembly: [steel-safety-1-8], girth: 40 in, slack: none}\n"),
    ],
    [
      "a second suspension of a rope and a collar of the bar's pipe, which joins nothing",
      "rigging.secondary open",
      swap(
        SECOND,
        "      second: {at: each hang, assembly: [steel-safety-1-8, pipe-collar], girth: 40 in, slack: none}\n",
      ),
    ],
    [
      "a second suspension of a rope and a clamp of a beam, which joins nothing",
      "rigging.secondary open",
      swap(
        SECOND,
        "      second: {at: each hang, assembly: [steel-safety-1-8, beam-clamp], girth: 40 in, slack: none}\n",
      ),
    ],
    [
      "a second suspension that is a list of nothing",
      "rigging.secondary open",
      (t) => swap(SECOND, "")(swap("  over-people: true\n", '  over-people: true\n  secondary: [""]\n')(t)),
    ],
    ["a second suspension with an inch of slack", "rigging.secondary fails", swap("slack: none", "slack: 1 in")],
    ['a structure rated by "to be confirmed"', "rigging.letter open", swap("by: I. Brandt", "by: to be confirmed")],
    [
      "a structure rated by a name alone",
      "rigging.letter open",
      swap(LETTER, "  structure-by: letter of the engineer\n"),
    ],
    [
      "a rope a foot too short",
      "rigging.reach fails",
      swap("bearing-height: 17 ft 10 in", "bearing-height: 19 ft 10 in"),
    ],
    ["nobody below, without a word", "rigging.kept-clear open", swap("over-people: true", "over-people: false")],
    ["a structure of 1e300 lb", "document.plausible fails", swap("structure: 1000 lb", "structure: 1e300 lb")],
    [
      "other load that may be anywhere",
      "rigging.slack-hang fails",
      swap("      structure: 1000 lb\n", "      structure: 1000 lb\n      other-load: 400 lb\n"),
    ],
    [
      "two hangs and nothing to catch the bar",
      "rigging.lost-hang fails",
      (t) => swap(SECOND, "")(t.replace(/^ {8}H[23]: .*\n/gmu, "")),
    ],
  ];
  const rows = refused.map(([name, expected, edit, parts]) => ({ name, expected, edit, parts }));
  test.each(rows)("$name: $expected", ({ expected, edit, parts }) => expect(found(edit, parts)).toContain(expected));
});
