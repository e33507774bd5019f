import { expect, test } from "vitest";
import { inspectTexts, starter } from "../documents/repository.js";

const banner = starter().documents.find(({ path }) => path.endsWith("over-stage-banner.md"))?.text ?? "";

/** Anything a number is written as in a record has to be one (RFC 8259, section 6: no infinity, no NaN). */
const numbersOf = (data: unknown): readonly number[] =>
  typeof data === "number"
    ? [data]
    : typeof data === "object" && data !== null
      ? Object.values(data).flatMap(numbersOf)
      : [];

test.each(["1e+308", "-1", "0", "2.5", ".nan", ".inf", "9007199254740993"])(
  "a face of %s rows is told, and no figure is made of it",
  (rows) => {
    const text = banner.replace("    rows: 1\n", `    rows: ${rows}\n`);
    expect(text).not.toBe(banner);
    const record = inspectTexts([text]);
    expect(numbersOf(record).every(Number.isFinite)).toBe(true);
    expect(record.documents[0]?.verdict).toBe("not ready");
    const stock =
      record.documents[0]?.checks.filter(
        ({ rule, at }) => rule === "stock.promised-twice" && at.path.endsWith(".lot"),
      ) ?? [];
    expect(stock.map(({ says }) => says).join(" ")).not.toMatch(/Infinity|NaN/u);
    expect(stock.length).toBeGreaterThan(0);
    expect(stock.every(({ outcome }) => outcome === "open")).toBe(rows !== "0");
  },
);

test.each(["1e+308", "21", "0", "2.5"])("%s people lifting are told, and no limit is made of them", (people) => {
  const text = banner.replace(/people: 2,/u, `people: ${people},`);
  expect(text).not.toBe(banner);
  const record = inspectTexts([text]);
  expect(numbersOf(record).every(Number.isFinite)).toBe(true);
  const told = record.documents[0]?.checks.filter(({ rule }) => rule === "document.front-matter") ?? [];
  expect(told.map(({ at }) => at.path)).toContain("rigging.lifting.people");
});

test.each(["D9", "mm2", "__proto__", "toString"])("wiring laid as %s is told, and its current is open", (method) => {
  const text = banner.replace("conductor: 12 AWG, ", `conductor: 2.5 mm2, method: ${method}, `);
  expect(text).not.toBe(banner);
  const checks = inspectTexts([text]).documents[0]?.checks ?? [];
  const told = checks.filter(({ rule }) => rule === "document.front-matter");
  expect(told.map(({ at }) => at.path)).toContain("power.circuits.stage-4.wiring.method");
  expect(checks.filter(({ rule }) => rule === "plugin.failed")).toEqual([]);
  expect(checks).toContainEqual(expect.objectContaining({ rule: "power.cord-ampacity", outcome: "open" }));
});
