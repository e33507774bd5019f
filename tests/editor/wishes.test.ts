import { readdirSync, readFileSync } from "node:fs";
import { openRepository, readSurveys } from "@plumbmark/core";
import { readWish } from "@plumbmark/draft";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { describe, expect, test } from "vitest";
import type { CompletionItem, DocumentSymbol, Hover, Location, TextEdit } from "vscode-languageserver-protocol";
import { starter, TODAY } from "../documents/repository.js";
import { notEmpty } from "../run/not-empty.js";
import { Client, positionOf, uriOf, withEdits } from "./client.js";

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

const folder = (name: string) =>
  readdirSync(`${starterRepository}/${name}`).map((file) => ({
    path: `${name}/${file}`,
    text: readFileSync(`${starterRepository}/${name}/${file}`, "utf8"),
  }));
const wishes = folder("wishes");
const halls = folder("venues");
/** The starter with its wishes and the surveys they are about. */
const files = { ...starter(), surveys: halls, wishes };

/** A name at a place of a file of it, in an editor. */
async function named(path: string, text: string, before: string) {
  const client = await Client.of({ files });
  await client.open(path, text);
  const at = text.indexOf(before) + before.length;
  if (at < before.length) throw new Error(`${path} has no ${before}`);
  const of = { textDocument: { uri: uriOf(path) }, position: positionOf(text, at) };
  return <Answer>(method: string, more: object = {}) => client.request<Answer>(method, { ...of, ...more });
}

interface Renamed {
  readonly changes: Record<string, TextEdit[]>;
}

const hall = halls.find(({ path }) => path === HALL)?.text ?? "";

describe("names of a venue and of what is owned are those of the wishes, too", () => {
  test.each([
    ["a venue, from its survey", HALL, hall, "survey: ", "harbour-hall"],
    ["a circuit, from its survey", HALL, hall, "panel schedule\n  ", "stage-9"],
    ["a place, from a wish", PATH, WISH, "data: ", "rack-q"],
    ["a structure, from a wish", PATH, WISH, "under: ", "first-beam"],
    ["a circuit, from a wish", PATH, WISH, "power: [", "stage-9"],
    ["a lot, from a wish", "wishes/summer-strip.yaml", "", "out-of: ", "lot-9999"],
  ])("%s is renamed everywhere", async (_, path, given, before, to) => {
    const text = given === "" ? (wishes.find((each) => each.path === path)?.text ?? "") : given;
    const ask = await named(path, text, before);
    const { changes } = await ask<Renamed>("textDocument/rename", { newName: to });
    const touched = Object.keys(changes).map((uri) => decodeURIComponent(uri.slice(uriOf("").length)));
    expect(touched.filter((each) => each.startsWith("wishes/")).length).toBeGreaterThan(0);
    expect(touched.filter((each) => !each.startsWith("wishes/")).length).toBeGreaterThan(0);
    const opened = openRepository(files, rules, { today: TODAY });
    for (const [uri, edits] of notEmpty(Object.entries(changes))) {
      const at = decodeURIComponent(uri.slice(uriOf("").length));
      const all = [
        ...files.documents,
        ...files.surveys,
        ...files.wishes,
        ...files.parts,
        ...[files.stock ?? []].flat(),
      ];
      opened.replace(at, withEdits(all.find((each) => each.path === at)?.text ?? "", edits));
    }
    const { byName } = readSurveys(opened.files.surveys ?? []);
    const was = readSurveys(halls).byName;
    for (const wish of notEmpty(opened.files.wishes ?? [])) {
      const before = wishes.find((each) => each.path === wish.path);
      expect(readWish(wish, byName).mistakes.length).toBe(before ? readWish(before, was).mistakes.length : -1);
    }
    const [name] = /[\w-]+/u.exec(text.slice(text.indexOf(before) + before.length)) ?? [];
    const left = (opened.files.wishes ?? []).filter(
      (wish) => touched.includes(wish.path) && new RegExp(`(?<![\\w-])${name}(?![\\w-])`, "u").test(wish.text),
    );
    expect(left.map((each) => each.path)).toEqual([]);
  });

  test("what a wish is fed from leads to the survey", async () => {
    const ask = await named(PATH, WISH, "power: [");
    const found = await ask<Location | Location[] | null>("textDocument/definition");
    expect([found ?? []].flat().map(({ uri }) => uri)).toEqual([uriOf(HALL)]);
  });

  test("the facts a wish writes of a venue are its own, and none of another wish", async () => {
    const facts = (name: string) =>
      `wish: ${name}\ntitle: x\nvenue:\n  circuits:\n    c-1: {breaker: 20 A}\n  structure:\n    b-1: {points: {p-1: {at: 1 m}}}\nover: {under: b-1}\nfeed-from: {power: [c-1]}\n`;
    const [own, other] = ["wishes/one.yaml", "wishes/other.yaml"].map((path) => ({
      path,
      text: facts(path.slice(7, -5)),
    }));
    const both = { ...files, wishes: [own, other].flatMap((each) => each ?? []) };
    const client = await Client.of({ files: both });
    const text = facts("one");
    await client.open("wishes/one.yaml", text);
    const textDocument = { uri: uriOf("wishes/one.yaml") };
    for (const [name, newName] of [
      ["c-1", "c-2"],
      ["b-1", "b-2"],
    ] as const) {
      const position = positionOf(text, text.lastIndexOf(name));
      const { changes } = await client.request<Renamed>("textDocument/rename", { textDocument, position, newName });
      expect(Object.keys(changes)).toEqual([uriOf("wishes/one.yaml")]);
      expect(withEdits(text, changes[uriOf("wishes/one.yaml")] ?? [])).toBe(text.replaceAll(name, newName));
    }
  });

  test("the name of a wish is none of a build's", async () => {
    const ask = await named(PATH, WISH, "wish: ");
    const { changes } = await ask<Renamed>("textDocument/rename", { newName: "may-banner" });
    expect(Object.keys(changes)).toEqual([uriOf(PATH)]);
  });

  test("a lot, the holdings and the catalogue are offered to be made out of", async () => {
    const items = await (await opened("out-of: holdings\n", "out-of: |\n")).ask<CompletionItem[] | null>(
      "textDocument/completion",
    );
    expect((items ?? []).map(({ label }) => label)).toEqual(
      expect.arrayContaining(["holdings", "catalogue", "lot-2431"]),
    );
  });
});
