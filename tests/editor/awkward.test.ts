import { describe, expect, test } from "vitest";
import type { CompletionItem, Hover, Location, TextEdit } from "vscode-languageserver-protocol";
import { Client, textAt } from "./client.js";
import { askedAt, type Marking, marked, shipped } from "./marked.js";

// Where people really are when they ask: in the middle of a word, in what is broken, in files that are no builds.

const BANNER = "builds/over-stage-banner.md";
const HALL = "venues/marlow-quay-hall.md";
const PANELS = "parts/panels.yaml";
const STOCK = "stock.yaml";
const STANDARD = "house-standard.yaml";
const WISH = "wishes/spring-banner.yaml";
const NOTHING: readonly string[] = [];

const completed = async (marking: Marking): Promise<readonly CompletionItem[]> =>
  (await askedAt<CompletionItem[] | null>("textDocument/completion", marking)) ?? [];
const labels = async (marking: Marking): Promise<readonly string[]> =>
  (await completed(marking)).map(({ label }) => label);

interface Case extends Marking {
  readonly where: string;
  readonly wanted: readonly string[];
  readonly unwanted?: readonly string[];
}

const FEED = "{part: cord-12-3, hangs: 6 ft}";
const CASES: readonly Case[] = [
  {
    where: "in the middle of a name",
    path: BANNER,
    from: "panel: tile-500-p3.1",
    to: "panel: tile-|500-p3.1",
    wanted: ["tile-500-p4.2"],
    unwanted: ["cord-12-3"],
  },
  {
    where: "in braces that nobody closed",
    path: BANNER,
    from: FEED,
    to: "{part: |",
    wanted: ["cord-12-3"],
    unwanted: ["cat6-solid"],
  },
  {
    where: "at a key in braces: those of the cable, and not those of the run",
    path: BANNER,
    from: FEED,
    to: "{part: cord-12-3, |}",
    wanted: ["length", "hangs", "passes"],
    unwanted: ["part", "from", "legs", "panels"],
  },
  {
    where: "behind letters of several code units",
    path: BANNER,
    from: FEED,
    to: "{note: 👩‍🔧😀, part: |}",
    wanted: ["cord-12-3"],
  },
  {
    where: "within quotes",
    path: BANNER,
    from: "panel: tile-500-p3.1",
    to: 'panel: "ti|le"',
    wanted: ["tile-500-p3.1"],
  },
  {
    where: "at a key between lines that end with CR LF",
    path: BANNER,
    from: "    rows: 1\n",
    to: "    rows: 1\n    |\n",
    end: "\r\n",
    wanted: ["height-above"],
    unwanted: ["trim"],
  },
  {
    where: "at a value between lines that end with CR",
    path: BANNER,
    from: "from: stage-4",
    to: "from: |",
    end: "\r",
    wanted: ["stage-4"],
  },
  {
    where: "circuits of the survey that nobody used yet",
    path: BANNER,
    from: "from: stage-4",
    to: "from: |",
    wanted: ["stage-4", "stage-8", "booth-2"],
  },
  {
    where: "points of the survey with their structure",
    path: BANNER,
    from: "{point: front-beam.F2,",
    to: "{point: |,",
    wanted: ["front-beam.F1", "rear-beam.B1"],
    unwanted: ["F1", "H1"],
  },
  {
    where: "places of the survey",
    path: BANNER,
    from: "place: rack A}",
    to: "place: |}",
    wanted: ["rack-a", "rack-b", "booth"],
  },
  {
    where: "venues",
    path: BANNER,
    from: "venue: marlow-quay-hall",
    to: "venue: |",
    wanted: ["marlow-quay-hall", "varnholt-hall"],
  },
  {
    where: "the first key of an item",
    path: BANNER,
    from: "\nfaces:",
    to: "\nwaivers:\n  - |\nfaces:",
    wanted: ["rule", "because", "until"],
  },
  {
    where: "units of a bound",
    path: BANNER,
    from: "trim: 11 ft",
    to: "trim: at most 11 |",
    wanted: ["at most 11 ft", "at most 11 m"],
  },
  {
    where: "inches behind feet",
    path: BANNER,
    from: "height: 12 ft 10-3/4 in",
    to: "height: 12 ft 10 |",
    wanted: ["12 ft 10 in"],
    unwanted: ["12 ft 10 m"],
  },
  {
    where: "below a bracket that nobody closed",
    path: BANNER,
    from: "camera: none",
    to: "camera: [none",
    at: "from: ",
    wanted: ["stage-4"],
    unwanted: ["none"],
  },
  {
    where: "below a quote that nobody closed",
    path: BANNER,
    from: "camera: none",
    to: "camera: 'none",
    at: "from: ",
    wanted: ["stage-4"],
  },
  {
    where: "below a line without its colon",
    path: BANNER,
    from: "camera: none",
    to: "camera none",
    at: "from: ",
    wanted: ["stage-4"],
  },
  {
    where: "paths in the prose, behind an emoji",
    path: BANNER,
    from: "(calc:faces.banner.mass)",
    to: "(calc:faces.ba|nner.mass) 😀",
    wanted: ["faces.banner.mass", "drawings.hang-plot-header", "schedules.panels"],
  },
  {
    where: "keys of a part of a folded face",
    path: BANNER,
    from: "    banner: 0,0",
    to: "    banner:\n      parts:\n        - {columns: 1..3, |}",
    wanted: ["rows", "at"],
    unwanted: ["columns", "scaled"],
  },
  {
    where: "keys of a face that may be folded",
    path: BANNER,
    from: "    banner: 0,0",
    to: "    banner:\n      |",
    wanted: ["parts", "at", "copy-of"],
  },
  {
    where: "keys of a circuit in a survey",
    path: HALL,
    from: "    outlets: 1\n",
    to: "    outlets: 1\n    |\n",
    wanted: ["stays-on", "curve"],
    unwanted: ["breaker"],
  },
  { where: "connectors in a survey", path: HALL, from: "outlet: nema-5-20", to: "outlet: |", wanted: ["nema-5-15"] },
  {
    where: "places in a survey",
    path: HALL,
    from: "at: rack-a",
    to: "at: |",
    wanted: ["rack-b"],
    unwanted: ["stage-4"],
  },
  {
    where: "units in a survey",
    path: HALL,
    from: "girth: 40 in",
    to: "girth: 40 |",
    wanted: ["40 in"],
    unwanted: ["40 A"],
  },
  {
    where: "keys of a panel in a part file",
    path: PANELS,
    from: "  mass: 7.9 kg\n",
    to: "  mass: 7.9 kg\n  |\n",
    wanted: ["refresh"],
    unwanted: ["mass", "breaking-load"],
  },
  { where: "kinds of a part", path: PANELS, from: "kind: panel", to: "kind: |", wanted: ["panel", "rope"] },
  {
    where: "units in a part file",
    path: PANELS,
    from: "mass: 7.9 kg",
    to: "mass: 7.9 |",
    wanted: ["7.9 kg", "7.9 lb"],
    unwanted: ["7.9 ft"],
  },
  {
    where: "panels in the stock",
    path: STOCK,
    from: "panel: tile-500-p3.1",
    to: "panel: |",
    wanted: ["tile-500-p4.2"],
    unwanted: ["cord-12-3"],
  },
  {
    where: "rules in the house standard",
    path: STANDARD,
    from: "requirements:\n",
    to: "requirements:\n  |\n",
    wanted: ["data.chain-length"],
    unwanted: ["power.circuit-load"],
  },
  {
    where: "levels in the house standard",
    path: STANDARD,
    from: "{level: shall, share: 75 %}",
    to: "{level: |}",
    wanted: ["shall", "should"],
  },
  {
    where: "settings of a rule in the house standard",
    path: STANDARD,
    from: "{level: shall, share: 75 %}",
    to: "{level: shall, |}",
    wanted: ["share"],
    unwanted: ["level"],
  },
  {
    where: "structures of the venue in a wish",
    path: WISH,
    from: "under: front-beam",
    to: "under: |",
    wanted: ["rear-beam"],
  },
  {
    where: "circuits of the venue in a wish, its list broken",
    path: WISH,
    from: "power: [stage-4,",
    to: "power: [|,",
    wanted: ["stage-8"],
    unwanted: ["rack-a"],
  },
  {
    where: "a comment",
    path: BANNER,
    from: "# processor 52 W, converter",
    to: "# processor |52 W, converter",
    wanted: NOTHING,
  },
];

