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
    const stock = record.documents[0]?.checks.filter(({ rule }) => rule === "panels.stock") ?? [];
    expect(stock.map(({ says }) => says).join(" ")).not.toMatch(/Infinity|NaN/u);
    expect(stock.every(({ outcome }) => outcome === "open")).toBe(rows !== "0");
  },
);
