import { mendRepository, openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { starter, TODAY } from "../documents/repository.js";
import { otherDocuments } from "../documents/single-mistakes.js";

const BANNER = "builds/over-stage-banner.md";

/** What `mend` changes in the starter's banner with these words in place of others. */
function mended(...changes: readonly (readonly [from: string, to: string])[]): readonly string[] {
  const files = starter();
  const documents = files.documents
    .filter(({ path }) => path === BANNER)
    .map(({ path, text }) => ({
      path,
      text: changes.reduce((made, [from, to]) => {
        if (!made.includes(from)) throw new Error(`${path} has no ${from}`);
        return made.replace(from, to);
      }, text),
    }));
  const repository = openRepository({ ...files, documents, others: otherDocuments() }, rules, {
    today: TODAY,
    turns: false,
  });
  return mendRepository(repository, () => true).files.flatMap(({ made }) =>
    made.map(({ was, becomes }) => `${was} -> ${becomes}`),
  );
}

describe("a change that would leave another mistake in its line is no answer", () => {
  test("a key whose value then cannot be read", () => {
    expect(mended(["    trim: 11 ft", "    trimm: blue"])).toEqual([]);
  });
  test("a key that stands beside it already", () => {
    expect(mended(["    trim: 11 ft", "    trim: 11 ft\n    trimm: 12 ft"])).toEqual([]);
  });
  test("a key with two that are as near", () => {
    expect(mended(["      from: stage-4", "      fro: stage-4"])).toEqual(["fro -> from"]);
    expect(
      mended(["lifting: {people: 2, from: 30 in, to: 55 in", "lifting: {people: 2, fro: 30 in, to: 55 in"]),
    ).toEqual([]);
  });
  test("a key of the same letters is meant, whatever else is near", () => {
    expect(mended(["      outlet: nema-5-20", "      OUTLET: nema-5-20"])).toEqual(["OUTLET -> outlet"]);
  });
  test("a tab in front of what belongs somewhere else", () => {
    expect(mended(["    rows: 1", "    rows: 1\n\tanother-face: {panel: tile-500-p3.1}"])).toEqual([]);
  });
});

describe("one slip hides another", () => {
  test("in one line, both are put right", () => {
    expect(mended(["    trim: 11 ft", "    trimm: 3,3528 m"])).toEqual(["trimm -> trim", "3,3528 m -> 3.3528 m"]);
  });
  test("in one file, too: every tab is a slip of its own", () => {
    expect(mended(["    rows: 1\n    support: flown", "\trows: 1\n\tsupport: flown"])).toEqual([
      "\t ->     ",
      "\t ->     ",
    ]);
  });
});

describe("what follows from the face and from what is in stock", () => {
  test("the number of attachments is that of the columns", () => {
    expect(mended(["hung-by: hanging-bar-500", "hung-by: {part: hanging-bar-500, count: 5}"])).toEqual(["5 -> 6"]);
  });
  test("the attachments of its columns under extras are those counted already", () => {
    const twice = (count: number, more = ""): string =>
      `hung-by: hanging-bar-500\n    extras: {${more}hanging-bar-500: ${count}}`;
    const figures = (made: readonly string[]): readonly string[] =>
      made.filter((each) => !/\d -> \d|lb|kg/u.test(each));
    expect(figures(mended(["hung-by: hanging-bar-500", twice(6)]))).toEqual(["hanging-bar-500: 6 -> "]);
    expect(figures(mended(["hung-by: hanging-bar-500", twice(6, "shackle-3-8: 2, ")]))).toEqual([
      ", hanging-bar-500: 6 -> ",
    ]);
  });
  test("another number of them is left to a person", () => {
    const made = mended(["hung-by: hanging-bar-500", "hung-by: hanging-bar-500\n    extras: {hanging-bar-500: 2}"]);
    expect(made.filter((each) => each.includes("hanging-bar"))).toEqual([]);
  });
  test("a jumper is the shortest in stock that reaches", () => {
    expect(
      mended(["jumper: {part: power-jumper, length: 0.9 m}", "jumper: {part: power-jumper, length: 0.3 m}"]),
    ).toEqual(["0.3 m -> 0.9 m"]);
  });
  test("a rating, a letter and a day are never changed", () => {
    // What is quoted of it is: 10 A × 75 % = 7.5 A.
    expect(mended(["breaker: 20 A", "breaker: 10 A"])).toEqual(["15 A -> 8 A"]);
    expect(mended(["structure: 1000 lb", "structure: 100 lb"])).toEqual([]);
    expect(mended(["H1: {structure: 500 lb, catch: 900 lb}", "H1: {structure: 5 lb, catch: 900,5 lb}"])).toEqual([]);
    expect(mended(["2027-03-05 to 2027-03-08", "2027-03-08 to 2027-03-05"])).toEqual([]);
  });
});
