import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { starter } from "../../../../tests/documents/repository.js";
import { json } from "./form.js";
import { recordPieces, together } from "./pieces.js";
import { sarifPieces } from "./sarif.js";

test("a record printed in pieces is what it is in one", () => {
  const record = openRepository(starter(), rules, { today: "2027-01-01" }).all();
  const [first] = record.documents;
  for (const documents of [[], first ? [first] : [], record.documents]) {
    // A name may look like what is written around it.
    const one = { ...record, standard: 'A\n  "documents": []', documents };
    expect([...recordPieces(one)].join("")).toBe(json(one));
  }
});

test("a SARIF log printed in pieces is JSON with every result, laid out as all JSON is", () => {
  const record = openRepository(starter(), rules, { today: "2027-01-01" }).all();
  const checks = record.documents.flatMap((document) => document.checks);
  expect(checks.length).toBeGreaterThan(10);
  for (const documents of [[], record.documents]) {
    const printed = [...sarifPieces({ record: { ...record, documents }, rules, version: "1.0.0", prefix: "" })].join(
      "",
    );
    const log = JSON.parse(printed);
    expect(printed).toBe(json(log));
    expect(log.runs[0].results.length).toBe(documents.length > 0 ? checks.length : 0);
  }
});

test("pieces are put together until they are worth printing, and none is lost", () => {
  const pieces = Array.from({ length: 30 }, (_, index) => String(index % 10).repeat(100_000));
  const printed = [...together(pieces)];
  expect(printed.join("") === pieces.join("")).toBe(true);
  expect(printed.map(({ length }) => length)).toEqual([...Array(6).fill(500_000), 0]);
});
