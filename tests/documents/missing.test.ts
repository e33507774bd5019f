import type { CheckEntry, DocumentEntry } from "@plumbmark/core";
import { openRepository, whereFound } from "@plumbmark/core";
import { describe, expect, inject, test } from "vitest";
import { parseDocument } from "yaml";
import { notEmpty } from "../run/not-empty.js";
import { someOfEach } from "../run/some.js";
import { changed, inspectText, onlyRules, SMALL, starter, TODAY } from "./repository.js";

const END = SMALL.indexOf("\n---\n");
const front = (): ReturnType<typeof parseDocument> => parseDocument(SMALL.slice(4, END));

type Path = readonly (string | number)[];

/** Paths of everything in the front matter: every value, and every group and list as a whole. */
function pathsOf(data: unknown, path: Path = []): readonly Path[] {
  const own = path.length > 0 ? [path] : [];
  if (data === null || typeof data !== "object") return own;
  const inner = Object.entries(data).flatMap(([key, value]) =>
    pathsOf(value, [...path, Array.isArray(data) ? Number(key) : key]),
  );
  return [...own, ...inner];
}

function without(path: Path): string {
  const yaml = front();
  yaml.deleteIn(path);
  return `---\n${yaml.toString()}---\n${SMALL.slice(END + 5)}`;
}

const shall = (document: DocumentEntry, outcome: string): readonly CheckEntry[] =>
  document.checks.filter((check) => check.level === "shall" && check.outcome === outcome);

/** Checks that do not hold, whatever their level. */
const noticed = (document: DocumentEntry): readonly CheckEntry[] =>
  document.checks.filter((check) => check.outcome === "open" || check.outcome === "fails");

/** What nothing rests on, each for a reason: taken out, it leaves a document that is as complete as before. */
const FREE: readonly (readonly [RegExp, string])[] = [
  [/^(revision|venue)$/u, "it is for people only"],
  [/^practice$/u, "the house standard's stands in"],
  [/^faces\.header\.text$/u, "a face that shows no text"],
  [/^rigging\.bars\.b1\.hangs\.H\d\.structure$/u, "the letter states it"],
  [/^rigging\.letter\.points\.H\d\.catch$/u, "its rating at rest stands in, and is enough"],
];

/** What only recommendations and notes rest on; everything else has to keep the build from being ready. */
const ADVICE: readonly RegExp[] = [
  /^(audience|light)(\.|$)/u,
  /^faces\.header\.(spares|text\.\w)/u,
  /\.feeder-drop$/u,
  /^camera$/u,
  /\.(rides-through|residual)$/u,
  /^picture\.path\.\d+\.place$/u,
  /^data\.chains\.D1\.(back-up-port|return)(\.|$)/u,
  /^picture\.path\.1(\.length)?$/u,
  /^rigging\.(secondary|lifting)(\.|$)/u,
];

/** The part of a document a value belongs to; circuits, runs, bars and letter are parts of their own. */
const partOf = ([first, second]: Path): string =>
  first === "power" || first === "rigging" ? `${first}.${second}` : String(first);

describe("any one value taken out of a complete document", () => {
  const paths = pathsOf(front().toJS());
  const { deep, seed } = inject("effort");
  // All in a deep run; else one of each part of a document, others in each run.
  const tried = deep ? paths : someOfEach(paths, partOf, 1, seed);
  test("there are many, and nothing is wrong with the whole", () => {
    expect(paths.length).toBeGreaterThan(50);
    expect(tried.length).toBeGreaterThan(15);
    const whole = inspectText(SMALL);
    expect(noticed(whole)).toEqual([]);
  });

  test.each(notEmpty(tried.map((path) => [path.join("."), path] as const)))("%s", (path, taken) => {
    const document = inspectText(without(taken), { turns: false });
    if (FREE.some(([each]) => each.test(path))) return expect(noticed(document).length).toBe(0);
    expect(noticed(document).length, "nobody notices").toBeGreaterThan(0);
    if (!ADVICE.some((each) => each.test(path)))
      expect(shall(document, "open").length + shall(document, "fails").length, "and it is still ready").toBeGreaterThan(
        0,
      );
  });
});

