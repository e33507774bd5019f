import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { describe, expect, inject, test, vi } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc/node.js";
import type { Diagnostic, Hover, Location, WorkspaceEdit } from "vscode-languageserver-protocol";
import { positionOf } from "../client.js";
import { live, rewrite, starterOnDisk, textOn } from "./process.js";

// The built server in a process of its own, as an editor starts it (Language Server Protocol 3.17).

vi.setConfig({ testTimeout: 240_000 });

const BANNER = "builds/over-stage-banner.md";
const rulesOf = (found: readonly Diagnostic[]): readonly string[] => found.map(({ code }) => String(code)).sort();

/** The banner of a repository on the disk, open in an editor. */
async function opened(root = starterOnDisk()) {
  const all = await live(root);
  const text = textOn(root, BANNER);
  const found = await all.client.open(BANNER, text);
  const at = (words: string, more = 0) => ({
    textDocument: { uri: all.client.uri(BANNER) },
    position: positionOf(text, text.indexOf(words) + more),
  });
  return { ...all, root, text, found, at };
}

describe("files that are changed on the disk", () => {
  test("a part that weighs ten times as much: the document that hangs it is judged again, and back", async () => {
    const { client, root, found, tell } = await opened();
    rewrite(root, "parts/panels.yaml", "mass: 7.9 kg", "mass: 79 kg");
    tell("parts/panels.yaml");
    const heavier = await client.until(BANNER, (all) => rulesOf(all).includes("rigging.bar-strength"));
    expect(rulesOf(heavier)).toContain("rigging.lift");
    rewrite(root, "parts/panels.yaml", "mass: 79 kg", "mass: 7.9 kg");
    tell("parts/panels.yaml");
    const back = await client.until(BANNER, (all) => all.length === found.length);
    expect(back).toEqual(found);
  });

  test("the editor is asked to tell of every kind of file the findings rest on", async () => {
    const { client } = await opened();
    const watched = client.registered.map(({ method, registerOptions }) => [method, registerOptions]);
    const kinds = ["**/*.{md,yaml,yml}", "**/letters/**", "**/site/{builds,rules}/*.html"];
    const watchers = kinds.map((globPattern) => ({ globPattern }));
    expect(watched).toEqual([["workspace/didChangeWatchedFiles", { watchers }]]);
  });

  test("another document of the same name comes and goes", async () => {
    const { client, root, text, found, tell } = await opened();
    const other = "builds/copy.md";
    writeFileSync(join(root, other), text);
    tell(other);
    const doubled = await client.until(BANNER, (all) => rulesOf(all).includes("document.identity"));
    expect(doubled.map(({ message }) => String(message)).join("\n")).toContain(other);
    rmSync(join(root, other));
    tell(other);
    expect(await client.until(BANNER, (all) => all.length === found.length)).toEqual(found);
  });

  test("a file that is open counts as it is in the editor, whatever the disk says", async () => {
    const { client, root, text, tell } = await opened();
    client.change(BANNER, text.indexOf("trim: 11 ft"), text.indexOf("trim: 11 ft") + "trim".length, "trimm");
    const mistaken = await client.found(BANNER);
    expect(rulesOf(mistaken)).toContain("document.front-matter");
    rewrite(root, BANNER, "title: ", "title: Another ");
    rewrite(root, "parts/panels.yaml", "mass: 7.9 kg", "mass: 79 kg");
    tell(BANNER, "parts/panels.yaml");
    const heavier = await client.until(BANNER, (all) => rulesOf(all).includes("rigging.lift"));
    expect(rulesOf(heavier)).toContain("document.front-matter");
  });

  test("a lot is renamed in the wishes that are on the disk, too, and in one that is new", async () => {
    const root = starterOnDisk();
    const wish = (name: string): string => `wish: ${name}\ntitle: x\nout-of: lot-2431\n`;
    mkdirSync(join(root, "wishes"), { recursive: true });
    writeFileSync(join(root, "wishes/one.yaml"), wish("one"));
    const { client, at, tell } = await opened(root);
    writeFileSync(join(root, "wishes/two.yaml"), wish("two"));
    tell("wishes/two.yaml");
    const where = at("lot: lot-2431", "lot: ".length);
    const { changes } = await vi.waitFor(async () => {
      const found = await client.request<WorkspaceEdit>("textDocument/rename", { ...where, newName: "lot-9999" });
      expect(Object.keys(found.changes ?? {})).toContain(client.uri("wishes/two.yaml"));
      return found;
    }, 20_000);
    const touched = Object.keys(changes ?? {});
    for (const path of [BANNER, "stock.yaml", "wishes/one.yaml"]) expect(touched).toContain(client.uri(path));
  });

  test("a house standard nobody can read: the last one goes on to be used, and the server goes on", async () => {
    const { client, root, at, found, tell } = await opened();
    const sound = textOn(root, "house-standard.yaml");
    writeFileSync(join(root, "house-standard.yaml"), `${sound}\n\t: {\n`);
    tell("house-standard.yaml");
    await vi.waitFor(() => expect(client.logged.join("\n")).toContain("house-standard.yaml"), { timeout: 60_000 });
    const hover = await client.request<Hover | null>("textDocument/hover", at("panel: tile", "panel: ".length));
    expect(JSON.stringify(hover)).toContain("parts/panels.yaml");
    writeFileSync(join(root, "house-standard.yaml"), sound);
    rewrite(root, "parts/panels.yaml", "mass: 7.9 kg", "mass: 79 kg");
    tell("house-standard.yaml", "parts/panels.yaml");
    expect((await client.until(BANNER, (all) => rulesOf(all).includes("rigging.lift"))).length).toBeGreaterThan(
      found.length,
    );
  });

  test("a repository that could not be read when a document was opened is read once it is put right", async () => {
    const root = starterOnDisk();
    const sound = textOn(root, "house-standard.yaml");
    writeFileSync(join(root, "house-standard.yaml"), "documents: [builds/*.md\n");
    const { client, tell } = await live(root);
    const text = textOn(root, BANNER).replace("trim: 11 ft", "trimm: 11 ft");
    const [refused] = await client.open(BANNER, text);
    expect(refused?.message).toMatch(/not inspected[\s\S]*house-standard\.yaml[\s\S]*line 1, column 12/u);
    const standard = await client.open("house-standard.yaml", textOn(root, "house-standard.yaml"));
    // What is not closed is told where it begins.
    expect(standard[0]?.range.start).toEqual({ line: 0, character: "documents: ".length });
    writeFileSync(join(root, "house-standard.yaml"), sound);
    tell("house-standard.yaml");
    await client.until(BANNER, (all) => rulesOf(all).includes("document.front-matter"));
  });
});