describe("completion where people really are", () => {
  test.each(CASES)("$where", async (given) => {
    const found = await labels(given);
    if (given.wanted === NOTHING) expect(found).toEqual([]);
    expect(found).toEqual(expect.arrayContaining([...given.wanted]));
    expect(found.filter((label) => given.unwanted?.includes(label))).toEqual([]);
    expect(new Set(found).size).toBe(found.length);
  });

  test("a guess stays a guess when its unit is written", async () => {
    const marking = { path: BANNER, from: "trim: 11 ft", to: "trim: 11 | ?" };
    const metre = (await completed(marking)).find(({ label }) => label === "11 m");
    const edit = metre?.textEdit as TextEdit;
    expect(textAt(marked(marking).text, edit.range)).toBe("11  ?");
    expect(edit.newText).toBe("11 m ?");
  });
  test("a name takes the place of the whole word, and leaves its quotes", async () => {
    const marking = { path: BANNER, from: "panel: tile-500-p3.1", to: 'panel: "ti|le"' };
    const [first] = await completed(marking);
    const edit = first?.textEdit as TextEdit | undefined;
    expect(edit && textAt(marked(marking).text, edit.range)).toBe("tile");
  });
});

describe("hover where people really are", () => {
  const told = async (marking: Marking): Promise<string> => {
    const hover = await askedAt<Hover | null>("textDocument/hover", marking);
    return (hover?.contents as { value: string } | undefined)?.value ?? "";
  };
  test("a key of a survey, of a part and of a wish says what it means", async () => {
    expect(await told({ path: HALL, from: "girth: 40 in", to: "gir|th: 40 in" })).toContain("second suspensions");
    expect(await told({ path: PANELS, from: "  mass: 7.9 kg", to: "  ma|ss: 7.9 kg" })).toContain("A mass.");
    expect(await told({ path: WISH, from: "out-of: ", to: "out|-of: " })).toContain("what it is made of");
  });
  test("a rule in the house standard, with the setting in force", async () => {
    const rule = { path: STANDARD, from: "  power.circuit-load:", to: "  power.circuit-|load:" };
    expect(await told(rule)).toMatch(/`share`: 75 % \(house-standard\.yaml, line \d+\)/u);
  });
  test("below what is broken, a computed value of the last sound text", async () => {
    const broken = { path: BANNER, from: "camera: none", to: "camera: [none", at: "(calc:faces.banner.m" };
    expect(await told(broken)).toMatch(/lb\*\*[\s\S]*As of the last text that could be read/u);
  });
});