describe("a value that is needed and not written down", () => {
  test.each([
    ["the breaker", "      breaker: 20 A\n", "power.circuit-load", "power.circuits.c1.breaker"],
    ["the supply", "      supply: 120 V\n", "power.circuit-load", "power.circuits.c1.supply"],
    ["the length of the bar", "      length: 8 ft\n", "rigging.point-load", "rigging.bars.b1.length"],
    ["the section of the bar", "      section: pipe-1.5-std\n", "rigging.point-load", "rigging.bars.b1.section"],
    ["the edge of the face on the bar", ", from: 6 in", "rigging.point-load", "rigging.bars.b1.carries.from"],
    ["the frame rate", "  rate: 60 Hz\n", "data.port-load", "picture.rate"],
    ["the bit depth", "  depth: 8 bit\n", "data.port-load", "picture.depth"],
    ["the processor", "  processor: {part: processor-6, place: rack}\n", "data.port-load", "data.processor"],
    ["the panels of the run", "      panels: header A1..A4\ndata", "power.circuit-load", "power.runs.P1.panels"],
    ["who states what the structure carries", "    by: I. Brandt\n", "rigging.letter", "rigging.letter.by"],
  ])("%s: the check is open and names it", (_, out, rule, path) => {
    const kept = out.endsWith("H2") ? "}\n        H2" : out.endsWith("data") ? "data" : "";
    const document = inspectText(changed(out, kept), { rules: [rule], turns: false });
    const check = document.checks.find(
      (each) => each.rule === rule && each.outcome === "open" && each.missing?.includes(path),
    );
    expect(
      check?.mend,
      JSON.stringify(
        document.checks.filter((each) => each.rule === rule),
        null,
        1,
      ),
    ).toBeTruthy();
    expect(document.verdict).toBe("not ready");
  });
});

/** The small build among the starter's parts with something taken out of one part, judged by one rule. */
function withPart(from: RegExp, to: string, rule: string): DocumentEntry {
  const files = starter();
  const parts = files.parts.map(({ path, text }) => ({ path, text: text.replace(from, to) }));
  expect(parts.some(({ text }, index) => text !== files.parts[index]?.text)).toBe(true);
  const documents = [{ path: "builds/small.md", text: SMALL }];
  const options = { today: TODAY, every: true };
  return openRepository({ ...files, parts, documents }, onlyRules([rule]), options).all().documents[0] as DocumentEntry;
}

describe("a value of a part that is needed and not written down", () => {
  test.each([
    ["the mass of the panel", /^ {2}mass: 7\.9 kg\n/mu, "rigging.point-load"],
    ["its maximum power", /maximum: 133 W, /u, "power.circuit-load"],
    ["its power factor", /typical: 47 W, factor: 0\.95, /u, "power.circuit-load"],
    ["its pixels", /^ {2}pixels: 160 x 160\n/mu, "data.port-load"],
    ["its size", /^ {2}size: 500 mm x 500 mm\n/mu, "rigging.point-load"],
    ["the rate of a port", / {2}port-rate: 1 Gb\/s\n/u, "data.port-load"],
    ["the maker's pixels of a port", / {2}port-pixels: 512000\n/u, "data.port-load"],
    ["the WLL of the clamp", /(?<=lower flange of a beam, effective: 4 in, )wll: 1000 lb, /u, "rigging.point-load"],
    ["the mass of a data cable", /(?<=conductor: 23 AWG, )mass: 0\.045 kg\/m, /u, "rigging.suspended-weight"],
  ])("%s: %s makes a check open, and the build is not ready", (_, from, rule) => {
    const document = withPart(from, "", rule);
    const open = document.checks.filter((check) => check.rule === rule && check.outcome === "open");
    expect(open.length).toBeGreaterThan(0);
    for (const check of open) expect(check.missing?.length).toBeGreaterThan(0);
    expect(document.verdict).toBe("not ready");
  });
});

test("where a value of a survey is found is what the survey's schema says, not what that of a part of this name does", () => {
  const survey = "venues/a.md";
  expect(whereFound("circuits.stage-4.supply", survey)).toBe("panel schedule");
  expect(whereFound("circuits.stage-4.wiring.conductor", survey)).toBe("panel schedule");
  expect(whereFound("circuits.stage-4.wiring.length", survey)).toBe("tape");
  expect(whereFound("cord.conductor", "parts/a.yaml")).toBe("data sheet");
});
