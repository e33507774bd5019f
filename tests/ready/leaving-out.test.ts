import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { effort } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { apartFromCode, frontOf, general, opened, pointersIn, without } from "./deletions.js";
import { REFUSED, withMistake } from "./refused.js";

/** Places without which a build may be ready all the same, each with the reason. */
const LEFT_OUT = parse(readFileSync(new URL("left-out.yaml", import.meta.url), "utf8")) as Readonly<
  Record<string, string>
>;

/** So many of the places in a document are tried in an ordinary run; a deep one tries all, and many pairs. */
const SOME = effort.deep ? Number.POSITIVE_INFINITY : 1;
const PAIRS = effort.deep ? 200 : 1;
/** And so many of the copies: every one is refused, and of a quarter of them something is left out, others in each run. */
const isTried = (index: number): boolean => effort.deep || (index + effort.seed) % 4 === 0;

const covers = (bears: readonly string[], pointer: string): boolean =>
  bears.some((each) => pointer === each || each.startsWith(`${pointer}/`) || pointer.startsWith(`${each}/`));

describe("leaving something out never makes what is refused ready", () => {
  test.each(notEmpty(REFUSED.map((each, index) => ({ ...each, index }))))("$mistake", (refused) => {
    const { repository, document } = withMistake(refused);
    const { entry } = repository.one(document);
    expect(apartFromCode(entry)).toBe("not ready");
    const against = entry.checks.filter(({ level, outcome }) => level === "shall" && outcome !== "holds");
    if (refused.rule !== "") expect(against.map(({ rule }) => rule)).toContain(refused.rule);
    const places = [...pointersIn(frontOf(repository, document))].filter((each) => !covers(refused.bears ?? [], each));
    // Where the front matter cannot be read, there is nothing in it to leave out.
    if (!isTried(refused.index)) return;
    const tried = some(places, SOME, effort.seed + refused.index);
    const ready = tried.filter((each) => ["ready"].includes(String(without(repository, document, [each]))));
    expect(ready).toEqual([]);
    const pairs = Array.from({ length: places.length < 2 ? 0 : PAIRS }, (_, pair) =>
      some(places, 2, effort.seed + 1000 * pair + refused.index),
    );
    expect(pairs.filter((pair) => without(repository, document, pair) === "ready")).toEqual([]);
  });

  test("there are thirty such copies at least", () => expect(REFUSED.length).toBeGreaterThanOrEqual(30));
});

describe("what may be left out of a ready build is listed with its reason", () => {
  const repository = opened();
  const ready = repository.documents.filter((path) => repository.one(path).entry.verdict === "ready");

  test.each(notEmpty(ready.map((path, index) => ({ path, index }))))("of $path", ({ path, index }) => {
    const places = [...pointersIn(frontOf(repository, path))];
    expect(places.length).toBeGreaterThan(50);
    const unlisted = some(places, effort.deep ? SOME : 2, effort.seed + index)
      .filter((each) => LEFT_OUT[general(each)] === undefined)
      .filter((each) => without(repository, path, [each]) === "ready");
    expect(unlisted).toEqual([]);
  });

  test("every reason says something", () => {
    for (const reason of notEmpty(Object.values(LEFT_OUT))) expect(reason.length).toBeGreaterThan(10);
  });
});