describe("names where people really are", () => {
  const places = (locations: readonly Location[] | null): readonly string[] =>
    (locations ?? []).map(({ uri, range }) => `${uri.split("/").slice(-2).join("/")}:${range.start.line + 1}`);
  const lineOf = (path: string, words: string): string =>
    `${path}:${marked({ path, from: words, to: `|${words}` }).position.line + 1}`;

  test("a point of the venue is written in its survey", async () => {
    const point = { path: BANNER, from: "{point: front-beam.F2", to: "{point: front-beam.F|2" };
    expect(places(await askedAt<Location[]>("textDocument/definition", point))).toEqual([
      lineOf(HALL, "F2: {at: 11 ft 9 in"),
    ]);
  });
  test("so are a circuit and a structure, and a place however it is spelt", async () => {
    const asked = async (from: string, to: string) =>
      places(await askedAt<Location[]>("textDocument/definition", { path: BANNER, from, to }));
    expect(await asked("from: stage-4", "from: st|age-4")).toEqual([lineOf(HALL, "stage-4:\n    at")]);
    expect(await asked("point: front-beam.F2", "point: fro|nt-beam.F2")).toEqual([lineOf(HALL, "front-beam:\n")]);
    expect(await asked("place: rack A}", "place: ra|ck A}")).toEqual([lineOf(HALL, "rack-a:      {")]);
  });
  test("below what is broken, too", async () => {
    const broken = { path: BANNER, from: "camera: none", to: "camera: [none", at: "from: stage" };
    expect(places(await askedAt<Location[]>("textDocument/definition", broken))).toEqual([
      lineOf(HALL, "stage-4:\n    at"),
    ]);
  });
  test("a place that is renamed in its survey: routes, circuits and builds follow", async () => {
    const place = { path: HALL, from: "  rack-a:      {", to: "  rack|-a:      {" };
    const edit = await askedAt<{ changes: Record<string, TextEdit[]> }>("textDocument/rename", place, {
      newName: "rack-z",
    });
    const edits = Object.entries(edit.changes).map(([uri, each]) => [uri.split("/").at(-1), each.length]);
    expect(Object.fromEntries(edits)).toEqual({
      "marlow-quay-hall.md": [...marked({ ...place, to: place.from, at: "rack-a" }).text.matchAll(/rack-a\b/gu)].length,
      "over-stage-banner.md": 3,
      "summer-stage.md": 3,
    });
  });
  test("nothing is renamed while a document that may name it cannot be read", async () => {
    const broken = { path: BANNER, from: "camera: none", to: "camera: [none", at: "panel: tile" };
    await expect(askedAt("textDocument/rename", broken, { newName: "tile-x" })).resolves.toBeNull();
    const other = await Client.of({ files: shipped });
    await other.open(BANNER, marked(broken).text);
    const position = { line: 1, character: 3 };
    const asked = other.request("textDocument/rename", {
      textDocument: { uri: other.uri(PANELS) },
      position,
      newName: "tile-x",
    });
    await expect(asked).rejects.toThrow(
      /over-stage-banner\.md cannot be read as it is, and may name `tile-500-p3\.1`/u,
    );
  });
});
