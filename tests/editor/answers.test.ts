import { type InspectionRecord, openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  Diagnostic,
  DocumentSymbol,
  Hover,
  InlayHint,
  Location,
  TextEdit,
} from "vscode-languageserver-protocol";
import { starter, TODAY } from "../documents/repository.js";
import { notEmpty } from "../run/not-empty.js";
import { Client, positionOf, ROOT, textAt, uriOf, withEdits } from "./client.js";

const BANNER = "builds/over-stage-banner.md";
const textOf = (path: string): string => {
  const { documents, parts, stock } = starter();
  return [...documents, ...parts, ...(stock ? [stock] : [])].find((file) => file.path === path)?.text ?? "";
};

/** The starter with a document and one more that shares its parts, stock and hall: each further one takes its time. */
const few = (...paths: readonly string[]) => {
  const { documents, ...files } = starter();
  const kept = documents.filter(({ path }) => path === "builds/small-screen.md" || paths.includes(path));
  expect(kept.length).toBeGreaterThanOrEqual(paths.length);
  return { ...files, documents: kept };
};

/** The banner with words in place of others, open in a client; `|` in what is put is where the cursor is. */
async function opened(from: string, to: string, path = BANNER, files: ReturnType<typeof starter> = few(path)) {
  const text = textOf(path);
  if (!text.includes(from)) throw new Error(`${path} has no ${from}`);
  const at = text.indexOf(from) + Math.max(0, to.indexOf("|"));
  const put = text.replace(from, () => to.replace("|", ""));
  const client = await Client.of({ files });
  const found = await client.open(path, put);
  const textDocument = { uri: uriOf(path) };
  const position = positionOf(put, at);
  return {
    client,
    found,
    text: put,
    textDocument,
    position,
    ask: <Answer>(method: string, more: object = {}) =>
      client.request<Answer>(method, { textDocument, position, ...more }),
  };
}

const completed = async (from: string, to: string, path?: string): Promise<readonly CompletionItem[]> =>
  (await (await opened(from, to, path)).ask<CompletionItem[] | null>("textDocument/completion")) ?? [];
const labels = (items: readonly CompletionItem[]): readonly string[] => items.map(({ label }) => label);

describe("completion", () => {
  test("keys by the schema, with what they mean, and none that stands there already", async () => {
    const items = await completed("    rows: 1\n", "    rows: 1\n    |\n");
    expect(labels(items)).toContain("height-above");
    expect(labels(items)).not.toContain("trim");
    expect(items.find(({ label }) => label === "height-above")).toMatchObject({
      detail: "height of the lower edge above the floor",
    });
  });
  test.each([
    ["parts of the kind that belongs there", "panel: tile-500-p3.1", "panel: |", "tile-500-p4.2", "cord-12-3"],
    ["cables of a run", "feed: {part: cord-12-3,", "feed: {part: |,", "cord-12-3", "cat6-solid"],
    ["lots", "lot: lot-2431", "lot: |", "lot-2507", "cord-12-3"],
    ["circuits", "from: stage-4", "from: |", "booth-1", "P1"],
    ["connectors", "outlet: nema-5-20", "outlet: |", "nema-5-20", "stage-4"],
    ["sections", "section: pipe-1.5-std", "section: pipe|", "pipe-1.5-std", "stage-4"],
    ["faces", "carries: {face: banner,", "carries: {face: |,", "banner", "stage-4"],
    ["words", "support: flown", "support: |", "stacked", "stage-4"],
    ["units of the field", "trim: 11 ft", "trim: 11 |", "11 ft", "11 A"],
    ["cells of a face", "panels: banner A1..A6\n\ndata", "panels: |\n\ndata", "banner A1..A6", "stage-4"],
    ["points of a letter", "points:\n      H1: ", "points:\n      |: ", "H1", "stage-4"],
    ["computed values in the prose", "(calc:faces.banner.mass)", "(calc:|)", "rigging.bars.header.load", "stage-4"],
    ["drawings in the prose", "(calc:faces.banner.mass)", "(calc:|)", "drawings.hang-plot-header", "stage-4"],
  ])("%s", async (_, from, to, wanted, unwanted) => {
    const found = labels(await completed(from, to));
    expect(found).toContain(wanted);
    expect(found).not.toContain(unwanted);
  });
  test("a face of several rows is offered there and back again", async () => {
    const items = await completed("panels: wall A1", "panels: |wall A1", "builds/gala-wall.md");
    expect(labels(items).some((label) => /^wall A1\.\.A\d+, B\d+\.\.B1/u.test(label))).toBe(true);
  });
  test("while the text is broken, names are those of the last one that could be read", async () => {
    const { client, text, textDocument } = await opened("title:", "title:");
    const at = text.indexOf("from: stage-4") + "from: ".length;
    client.change(BANNER, text.indexOf("    rows: 1"), text.indexOf("    rows: 1") + 4, "\t");
    client.change(BANNER, at - 3, at - 3 + "stage-4".length, "");
    const position = positionOf(client.text(BANNER), at - 3);
    const items = await client.request<CompletionItem[]>("textDocument/completion", { textDocument, position });
    expect(labels(items)).toContain("stage-4");
  });
});

