import { describe, expect, test } from "vitest";
import { changed, SMALL } from "../documents/repository.js";
import { checksOf, refusal } from "./inspected.js";

const PEOPLE = "people:\n  R. Tallow: [prepare]\n  M. Finch: [approve, waive]";

const outcomes = (root: string, text: string, folders: Readonly<Record<string, string>> = {}, file = "builds/a.md") =>
  checksOf("document.sign-off", { root, folders, documents: { [file]: text } }).map(
    ({ at, outcome }) => `${at.path} ${outcome}`,
  );

describe("people of the house standard", () => {
  test("decide who may prepare and approve", () => {
    expect(outcomes(PEOPLE, SMALL).every((each) => each.endsWith("holds"))).toBe(true);
    expect(outcomes(PEOPLE, changed("prepared-by: R. Tallow", "prepared-by: J. Ardle"))).toContain("prepared-by fails");
    const turned = changed("by: R. Tallow", "by: Finch, M.").replace("by: M. Finch", "by: R. Tallow");
    expect(outcomes(PEOPLE, turned).filter((each) => each.endsWith("fails"))).toHaveLength(2);
  });

  test("of a folder are some of those above, and nobody else", () => {
    const quay = { quay: "people: {R. Tallow: [prepare, approve], J. Ardle: [prepare], M. Finch: []}" };
    const file = "quay/a.md";
    expect(outcomes(PEOPLE, SMALL, quay, file)).toContain("approved.by fails");
    expect(outcomes(PEOPLE, changed("by: R. Tallow", "by: J. Ardle"), quay, file)).toContain("prepared-by fails");
    expect(outcomes(PEOPLE, SMALL, quay)).not.toContain("approved.by fails");
    // Where nobody is listed above, the folder's list is the list.
    expect(outcomes("", SMALL, quay, file)).toContain("approved.by fails");
  });

  test.each([
    ["a placeholder", 'people:\n  "TBD": [approve]', /:3:3: `people` lists `TBD`, which names nobody\./u],
    ["a role", "people:\n  the engineer: [waive]", /lists `the engineer`, which names nobody/u],
    [
      "one person twice",
      "people:\n  R. Tallow: [prepare]\n  Tallow, R.: [approve]",
      /who is `R. Tallow` in another spelling/u,
    ],
    ["what nobody can do", "people:\n  R. Tallow: [sign]", /`sign`.*`prepare`, `approve` or `waive`/u],
  ])("are refused with %s", (_, root, said) => expect(refusal({ root })).toMatch(said));
});
