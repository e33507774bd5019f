import { describe, expect, test } from "vitest";
import { changed, SMALL } from "../documents/repository.js";
import { checksOf, inspected, refusal } from "./inspected.js";

const documents = {
  "builds/a.md": SMALL,
  "quay/builds/b.md": changed("build: small-header", "build: quay-header"),
  "quay/season/builds/c.md": changed("build: small-header", "build: season-header"),
};

describe("a house standard deeper in the tree", () => {
  const folders = {
    quay: "requirements: {power.circuit-load: {share: 60 %}, data.loop: {level: shall}}\nsections: [Weather]",
  };

  test("adds to the one above for what lies below it, and for nothing else", () => {
    const root = "requirements: {power.circuit-load: {share: 75 %}}";
    const allowed = (file: string) =>
      checksOf("power.circuit-load", { root, folders, documents }, file)[0]?.allowed?.value;
    // 20 A × 75 % = 15 A; × 60 % = 12 A.
    expect([allowed("builds/a.md"), allowed("quay/builds/b.md"), allowed("quay/season/builds/c.md")]).toEqual([
      15, 12, 12,
    ]);
  });

  test("adds sections to those above", () => {
    const missing = (file: string) =>
      checksOf("document.sections", { root: "sections: [Scope]", folders, documents }, file)
        .filter(({ outcome }) => outcome !== "holds")
        .map(({ says }) => says)
        .join();
    expect(missing("builds/a.md")).toBe("");
    expect(missing("quay/builds/b.md")).toContain("Weather");
  });

  test("brings rules without code of its own", () => {
    const own =
      "own-rules:\n  quay.rain:\n    states: Quay.\n    each: faces\n    require: {properties: {spares: {minimum: 9}}}";
    const all = inspected({ folders: { quay: own }, documents }).documents;
    const asked = all.filter(({ checks }) => checks.some(({ rule }) => rule === "quay.rain")).map(({ file }) => file);
    expect(asked).toEqual(["quay/builds/b.md", "quay/season/builds/c.md"]);
  });
});

describe("loosening", () => {
  const root = "rules:\n  power.circuit-load: {share: 75 %}\n  panels.spares: {level: shall}";
  const quay = (text: string): string => refusal({ root, folders: { quay: text }, documents });

  test.each([
    ["a smaller share", "requirements: {power.circuit-load: {share: 70 %}}"],
    ["the same", "requirements: {power.circuit-load: {share: 75 %}, panels.spares: {level: shall}}"],
    ["a higher level", "requirements: {power.heat: {level: shall}}"],
    ["more for one way of holding", "requirements: {power.circuit-load: {flown: {share: 50 %}}}"],
  ])("is not %s", (_, text) => expect(quay(text)).toBe(""));

  test.each([
    [
      "a larger share",
      "requirements: {power.circuit-load: {share: 80 %}}",
      /^quay\/house-standard\.yaml:2:37: .*80 %.*looser than 75 % \(house-standard\.yaml, line 3\).*allows: \[power\.circuit-load\]/u,
    ],
    ["a lower level", "requirements: {panels.spares: {level: should}}", /should here, which is looser than shall/u],
    ["a lower level by topic", "topics: {panels: {level: should}}", /^quay\/house-standard\.yaml:2:19: panels\.batch/u],
    [
      "less than the default",
      "requirements: {rigging.design-factor: {over-people: 7}}",
      /looser than 8 \(practice us\)/u,
    ],
    ["less for one way of holding", "requirements: {panels.spares: {stacked: {level: note}}}", /panels\.spares.*note/u],
  ])("is %s", (_, text, says) => expect(quay(text)).toMatch(says));

  test("is allowed by rule and by topic, by the one above", () => {
    const looser = "requirements: {power.circuit-load: {share: 80 %}}";
    for (const allows of ["power.circuit-load", "power"])
      expect(refusal({ root: `${root}\nallows: [${allows}]`, folders: { quay: looser }, documents })).toBe("");
    expect(refusal({ root: `${root}\nallows: [panels]`, folders: { quay: looser }, documents })).not.toBe("");
  });

  test("is refused where only one of those above allows it", () => {
    const given = (above: string, between: string) =>
      refusal({
        root: `${root}\nallows: [${above}]`,
        folders: {
          quay: `requirements: {power.circuit-load: {share: 60 %}}\nallows: [${between}]`,
          "quay/season": "requirements: {power.circuit-load: {share: 80 %}}",
        },
        documents,
      });
    expect(given("power", "power")).toBe("");
    expect(given("power", "data")).toMatch(/quay\/season.*looser than 60 %/u);
    expect(given("data", "power")).toMatch(/quay\/season.*looser than 75 %/u);
  });

  test.each(["rules-from: [./a.mjs]", "parts: [p.yaml]", "stock: s.yaml", "documents: [a.md]"])(
    "%s belongs in the root's",
    (text) => expect(quay(text)).toMatch(/^quay\/house-standard\.yaml:2:1: .*house standard of the root/u),
  );
});
