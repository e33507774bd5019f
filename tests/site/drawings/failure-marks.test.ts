import { type CheckEntry, failuresAt } from "@plumbmark/core";
import { type Drawing, drawingsOf, svgFile } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { sheetsOf } from "../page-of.js";
import { starterFiles, TODAY } from "../starter-files.js";
import { read, words } from "./read.js";
import { inspected } from "./repository.js";

// Which rules fail for the wall of the gala is planted in the document; the others are made to fail here.

const subjectOf = (name: string): ReturnType<typeof inspected> => inspected(`builds/${name}.md`);

function drawn(name: string, drawing: string, failing: readonly (readonly [rule: string, path: string])[]) {
  const subject = subjectOf(name);
  const [some] = subject.entry.checks;
  const checks = failing.map(
    ([rule, path]) => ({ ...some, rule, outcome: "fails", at: { ...some?.at, path } }) as CheckEntry,
  );
  const all = drawingsOf({ ...subject, failures: failuresAt({ checks }) });
  return read(svgFile(all.find((each) => each.name === drawing) as Drawing));
}

describe("a drawing says what does not hold of what it shows", () => {
  test("one-line diagram: beside the circuit and beside the run", () => {
    const plain = drawn("gala-wall", "one-line-wall-1", []);
    expect(plain.having("data-failure")).toEqual([]);
    const drawing = drawn("gala-wall", "one-line-wall-1", [
      ["power.circuit-load", "power.circuits.wall-1"],
      ["power.voltage-drop", "power.runs.P2.feed"],
    ]);
    expect(drawing.having("data-failure").map(([path]) => path)).toEqual(["power.circuits.wall-1", "power.runs.P2"]);
    const said = drawing.all("text").map(words).join(" ");
    expect(said).toContain("Circuit wall-1 does not hold: power.circuit-load fails.");
    expect(said).toContain("Run P2 does not hold: power.voltage-drop fails.");
    expect(said).not.toContain("Run P1 does not hold");
  });

  test.each([
    ["gala-wall", "face-wall-power-rear", "connectors.locking-overhead", "power.runs.P4.feed", "Run P4"],
    ["gala-wall", "face-wall-data-rear", "data.port-load", "data.chains.D1", "Chain D1"],
    ["small-screen", "stand-screen", "rigging.stack-stability", "faces.screen.base", "Face screen"],
  ])("%s, %s", (name, drawing, rule, path, label) => {
    const sentence = `${label} does not hold: ${rule} fails.`;
    const said = (failing: Parameters<typeof drawn>[2]): string =>
      drawn(name, drawing, failing).all("text").map(words).join(" ");
    expect(said([])).not.toContain(`${label} does not hold`);
    expect(said([[rule, path]])).toContain(sentence);
  });
});

test("a print can be held against the file: every drawing of an approved build carries its code", () => {
  const code = subjectOf("small-screen").entry.approval?.code ?? "none";
  expect(code).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/u);
  const own = starterFiles.documents.filter(({ path }) => path === "builds/small-screen.md");
  const pages = sheetsOf({ files: starterFiles, rules, today: TODAY }, own);
  const files = [...pages].filter(([path]) => /^drawings\/small-screen\/.*\.svg$/u.test(path));
  expect(files.length).toBeGreaterThan(3);
  expect(files.filter(([, text]) => !text.includes(`approved ${code}`)).map(([path]) => path)).toEqual([]);
});
