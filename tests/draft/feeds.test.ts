import { readSurveys } from "@plumbmark/core";
import { readWish } from "@plumbmark/draft";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { laidOut, laidOutFirst, opened, PATH, starterFiles } from "./drafting.js";

/** A hall in iec practice, its facts in the wish: what its circuit's outlet is, and where another is. */
const wish = (outlet: string, other = ""): string => `wish: carols
title: Carols
practice: iec
venue:
  on-stage: true
  places:
    side: {right: 5 m, upstage: 1 m, up: 0 m}
    desk: {right: 0 m, upstage: -40 m, up: 0 m}
  routes: {side to purlin: {length: 7 m}}
  circuits:
    c-1: {at: side, supply: 230 V, breaker: 16 A${outlet}, outlets: 6, control: constant, other-load: none}${other}
  structure:
    purlin:
      from: {right: -4 m, upstage: 1 m, up: 6 m}
      to: {right: 4 m, upstage: 1 m, up: 6 m}
      flange: 150 mm
      girth: 0.9 m
      points: {P1: {at: 2.5 m}, P2: {at: 4 m}, P3: {at: 5.5 m}}
size: {width: at most 3 m, height: at most 0.5 m}
support: flown
over: {middle: {right: 0 m, upstage: 1 m}, under: purlin, trim: at least 3 m}
out-of: catalogue
feed-from: {data: side, picture: side}
`;

const INDUSTRIAL = ", outlet: iec-60309-16-3";
const saysOf = (text: string): string =>
  laidOut(text)
    .fellOut.map(({ says }) => says)
    .join("; ");

describe("what feeds a face", () => {
  test("jumpers are cords for heavy duty where the practice asks for them (EN 50525-2-21), however they are listed", () => {
    const [option] = laidOutFirst(wish(INDUSTRIAL)).options;
    // SOOW is a type of UL 62, and stands first in the catalogue; H07RN-F is the one of EN 50525-2-21.
    expect(option?.document).toContain("jumper: {part: power-jumper-2.5, length: 0.9 m}");
  });

  test("which ends a cable would have to have is told where there is none", () => {
    expect(saysOf(wish(", outlet: bs-1363"))).toContain(
      "The catalogue has no cable from the outlets of c-1 (bs-1363) to tile-500-p3.1 (ac-locking-16).",
    );
  });

  test("an outlet nobody wrote down is told as such, and not as a cable that is missing", () => {
    const told = saysOf(wish(", curve: C"));
    expect(told).toContain("What outlet c-1 has is not written down, so no feed can be chosen.");
    expect(told).not.toContain("has no cable");
  });

  test("of one circuit alone nobody says that two have no room", () => {
    expect(saysOf(wish(INDUSTRIAL))).toContain("c-1 is the only circuit it may be fed from.");
  });

  test("a circuit no feed reaches the face from is told where two are asked for", () => {
    const far =
      "\n    c-2: {at: desk, supply: 230 V, breaker: 16 A, outlet: iec-60309-16-3, outlets: 6, control: constant, other-load: none}";
    expect(saysOf(wish(INDUSTRIAL, far))).toContain("From c-2 no feed of the catalogue fits and reaches the face.");
  });
});

test("a wish is judged by its own practice from the first step on, whatever the house standard's is", () => {
  const files = starterFiles();
  const text = "house-standard: T\npractice: us\n";
  const { options } = laidOutFirst(wish(INDUSTRIAL), {
    files: { ...files, houseStandard: { path: "house-standard.yaml", text } },
  });
  // IEC 60364-4-43, 433.1: a circuit carries what its breaker is rated for; NFPA 70, 210.20(A): 80 % of it for hours.
  expect(options[0]?.document).toContain("of [16 A](calc:power.circuits.c-1.continuous-rating)");
  const repository = opened({ ...files, houseStandard: { path: "house-standard.yaml", text } });
  for (const { document } of notEmpty(options)) {
    repository.replace(PATH, document, "document");
    const { checks } = repository.one(PATH).entry;
    expect(checks.filter(({ outcome, level }) => outcome === "fails" && level === "shall")).toEqual([]);
  }
});

test("a wish of another practice than its hall is told, and not drafted from", () => {
  const survey = readSurveys([
    { path: "venues/hall.md", text: "---\nsurvey: hall\ntitle: Hall\npractice: iec\n---\n\n# Hall\n" },
  ]).byName;
  const read = (practice: string) =>
    readWish({ path: "wishes/w.yaml", text: `wish: w\ntitle: W\n${practice}venue: hall\n` }, survey);
  const [mistake, ...others] = read("practice: us\n").mistakes;
  expect(others).toEqual([]);
  expect(mistake).toMatchObject({ path: "practice", place: { line: 3 } });
  expect(mistake?.says).toBe("`practice` is `us`, and the survey hall (venues/hall.md) says `iec`.");
  expect(read("practice: us\n").wish).toBeUndefined();
  expect(read("practice: iec\n").mistakes).toEqual([]);
  expect(read("").wish?.practice).toBeUndefined();
});
