import { draftRecord } from "@plumbmark/draft";
import { beforeAll, describe, expect, test } from "vitest";
import { draftText } from "../../packages/cli/src/report/draft/options-text.js";
import { laidOut } from "./drafting.js";

const wish = `wish: board
title: Board
practice: iec
size: {width: exactly 2 m, height: exactly 0.5 m}
support: stacked
shows: colour
out-of: catalogue
`;

describe("options in a terminal", () => {
  let record: ReturnType<typeof draftRecord>;
  beforeAll(() => {
    const laid = laidOut(wish);
    record = draftRecord(laid.brief, laid);
  });

  test("one alone stands as a list, each figure in a line of its own", () => {
    const [first] = record.options;
    if (!first) throw new Error("no option");
    const text = draftText({ ...record, options: [first] }, { width: 80, colour: 0 });
    expect(text).toMatch(/^Board\n\nOption {2,}1\nPanels {2,}4 × 1\n/mu);
    expect(text).toMatch(/^Size {2,}2 m × 0\.5 m$/mu);
    expect(text).not.toContain("The same of all");
  });

  test("two that differ in no figure are told apart by what they trade, without a table of numbers", () => {
    const [first] = record.options;
    if (!first) throw new Error("no option");
    const options = [first, { ...first, number: 2, trades: "Half of it stays lit when a circuit trips." }];
    const text = draftText({ ...record, options }, { width: 80, colour: 0 });
    expect(text).toContain("Board: 2 options");
    expect(text).not.toMatch(/^Option\s*$/mu);
    expect(text).toContain("The same of all: panels: 4 × 1");
    expect(text).toContain("Option 2: Half of it stays lit");
  });
});