/** Each reads a large repository: an ordinary run asks one of the three, another each time, and a deep run all. */
const { deep, seed } = inject("effort");
const isTried = (which: number): boolean => deep || seed % 3 === which;

describe("answers nobody wants any more", () => {
  /** So many documents that name the same part that looking through them takes a while. */
  const MANY = 80;
  function largeRepository(): string {
    const root = starterOnDisk();
    const text = textOn(root, BANNER);
    mkdirSync(join(root, "builds/more"));
    for (let number = 1; number <= MANY; number += 1)
      writeFileSync(
        join(root, `builds/more/banner-${number}.md`),
        text
          .replace("build: over-stage-banner", `build: banner-${number}`)
          .replace("status: for-build", "status: draft"),
      );
    return root;
  }
  const references = { context: { includeDeclaration: true } };

  test.runIf(isTried(0))("one in a large repository stops while it is worked out, and the server goes on", async () => {
    const { client, text, at } = await opened(largeRepository());
    const panel = at("panel: tile", "panel: ".length);
    const source = new CancellationTokenSource();
    let isDone = false;
    const asked = client.connection.sendRequest("textDocument/references", { ...panel, ...references }, source.token);
    const ends = asked.finally(() => {
      isDone = true;
    });
    // What is asked later is answered while the earlier is worked out: so it has begun, and is not at its end.
    await client.request("textDocument/foldingRange", panel);
    expect(isDone).toBe(false);
    source.cancel();
    await expect(ends).rejects.toMatchObject({ code: -32800 });

    const hover = await client.request<Hover | null>("textDocument/hover", panel);
    expect(JSON.stringify(hover)).toContain("parts/panels.yaml");
    client.change(BANNER, text.indexOf("trim: 11 ft"), text.indexOf("trim: 11 ft") + "trim".length, "trimm");
    expect(rulesOf(await client.found(BANNER))).toContain("document.front-matter");
    const whole = await client.request<Location[]>("textDocument/references", { ...panel, ...references });
    expect(whole.length).toBeGreaterThan(MANY);
  });

  test.runIf(isTried(1))("one whose repository is still being read stops, too", async () => {
    const root = largeRepository();
    const { client } = await live(root);
    const source = new CancellationTokenSource();
    const asked = client.connection.sendRequest(
      "textDocument/hover",
      { textDocument: { uri: client.uri(BANNER) }, position: { line: 1, character: 1 } },
      source.token,
    );
    const ends: string[] = [];
    const cancelled = expect(asked.finally(() => ends.push("cancelled"))).rejects.toMatchObject({ code: -32800 });
    const other = client.request("textDocument/foldingRange", { textDocument: { uri: client.uri(BANNER) } });
    const answered = other.finally(() => ends.push("answered"));
    // Reading so many documents takes seconds; it has begun by then.
    await setTimeout(100);
    source.cancel();
    await Promise.all([cancelled, answered]);
    expect(ends).toEqual(["cancelled", "answered"]);
    expect((await client.open(BANNER, textOn(root, BANNER))).length).toBeLessThan(20);
  });

  test.runIf(isTried(2))("a text that changes meanwhile: places of two states are not mixed", async () => {
    const { client, text, at } = await opened(largeRepository());
    const asked = client.request("textDocument/references", { ...at("panel: tile", "panel: ".length), ...references });
    const ends = expect(asked).rejects.toMatchObject({ code: -32801 });
    client.change(BANNER, text.indexOf("title:"), text.indexOf("title:"), "\n");
    await ends;
  });
});

describe("the end", () => {
  test("after `shutdown` and `exit` the status is 0 (LSP 3.17, exit)", async () => {
    const { client, ended } = await opened();
    await client.request("shutdown", {});
    client.connection.sendNotification("exit");
    expect(await ended).toBe(0);
  });
  test("after `exit` alone it is 1, and so where the editor is gone", async () => {
    const one = await opened();
    one.client.connection.sendNotification("exit");
    expect(await one.ended).toBe(1);
    const other = await opened();
    other.server.stdin.end();
    expect(await other.ended).toBe(1);
  });
});
