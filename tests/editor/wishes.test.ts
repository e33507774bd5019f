import { readFileSync } from "node:fs";
import { starterRepository } from "@plumbmark/starter";
import { describe, expect, test } from "vitest";
import type { CompletionItem, DocumentSymbol, Hover } from "vscode-languageserver-protocol";
import { starter } from "../documents/repository.js";
import { Client, positionOf, uriOf } from "./client.js";

const PATH = "wishes/spring-banner.yaml";
const WISH = readFileSync(`${starterRepository}/${PATH}`, "utf8");
const HALL = "venues/marlow-quay-hall.md";
const surveys = [{ path: HALL, text: readFileSync(`${starterRepository}/${HALL}`, "utf8") }];

/** The starter's wish with words in place of others, open in a client; `|` in what is put is where the cursor is. */
async function opened(from = "", to = "") {
  if (!WISH.includes(from)) throw new Error(`${PATH} has no ${from}`);
  const at = WISH.indexOf(from) + Math.max(0, to.indexOf("|"));
  const put = WISH.replace(from, () => to.replace("|", ""));
  const client = await Client.of({ files: { ...starter(), surveys } });
  const found = await client.open(PATH, put);
  const of = { textDocument: { uri: uriOf(PATH) }, position: positionOf(put, at) };
  return { found, ask: <Answer>(method: string) => client.request<Answer>(method, of) };
}

describe("a wish in an editor", () => {
  test("one that can be drafted from has nothing to tell", async () => {
    expect((await opened()).found).toEqual([]);
  });

  test("what is wrong with it is told at its place", async () => {
    const { found } = await opened("support: flown", "support: flow");
    const line = WISH.split("\n").findIndex((each) => each.startsWith("support:"));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: 1, range: { start: { line, character: "support: ".length } } });
    expect(found[0]?.message).toContain("flown");
  });

  test("a length that is none, and a venue nobody surveyed", async () => {
    expect((await opened("width: at most 10 ft", "width: rather wide")).found[0]?.message).toContain("at most");
    expect((await opened("venue: marlow-quay-hall", "venue: marlow-quay-hal")).found[0]?.message).toContain(
      "marlow-quay-hall",
    );
  });

  test("keys of its own are offered, and not those of a part", async () => {
    const items = await (await opened("out-of: holdings\n", "out-of: holdings\n|\n")).ask<CompletionItem[] | null>(
      "textDocument/completion",
    );
    const labels = (items ?? []).map(({ label }) => label);
    expect(labels).toContain("panel");
    expect(labels).toContain("light");
    expect(labels).not.toContain("kind");
  });

  test("a key says what it means; the outline has its keys", async () => {
    const { ask } = await opened("support: flown", "sup|port: flown");
    const hover = await ask<Hover | null>("textDocument/hover");
    expect(JSON.stringify(hover?.contents)).toContain("how the face is held");
    const symbols = (await ask<DocumentSymbol[] | null>("textDocument/documentSymbol")) ?? [];
    expect(symbols.map(({ name }) => name)).toContain("feed-from");
  });
});
