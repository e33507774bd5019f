import type { InspectionRecord } from "@plumbmark/core";
import { describe, expect, it } from "vitest";
import { textReport } from "./text.js";

const check = (says: string, rest: object = {}) => ({
  rule: "power.circuit-load",
  level: "shall" as const,
  outcome: "fails" as const,
  at: { path: "power.circuits.a", line: 41, column: 5, endLine: 41, endColumn: 9 },
  says,
  sources: [],
  ...rest,
});

const record = (...checks: ReturnType<typeof check>[]): InspectionRecord => ({
  record: 2,
  standard: "House",
  documents: [
    {
      file: "builds/a.md",
      title: "A\u001b[2J title",
      revision: 3,
      status: "for-build",
      verdict: "not ready",
      counts: { checks: checks.length, holds: 0, fails: checks.length, open: 0, waived: 0 },
      checks,
    },
  ],
  totals: {
    documents: 1,
    ready: 0,
    draft: 0,
    "not-ready": 1,
    checks: checks.length,
    holds: 0,
    fails: checks.length,
    open: 0,
    waived: 0,
  },
});

describe("the text report", () => {
  it("spells out the level, so that colour never carries meaning alone", () => {
    const plain = textReport(record(check("Too much.")), { width: 80, colour: 0 });
    const coloured = textReport(record(check("Too much.")), { width: 80, colour: 3 });
    expect(plain).toContain("  SHALL   power.circuit-load");
    expect(plain).not.toContain("\u001b");
    // ECMA-48 8.3.117: select graphic rendition, here by red, green and blue as ISO 8613-6 has it; #D55E00 is 213, 94, 0.
    expect(coloured).toContain("\u001b[38;2;213;94;0m");
  });

  it("lets no author move the terminal's cursor", () => {
    expect(textReport(record(check("\u001b]0;x\u0007")), { width: 80, colour: 0 })).not.toMatch(/[^\P{Cc}\n]/u);
  });

  it("tells what is alike together and counts what it leaves out", () => {
    const many = Array.from({ length: 9 }, (_, index) => check(`Panel ${index + 1}.`, { mend: "Move it." }));
    const text = textReport(record(...many), { width: 80, colour: 0 });
    expect(text.match(/SHALL/gu)).toHaveLength(1);
    expect(text.match(/Panel \d/gu)).toHaveLength(5);
    expect(text).toContain("And 4 more like these");
    expect(text).toContain("9 checks: 9 fail.");
  });

  it("tells what the same is to be done about on one line, and counts every thing", () => {
    const open = (path: string, mend: string) => check("It is open.", { outcome: "open", missing: [path], mend });
    const asked = [open("read.by", "Read it."), open("read.on", "Read it."), open("sent.on", "Send it.")];
    const text = textReport(record(...asked), { width: 80, colour: 0 });
    expect(text).toContain("3 things are not written down; 3 checks wait for them.");
    expect(text).toMatch(/SHALL +2 +`read\.by`, `read\.on`: Read it\.\n +SHALL +1 +`sent\.on`: Send it\./u);
  });

  it("breaks lines at the width it is given", () => {
    const text = textReport(record(check("word ".repeat(60))), { width: 60, colour: 0 });
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(60);
  });
});
