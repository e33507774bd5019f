import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { expect, inject, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  Diagnostic,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
} from "vscode-languageserver-protocol";
import { starter, TODAY } from "../documents/repository.js";
import { Client, positionOf, textAt, uriOf } from "./client.js";

const BANNER = "builds/over-stage-banner.md";
/** What is edited, and two more that share its stock: every text that is opened anew has them all read. */
const BUILDS = [BANNER, "builds/riser-fascias.md", "builds/small-screen.md"];
const few = (): ReturnType<typeof starter> => {
  const { documents, ...files } = starter();
  return { ...files, documents: documents.filter(({ path }) => BUILDS.includes(path)) };
};

/** What people type, paste and delete, what breaks YAML, and what is two UTF-16 code units long or more. */
const PIECES = [
  "a",
  "12",
  " ",
  "  ",
  ":",
  ": ",
  "{",
  "}",
  "[",
  "]",
  '"',
  "'",
  "#",
  " # note",
  ",",
  "-",
  "- ",
  "\t",
  "|",
  ">",
  "*",
  "&a",
  "?",
  "\n",
  "\r\n",
  "\n\n",
  "\n  ",
  "---\n",
  "😀",
  "👩‍🔧",
  "é",
  "Ω",
  "\u2028",
  "7,4 kg",
  "100-240 V",
  "trimm: 3 m\n",
  "[131 lb](calc:faces.banner.mass)",
  "    trim: 11 ft\n",
  "calc:",
  "](calc:faces.",
  "{{",
  "like: banner\n",
];

interface Edit {
  readonly at: number;
  readonly length: number;
  readonly piece: number;
  readonly undo: boolean;
}

const edit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 2, arbitrary: fc.integer({ min: 1, max: 12 }) }),
  piece: fc.nat({ max: PIECES.length - 1 }),
  // Nobody leaves everything broken: most slips are taken back again.
  undo: fc.boolean(),
});

/** Never between the two halves of a letter, nor within a line end: no editor does so. */
function settled(text: string, offset: number): number {
  const isHalf = /[\uDC00-\uDFFF]/u.test(text[offset] ?? "") && /[\uD800-\uDBFF]/u.test(text[offset - 1] ?? "");
  const inEnd = text[offset] === "\n" && text[offset - 1] === "\r";
  return isHalf || inEnd ? offset + 1 : offset;
}