describe("hover", () => {
  const told = async (from: string, to: string, path?: string): Promise<string> => {
    const hover = await (await opened(from, to, path)).ask<Hover | null>("textDocument/hover");
    return (hover?.contents as { value: string } | undefined)?.value ?? "";
  };
  test("a computed value with its working", async () => {
    const text = await told("(calc:faces.banner.mass)", "(calc:|faces.banner.mass)");
    expect(text).toMatch(/\*\*\d+(?:\.\d+)? lb\*\*/u);
    expect(text).toMatch(/6 × .* lb = /u);
  });
  test("the figures of a part", async () => {
    expect(await told("panel: tile-500-p3.1", "panel: |tile-500-p3.1")).toMatch(
      /panel, in parts\/panels\.yaml[\s\S]*`mass`: 7\.9 kg/u,
    );
  });
  test("what a rule states, what it rests on, and the setting in force", async () => {
    const waiver = "waivers:\n  - {rule: power.|circuit-load, because: x, by: M. Finch, until: 2027-12-31}\n\nfaces:";
    const text = await told("faces:", waiver);
    expect(text).toContain("carries no more than its continuous rating");
    expect(text).toContain("`share`: 75 % (house-standard.yaml, line");
  });
  test("while the text is broken, the last sound model answers and says that it is older", async () => {
    const { client, text, textDocument } = await opened("title:", "title:");
    client.change(BANNER, text.indexOf("    rows: 1"), text.indexOf("    rows: 1") + 4, "\t");
    await client.found(BANNER);
    const now = client.text(BANNER);
    const position = positionOf(now, now.indexOf("calc:faces.banner.mass"));
    const hover = await client.request<Hover>("textDocument/hover", { textDocument, position });
    expect((hover.contents as { value: string }).value).toMatch(/lb\*\*[\s\S]*As of the last text that could be read/u);
  });
});

describe("inlay hints", () => {
  test("tell what runs, hangs and chains come to, and nothing while they are of an earlier text", async () => {
    const { client, text, textDocument } = await opened("title:", "title:");
    const range = { start: { line: 0, character: 0 }, end: positionOf(text, text.length) };
    const hints = await client.request<InlayHint[]>("textDocument/inlayHint", { textDocument, range });
    const behind = (key: string): string => {
      const line = text.split("\n").findIndex((each) => each.trimStart().startsWith(`${key}:`));
      return String(hints.find(({ position }) => position.line === line)?.label);
    };
    expect(behind("P1")).toMatch(/^\d+(?:\.\d+)? of 15 A, \d+(?:\.\d+)? % drop$/u);
    expect(behind("H2")).toMatch(/^\d+(?:\.\d+)? lb, at worst \d+ of 500 lb$/u);
    expect(behind("D1")).toMatch(/^[\d,]+ of [\d,]+ px$/u);
    client.change(BANNER, text.indexOf("    rows: 1"), text.indexOf("    rows: 1") + 4, "\t");
    expect(await client.request("textDocument/inlayHint", { textDocument, range })).toEqual([]);
  });
});

