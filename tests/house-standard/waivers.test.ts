import { type CheckEntry, type DocumentEntry, schemas, type WaiverEntry } from "@plumbmark/core";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { changed, PAPER, SMALL } from "../documents/repository.js";
import { inspected } from "./inspected.js";

/** 1400 VA beside the panels on a 20 A circuit at 120 V: more than 20 A × 80 % × 120 V = 1920 VA. */
const OVERLOADED = changed("other-load: none", "other-load: 1400 VA");
/** The ratings of two hangs are not written down. */
const UNRATED = SMALL.replaceAll(", structure: 500 lb", "").replaceAll("structure: 500 lb, ", "");

const PAPER_OF = `licensed: {by: N. Amser, licence: EL 4821, on: 2026-11-02, file: ${PAPER}}`;
const SIGNED = `because: the season ends in May, by: M. Finch, ${PAPER_OF}`;

function waived(text: string, ...waivers: readonly string[]): DocumentEntry {
  const list = waivers.map((fields) => `  - {${fields}}`).join("\n");
  const document = changed("practice: us", `practice: us\nwaivers:\n${list}`, text);
  return inspected({ documents: { "builds/a.md": document } }).documents[0] as DocumentEntry;
}

const about = ({ checks }: DocumentEntry): readonly CheckEntry[] =>
  checks.filter(({ rule }) => rule === "document.waivers");
const first = (document: DocumentEntry): WaiverEntry | undefined => document.waivers?.[0];

const ONE = `rule: power.circuit-load, where: power.circuits.c1, accepts: 19 A, ${SIGNED}, until: 2027-06-30`;

test("one in force holds, and stands in the register with what it excuses", () => {
  const document = waived(OVERLOADED, ONE);
  expect(document.verdict).toBe("ready");
  expect(about(document).map(({ outcome }) => outcome)).toEqual(["holds"]);
  expect(first(document)).toEqual({
    rule: "power.circuit-load",
    where: "power.circuits.c1",
    because: "the season ends in May",
    by: "M. Finch",
    until: "2027-06-30",
    accepts: "19 A",
    state: "in force",
    at: expect.objectContaining({ path: "waivers.1", line: 9 }),
    excuses: ["power.circuits.c1"],
  });
});

describe("expired", () => {
  const old = ONE.replace("2027-06-30", "2026-06-30");
  test("it excuses nothing, and the document is not ready for two reasons", () => {
    const document = waived(OVERLOADED, old);
    expect(document.verdict).toBe("not ready");
    expect(about(document)[0]).toMatchObject({ level: "shall", outcome: "fails" });
    expect(document.checks.find(({ rule }) => rule === "power.circuit-load")?.outcome).toBe("fails");
    expect(first(document)?.state).toBe("expired");
  });

  test("with nothing left to excuse it is only in the way", () => {
    const document = waived(SMALL, old);
    expect(document.verdict).toBe("ready");
    expect(about(document)[0]).toMatchObject({ level: "should", outcome: "fails", mend: "Take it out." });
  });

  test("it counts through its last day, which is no earlier than the last on site", () => {
    expect(first(waived(OVERLOADED, ONE.replace("2027-06-30", "2027-03-08")))?.state).toBe("in force");
    expect(first(waived(OVERLOADED, ONE.replace("2027-06-30", "2027-03-07")))?.state).toBe("refused");
    expect(first(waived(OVERLOADED, ONE.replace("2027-06-30", "2026-11-24")))?.state).toBe("expired");
  });
});

describe("unused", () => {
  test("is recommended against, since it would excuse the next fault unseen", () => {
    const document = waived(SMALL, ONE);
    expect(document.verdict).toBe("ready");
    expect(about(document)[0]).toMatchObject({ level: "should", outcome: "fails" });
    expect(first(document)).toMatchObject({ state: "unused", excuses: [] });
  });

  test("is what stands at another place than the fault", () => {
    const document = waived(OVERLOADED, ONE.replace("power.circuits.c1", "faces.header"));
    expect(document.verdict).toBe("not ready");
    expect(first(document)?.state).toBe("unused");
  });
});

describe("too broad", () => {
  const broad = (where: string): DocumentEntry =>
    waived(UNRATED, `rule: rigging.point-load, of: open, ${where}${SIGNED}, until: 2027-06-30`);

  test.each([
    ["for the whole document", ""],
    ["for all bars", "where: rigging.bars, "],
    ["for all rigging", "where: rigging, "],
  ])("%s, where a requirement is open in several places", (_, where) => {
    const [, wide] = about(broad(where));
    expect(wide).toMatchObject({ level: "should", outcome: "fails" });
    expect(wide?.mend).toMatch(/`rigging\.bars\.b1\.hangs\.H1`.*`rigging\.bars\.b1\.hangs\.H2`/u);
  });

  test("not where it names the thing", () => {
    const document = waived(
      UNRATED,
      `rule: rigging.point-load, of: open, where: rigging.bars.b1.hangs.H1, ${SIGNED}, until: 2027-06-30`,
    );
    expect(about(document).map(({ outcome }) => outcome)).toEqual(["holds"]);
    expect(document.verdict).toBe("not ready");
  });

  test("not where one place is all there is", () => {
    const document = waived(OVERLOADED, `rule: power.circuit-load, accepts: 19 A, ${SIGNED}, until: 2027-06-30`);
    expect(about(document).map(({ outcome }) => outcome)).toEqual(["holds"]);
  });

  test("in time, too", () => {
    const [, long] = about(waived(OVERLOADED, ONE.replace("2027-06-30", "2099-12-31")));
    expect(long).toMatchObject({
      level: "should",
      outcome: "fails",
      at: expect.objectContaining({ path: "waivers.1.until" }),
    });
  });
});

describe("of what cannot be waived", () => {
  test.each([
    ["power", "no single rule"],
    ["power.*", "no single rule"],
    ['"power.circuit-load, power.voltage-drop"', "no single rule"],
    ["document.front-matter", "cannot be waived"],
    ["document.waivers", "cannot be waived"],
    ["plugin.failed", "cannot be waived"],
    ["power.circuit-lode", "which there is not"],
  ])("%s", (rule, says) => {
    const document = waived(OVERLOADED, `rule: ${rule}, ${SIGNED}, until: 2027-06-30`);
    expect(document.verdict).toBe("not ready");
    expect(about(document)[0]).toMatchObject({ level: "shall", outcome: "fails" });
    expect(about(document)[0]?.says).toContain(says);
  });
});

test("incomplete, it waives nothing and says what is missing", () => {
  const document = waived(OVERLOADED, "rule: power.circuit-load, by: M. Finch, until: 2027-06-30");
  expect(about(document)[0]).toMatchObject({ outcome: "open", missing: ["waivers.1.because"] });
  expect(first(document)?.state).toBe("incomplete");
});

test("the register follows the published schema, and a document without waivers has none", () => {
  const record = inspected({
    documents: { "builds/a.md": changed("practice: us", `practice: us\nwaivers: [{${ONE}}]`) },
  });
  const ajv = new Ajv2020({ strict: false });
  expect(ajv.validate(schemas.recordSchema, record), JSON.stringify(ajv.errors)).toBe(true);
  expect(inspected({}).documents[0]).not.toHaveProperty("waivers");
});