/** At which figure a finding turns is told a moment later than the rest. */
const TURNS = / It holds with `[^`]*` at (?:most|least) [−\d.,]+(?: \S+?)?\.(?= |$)| It turns at .*?: ask the \w+\./gu;
const shown = ({ range, code, message }: Diagnostic): string =>
  JSON.stringify([range, code, String(message).replaceAll(TURNS, "")]);

/** The same found by an inspection of the text, opened anew. */
async function foundAnew(text: string): Promise<readonly string[]> {
  const files = few();
  const documents = files.documents.map((file) => (file.path === BANNER ? { path: BANNER, text } : file));
  const client = await Client.of({ files: { ...files, documents } });
  return (await client.open(BANNER, text)).map(shown);
}

async function askAll(client: Client, offset: number): Promise<void> {
  const text = client.text(BANNER);
  const textDocument = { uri: uriOf(BANNER) };
  const position = positionOf(text, offset);
  const range = { start: position, end: position };
  const whole = { start: { line: 0, character: 0 }, end: positionOf(text, text.length) };
  const [hover, items, symbols, folds, hints, actions, , , links] = await Promise.all([
    client.request<Hover | null>("textDocument/hover", { textDocument, position }),
    client.request<CompletionItem[] | null>("textDocument/completion", { textDocument, position }),
    client.request<DocumentSymbol[] | null>("textDocument/documentSymbol", { textDocument }),
    client.request<FoldingRange[] | null>("textDocument/foldingRange", { textDocument }),
    client.request<InlayHint[] | null>("textDocument/inlayHint", { textDocument, range: whole }),
    client.request<CodeAction[] | null>("textDocument/codeAction", {
      textDocument,
      range,
      context: { diagnostics: [] },
    }),
    client.request("textDocument/definition", { textDocument, position }),
    client.request("textDocument/references", { textDocument, position, context: { includeDeclaration: true } }),
    client.request<{ range: Hover["range"] }[] | null>("textDocument/documentLink", { textDocument }),
  ]);
  const ranges = [
    ...(hover?.range ? [hover.range] : []),
    ...(items ?? []).flatMap(({ textEdit }) => (textEdit && "range" in textEdit ? [textEdit.range] : [])),
    ...(symbols ?? []).flatMap((each) => [each.range, each.selectionRange]),
    ...(hints ?? []).map((hint) => ({ start: hint.position, end: hint.position })),
    ...(actions ?? []).flatMap((action) =>
      Object.values(action.edit?.changes ?? {})
        .flat()
        .map((each) => each.range),
    ),
    ...(links ?? []).flatMap((link) => (link.range ? [link.range] : [])),
  ];
  expect(ranges.filter((each) => textAt(text, each) === undefined)).toEqual([]);
  const lines = text.split(/\r\n|\n|\r/u).length;
  expect((folds ?? []).filter(({ startLine, endLine }) => startLine > endLine || endLine >= lines)).toEqual([]);
}

test("over random edits, broken YAML, CRLF and emoji among them: what is told is what an inspection of the text finds", async () => {
  const { deep, seed } = inject("effort");
  const count = deep ? 2000 : 60;
  const edits = fc.sample(edit, { seed, numRuns: count }) as readonly Edit[];
  const banner = starter().documents.find(({ path }) => path === BANNER)?.text ?? "";
  // Both kinds of line end in one document: half of it was pasted.
  const half = banner.indexOf("\nrigging:");
  const text = banner.slice(0, half).replaceAll("\n", "\r\n") + banner.slice(half);
  const client = await Client.of({ files: few() });
  await client.open(BANNER, text);
  let broken = 0;
  for (const [number, { at, length, piece, undo }] of edits.entries()) {
    const was = client.text(BANNER);
    const from = settled(was, Math.floor(at * was.length));
    const to = settled(was, Math.min(was.length, from + length));
    const put = PIECES[piece] as string;
    client.change(BANNER, from, to, put);
    if (number % 3 === 0) await askAll(client, settled(client.text(BANNER), from + put.length));
    if (number % 7 === 0) {
      const found = await client.found(BANNER);
      if (found.some(({ code }) => code === "document.front-matter")) broken += 1;
      expect(found.filter(({ range }) => textAt(client.text(BANNER), range) === undefined)).toEqual([]);
      if (number % 21 === 0) expect(found.map(shown)).toEqual(await foundAnew(client.text(BANNER)));
    }
    if (undo || number % 5 === 4) client.change(BANNER, from, from + put.length, was.slice(from, to));
  }
  expect(broken).toBeGreaterThan(0);
  expect((await client.found(BANNER)).map(shown)).toEqual(await foundAnew(client.text(BANNER)));
}, 3_600_000);

test("a place behind letters of two UTF-16 code units is told in code units (LSP 3.17, positionEncoding)", async () => {
  const banner = starter().documents.find(({ path }) => path === BANNER)?.text ?? "";
  const text = banner.replace("{nearest: 15 ft", "{nearest: 15 ft, note: 👩‍🔧😀, narest: 15 ft");
  const client = await Client.of({ files: starter() });
  const found = await client.open(BANNER, text);
  const at = found.find(({ message }) => String(message).includes("`narest`"))?.range;
  expect(at && textAt(text, at)).toBe("narest");
  // Nothing of the repository is read but what the text says: an inspection of it by itself tells the same.
  const repository = openRepository(starter(), rules, { today: TODAY });
  repository.replace(BANNER, text);
  expect(repository.one(BANNER).entry.verdict).toBe("not ready");
});