describe("code actions", () => {
  const offered = async (from: string, to: string, path = BANNER) => {
    const all = await opened(from, to, path);
    const range = { start: all.position, end: all.position };
    const actions =
      (await all.client.request<CodeAction[] | null>("textDocument/codeAction", {
        textDocument: all.textDocument,
        range,
        context: { diagnostics: [] },
      })) ?? [];
    return { ...all, actions };
  };
  const made = (
    { text, textDocument }: { text: string; textDocument: { uri: string } },
    action: CodeAction | undefined,
  ): string => withEdits(text, action?.edit?.changes?.[textDocument.uri] ?? []);

  test("a mend that has one answer is preferred, and the text is as it should be then", async () => {
    const given = await offered("    trim: 11 ft", "    tri|mm: 11 ft");
    const action = given.actions.find(({ isPreferred }) => isPreferred);
    expect(action).toMatchObject({ kind: "quickfix", title: "Write `trim` in place of `trimm`" });
    expect(made(given, action)).toBe(textOf(BANNER));
    expect(action?.diagnostics?.[0]?.code).toBe("document.front-matter");
  });
  test("what has several answers is offered, none of them preferred", async () => {
    const given = await offered("structure: 1000 lb", "structure: 1|,000 lb");
    const quick = given.actions.filter(({ kind }) => kind === "quickfix");
    expect(quick.map(({ title }) => title)).toEqual([
      "Write `1000 lb` in place of `1,000 lb`",
      "Write `1.000 lb` in place of `1,000 lb`",
    ]);
    expect(quick.some(({ isPreferred }) => isPreferred)).toBe(false);
  });
  test("a figure becomes a guess", async () => {
    const given = await offered("    trim: 11 ft", "    trim: 1|1 ft");
    const action = given.actions.find(({ title }) => title === "Make `11 ft` a guess");
    expect(action?.kind).toBe("refactor.rewrite");
    expect(made(given, action)).toBe(textOf(BANNER).replace("trim: 11 ft", "trim: 11 ft ?"));
  });
  test("everything that has one answer at once", async () => {
    const given = await offered(
      "[131 lb]".replace("131", /\[(\d+) lb\]\(calc:faces\.banner\.mass\)/u.exec(textOf(BANNER))?.[1] ?? ""),
      "[1|2 lb]",
    );
    const all = given.actions.find(({ kind }) => kind === "source.fixAll");
    expect(made(given, all)).toBe(textOf(BANNER));
  });
});

describe("names", () => {
  /** The record of the documents as they are, made once. */
  let before: InspectionRecord | undefined;
  const places = (locations: readonly Location[]): readonly string[] =>
    locations.map(({ uri, range }) => `${uri.slice(uriOf("").length)}:${range.start.line + 1}`);
  test("a part is written in the catalogue, and named in documents", async () => {
    const { ask } = await opened("panel: tile-500-p3.1", "panel: |tile-500-p3.1");
    const [definition] = await ask<Location[]>("textDocument/definition");
    expect(definition?.uri).toBe(uriOf("parts/panels.yaml"));
    const all = await ask<Location[]>("textDocument/references", { context: { includeDeclaration: true } });
    expect(new Set(places(all).map((each) => each.split(":")[0]))).toContain("stock.yaml");
    expect(all.length).toBeGreaterThan(4);
  });

  test.each([
    ["a part", "panel: tile-500-p3.1", "panel: |tile-500-p3.1", "tile-x"],
    ["a circuit", "    stage-4:", "    |stage-4:", "stage-9"],
    ["a face", "  banner:\n    panel", "  |banner:\n    panel", "header-face"],
    ["a bar", "    header:\n      section", "    |header:\n      section", "long-pipe"],
    ["a hang", "        H2: {at", "        |H2: {at", "H9"],
    ["a lot", "lot: lot-2431", "lot: |lot-2431", "lot-9999"],
    ["a run", "    P1:", "    |P1:", "P9"],
    ["a chain", "    D1:", "    |D1:", "D9"],
  ])("%s is renamed wherever it is named, and every document comes out as before", async (_, from, to, name) => {
    const files = few(BANNER, "builds/riser-fascias.md", "builds/side-strips.md");
    const { ask, text } = await opened(from, to, BANNER, files);
    const edit = await ask<{ changes: Record<string, TextEdit[]> }>("textDocument/rename", { newName: name });
    before ??= openRepository(files, rules, { today: TODAY, turns: false }).all();
    const renamed = openRepository(files, rules, { today: TODAY, turns: false });
    for (const [uri, edits] of notEmpty(Object.entries(edit.changes))) {
      const path = decodeURIComponent(uri.slice(uriOf("").length));
      renamed.replace(path, withEdits(textOf(path), edits));
    }
    expect(text).toBe(textOf(BANNER));
    const failing = ({ documents }: InspectionRecord) =>
      documents.map(({ file, checks }) => [
        file,
        // What was approved had other names.
        checks
          .filter(({ rule, outcome }) => rule !== "document.sign-off" && outcome !== "holds")
          .map(({ rule }) => rule),
      ]);
    expect(failing(renamed.all())).toEqual(failing(before));
  });

  test("a name that is taken, or cannot be one, is refused with the reason", async () => {
    const { ask } = await opened("    stage-4:", "    |stage-4:");
    await expect(ask("textDocument/rename", { newName: "stage-5" })).rejects.toThrow(
      /There is a circuit `stage-5` already/u,
    );
    await expect(ask("textDocument/rename", { newName: "a b" })).rejects.toThrow(/cannot be a name/u);
  });
});

