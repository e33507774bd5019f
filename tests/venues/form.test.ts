import { readSurvey, resolved, type SchemaNode, schemas } from "@plumbmark/core";
import { surveyFormPage } from "@plumbmark/docs-site";
import { expect, test } from "vitest";
import { venueForm } from "../../packages/cli/src/starting/forms/venue-form.js";
import { wishForm } from "../../packages/cli/src/starting/forms/wish-form.js";
import { notEmpty } from "../run/not-empty.js";

const root = schemas.surveySchema as SchemaNode;
const form = venueForm({ name: "pier-hall", title: "Pier Hall", practice: "us" });
const paper = surveyFormPage("Pier Hall", "us");

/** Titles of all that may be written in a survey, at whatever depth. */
function titles(node: SchemaNode): readonly string[] {
  const { title, properties = {}, additionalProperties: each } = resolved(node, root);
  const inner = [...Object.values(properties), ...(typeof each === "object" ? [each] : [])];
  return [...(title === undefined ? [] : [title]), ...inner.flatMap(titles)];
}

/** The first are the page itself; the others belong to a build, or are a copy. */
const NOT_ON_PAPER = new Set([
  ...[
    "name of the venue",
    "title",
    "other entry it is like",
    "places and devices the circuit serves",
    "place or device",
  ],
  ...["whether panels are switched on one run after another", "other load", "inrush current of the other load"],
  ...["who has confirmed that the relay stays closed, and on which day", "person", "day"],
]);

const asked = [...new Set(Object.values(root.properties ?? {}).flatMap(titles))];

test("the form as it is written is a survey without a mistake", () => {
  expect(readSurvey({ path: "venues/pier-hall.md", text: form })).toMatchObject({ name: "pier-hall", mistakes: [] });
});

test("every key stands in it with what it means", () => {
  for (const title of notEmpty(
    asked.filter((each) => !["other entry it is like", "name of the venue", "electrical practice"].includes(each)),
  ))
    expect(form.toLowerCase(), title).toContain(title.split(",")[0]?.toLowerCase());
});

test("keys that may stand instead of a plain value stand below it", () => {
  expect(form).toMatch(/^# {4}supply: .*\n(?:# {6}.*\n)*# {6}legs:/mu);
  expect(wishForm("summer", undefined)).toMatch(/^#shows: .*\n# {2}text: .*\n# {4}lines: .*\n# {4}characters:/mu);
});

test("examples are in the units of the practice", () => {
  const metric = venueForm({ name: "pier-hall", title: "Pier Hall", practice: "iec" });
  expect(metric).toMatch(/^# {4}right: .*such as 10 m;/mu);
  expect(metric).toMatch(/^# {6}conductor: .*such as 10 mm2;/mu);
  expect(metric).not.toMatch(/such as 10 (?:ft|AWG|lb)/u);
  expect(form).toMatch(/^# {4}right: .*such as 10 ft;/mu);
  expect(wishForm("summer", undefined, "iec")).toMatch(/^size: \{width: at most 3 m, /mu);
  expect(wishForm("summer", undefined, "us")).toMatch(/^size: \{width: at most 10 ft, /mu);
});

test.each([
  ["surveyed", "surveyed:\n  on: 2026-10-02\n  by: R. Tallow\n"],
  ["places", "places:\n  rack-a:\n    right: -18 ft\n    upstage: 2 ft\n    up: 0 ft\n"],
])("with the mark in front taken away %s stands where it belongs", (key, written) => {
  const filled = form
    .split("\n")
    .flatMap((line) => (line.startsWith(`#${key}:`) ? written.trimEnd().split("\n") : [line]));
  const survey = readSurvey({ path: "venues/pier-hall.md", text: filled.join("\n") });
  expect(survey?.mistakes).toEqual([]);
  expect(survey?.placed.data).toHaveProperty(key);
});

test("the page to print asks for every key, has a box for each, and loads nothing", () => {
  const text = paper.replaceAll("&#x27;", "'").toLowerCase();
  for (const title of notEmpty(asked.filter((each) => !NOT_ON_PAPER.has(each))))
    expect(text, title).toContain(title.toLowerCase());
  expect(paper.match(/class="box"/gu)?.length ?? 0).toBeGreaterThan(100);
  expect(paper).not.toMatch(/<(?:script|link|img)|url\(|https?:/u);
});
