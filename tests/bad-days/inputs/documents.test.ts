import type { InspectionRecord } from "@plumbmark/core";
import { expect, test } from "vitest";
import { plumbmark } from "../../plumbmark.js";
import { notEmpty } from "../../run/not-empty.js";
import { DATA, ENCODINGS, INHERITED } from "./faults.js";
import { small } from "./small.js";

// The same faults in a build document, whose data is its front matter; and what may not keep it from being one.

const HEAD = "---\nbuild: a\ntitle: A\nstatus: draft\n";
const GOOD = `${HEAD}---\n\n# A\n`;

async function inspected(content: Uint8Array | string) {
  const folder = small({ "builds/a.md": content });
  const { status, out, err } = await plumbmark(folder, ["inspect", "--as", "json", "--no-cache"]);
  expect(err).toBe("");
  const [document] = (JSON.parse(out) as InspectionRecord).documents;
  const checks = document?.checks.filter(
    ({ rule, outcome }) => rule === "document.front-matter" && outcome === "fails",
  );
  expect(status).toBe(document?.verdict === "draft" ? 0 : 1);
  return { build: document?.build, verdict: document?.verdict, checks: checks ?? [] };
}

const sayings = (checks: readonly { says: string; mend?: string }[]) =>
  checks.map(({ says, mend }) => `${says} ${mend}`).join("\n");

test.each(ENCODINGS)("$name", async ({ of, fine, at }) => {
  const { build, checks, verdict } = await inspected(of(GOOD));
  expect(verdict).toBe(fine ? "draft" : "not ready");
  if (fine) expect([build, checks]).toEqual(["a", []]);
  else expect(sayings(checks)).toMatch(/UTF-16.*Save it as UTF-8|not text|UTF-8.*Save it|is empty/su);
  if (at) expect(checks.map(({ at: { line, column } }) => [line, column])).toContainEqual(at(GOOD));
});

const WRITTEN = DATA.filter(({ says, yaml }) => says && !/^(?:---|%|\{)/mu.test(yaml));

test.each(notEmpty(WRITTEN))("$name in the front matter", async ({ yaml, says, at }) => {
  const { checks, verdict } = await inspected(`${HEAD}${yaml}---\n\n# A\n`);
  expect(verdict).toBe("not ready");
  expect(sayings(checks)).toMatch(says as RegExp);
  const lines = HEAD.split("\n").length - 1;
  if (at) expect(checks.map((each) => [each.at.line, each.at.column])).toContainEqual([at[0] + lines, at[1]]);
});

test.each(INHERITED.flatMap((key) => [`${key}: {a: 1}\n`, `faces: {${key}: {a: 1}}\n`, `power: {${key}: {a: 1}}\n`]))(
  "%j gives no object anything",
  async (yaml) => {
    const { checks, verdict } = await inspected(`${HEAD}${yaml}---\n\n# A\n`);
    expect(verdict).toBe("not ready");
    expect(checks[0]?.at.line).toBe(5);
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as { a?: unknown }).a).toBeUndefined();
  },
);

test.each([
  ["blanks behind the fence", "--- \nbuild: a\ntitle: A\nstatus: draft\n---\n\n# A\n"],
  ["its key in quotes", '---\n"build": a\ntitle: A\nstatus: draft\n---\n\n# A\n'],
  ["its key in single quotes", "---\n'build': a\ntitle: A\nstatus: draft\n---\n\n# A\n"],
  ["JSON for a front matter", '---\n{"build": "a", "title": "A", "status": "draft"}\n---\n\n# A\n'],
  ["a fence with blanks and CR alone", "--- \t\rbuild: a\rtitle: A\rstatus: draft\r---\r\r# A\r"],
])("a document with %s is not left alone", async (_, text) => {
  const { build, checks } = await inspected(text);
  expect([build, checks]).toEqual(["a", []]);
});