describe("a house standard", () => {
  const STANDARD = "house-standard.yaml";
  const standard = starter().houseStandard?.text ?? "";
  const offered = async (line: string): Promise<readonly CompletionItem[]> => {
    const put = `practice: us\nrequirements:\n${line}`;
    const client = await Client.of({ files: starter() });
    await client.open(STANDARD, put.replace("|", ""));
    const params = { textDocument: { uri: uriOf(STANDARD) }, position: positionOf(put, put.indexOf("|")) };
    return (await client.request<CompletionItem[] | null>("textDocument/completion", params)) ?? [];
  };
  test("a setting is offered with the units of its kind", async () => {
    expect(standard).not.toBe("");
    const items = await offered("  data.jumper-reach: {slack: 5|}\n");
    expect(labels(items)).toEqual(expect.arrayContaining(["5 in", "5 m", "5 mm"]));
    expect(labels(items)).not.toContain("5 kg");
    expect(labels(await offered("  power.circuit-load: {share: 75|}\n"))).toContain("75 %");
  });
  test("one that is yes or no is offered with both words", async () => {
    expect(labels(await offered("  rigging.attachment: {half-wll: |}\n"))).toEqual(
      expect.arrayContaining(["true", "false"]),
    );
  });
  test("a plain number has none", async () => {
    expect(labels(await offered("  stock.inspected: {months: 6|}\n"))).toEqual([]);
  });
});

describe("the rest", () => {
  test("the outline has faces, runs, chains, bars and hangs, and the sections of the body", async () => {
    const { ask } = await opened("title:", "title:");
    const symbols = await ask<DocumentSymbol[]>("textDocument/documentSymbol");
    const all = (list: readonly DocumentSymbol[]): readonly string[] =>
      list.flatMap((each) => [`${each.detail ?? ""} ${each.name}`.trim(), ...all(each.children ?? [])]);
    const names = all(symbols);
    for (const name of ["face banner", "circuit stage-4", "run P1", "chain D1", "bar header", "hang H4", "Lift plan"])
      expect(names).toContain(name);
  });
  test("links lead to the files they name", async () => {
    const { ask } = await opened("title:", "title:");
    const links = await ask<{ target: string }[]>("textDocument/documentLink");
    expect(links.map(({ target }) => target)).toEqual(
      expect.arrayContaining([uriOf("builds/small-screen.md"), uriOf("letters/mq-7.txt")]),
    );
  });
  test("a mistake of a part is told in the part's file, and in a document where it is", async () => {
    const { client, found } = await opened("  mass: 7.9 kg", "  mass: 7|,9 kg", "parts/panels.yaml");
    expect(found.map(({ code }) => code)).toEqual(["document.front-matter"]);
    const waiting = await client.open(BANNER, textOf(BANNER));
    const related = waiting.flatMap((each: Diagnostic) => each.relatedInformation ?? []);
    expect(related.some(({ location }) => location.uri === uriOf("parts/panels.yaml"))).toBe(true);
  });
  test("what is open is information in a draft", async () => {
    const draft = starter().documents.find(({ text }) => /^status: draft/mu.test(text));
    const client = await Client.of({ files: starter() });
    const found = await client.open(draft?.path ?? "", draft?.text ?? "");
    expect(found.length).toBeGreaterThan(0);
    expect(new Set(found.map(({ severity }) => severity))).toEqual(new Set([3]));
  });
  test("an answer that is not wanted any more is not given", async () => {
    const { client, textDocument, position } = await opened("title:", "title:");
    const { CancellationTokenSource } = await import("vscode-jsonrpc/node.js");
    const source = new CancellationTokenSource();
    const asked = client.connection.sendRequest("textDocument/hover", { textDocument, position }, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: -32800 });
  });
  test("a file of no docs repository is told nothing", async () => {
    const client = await Client.of({ files: starter() });
    const hover = await client.request("textDocument/hover", {
      textDocument: { uri: "file:///elsewhere/a.md" },
      position: { line: 0, character: 0 },
    });
    expect([hover, client.logged.length > 0, ROOT]).toEqual([null, true, ROOT]);
  });
  test("a file that is closed counts as it lies on the disk again", async () => {
    const { client, textDocument } = await opened("    trim: 11 ft", "    trimm: 11 ft", BANNER, starter());
    client.connection.sendNotification("textDocument/didClose", { textDocument });
    // Its base says nothing of friction, as documents of before that key.
    expect(
      (await client.open("builds/small-screen.md", textOf("builds/small-screen.md"))).map(({ code }) => code),
    ).toEqual(["rigging.stack-slides"]);
    expect(textAt(textOf(BANNER), { start: { line: 0, character: 0 }, end: { line: 0, character: 3 } })).toBe("---");
  });
});
