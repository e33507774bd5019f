import { PassThrough } from "node:stream";
import { pathToFileURL } from "node:url";
import type { RepositoryFiles, Rule } from "@plumbmark/core";
import { type Host, serve } from "@plumbmark/editor";
import { rules } from "@plumbmark/rules";
import { onTestFinished } from "vitest";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node.js";
import { createConnection } from "vscode-languageserver/node.js";
import type {
  Diagnostic,
  InitializeResult,
  PublishDiagnosticsParams,
  Registration,
  RegistrationParams,
} from "vscode-languageserver-protocol";
import { TODAY } from "../documents/repository.js";

/** Where the repository in memory is said to lie. */
export const ROOT = "/docs-of-the-test";

export const uriOf = (path: string): string => pathToFileURL(`${ROOT}/${path}`).href;

export interface Serving {
  readonly files: RepositoryFiles;
  readonly plugins?: readonly string[];
  readonly pluginRules?: Host["pluginRules"];
  readonly more?: readonly Rule[];
  /** Pages of the site the repository was published to. */
  readonly pages?: ReadonlySet<string>;
}

/** A client of a server that runs in this process, over the protocol all the same. */
export class Client {
  readonly #versions = new Map<string, number>();
  readonly #texts = new Map<string, string>();
  readonly #found = new Map<string, PublishDiagnosticsParams>();
  readonly logged: string[] = [];
  /** What the server asked to be told of besides. */
  readonly registered: Registration[] = [];
  #woken: () => void = () => undefined;

  private constructor(
    readonly connection: MessageConnection,
    readonly root: string,
  ) {
    connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
      this.#found.set(params.uri, params);
      this.#woken();
    });
    connection.onNotification("window/logMessage", ({ message }: { message: string }) => {
      this.logged.push(message);
    });
    connection.onRequest("client/registerCapability", ({ registrations }: RegistrationParams) => {
      this.registered.push(...registrations);
      return null;
    });
    connection.listen();
  }

  /** @param ends whether it ends with the test it was made in */
  static async of(
    { files, plugins = [], pluginRules = async () => [], more = [], pages }: Serving,
    ends = true,
  ): Promise<Client> {
    const [there, back] = [new PassThrough(), new PassThrough()];
    const connection = createConnection(new StreamMessageReader(there), new StreamMessageWriter(back));
    const { documents, parts, surveys = [], wishes = [], stock, houseStandard } = files;
    const all = [
      ...documents,
      ...wishes,
      ...parts,
      ...surveys,
      ...(stock ? [stock] : []),
      ...(houseStandard ? [houseStandard] : []),
    ];
    const texts = new Map(all.map((file) => [file.path, file.text]));
    serve(connection, {
      version: "0.0.0",
      today: () => TODAY,
      open: async (path) => {
        if (!path.startsWith(ROOT)) throw new Error(`${path} is in no docs repository`);
        const roleOf = (each: string) => (each.endsWith(".md") ? ("document" as const) : ("parts" as const));
        return { root: ROOT, files, rules: [...rules, ...more], plugins, roleOf, ...(pages ? { pages } : {}) };
      },
      text: async (path) => texts.get(path.slice(ROOT.length + 1)),
      pluginRules,
    });
    const ours = createMessageConnection(new StreamMessageReader(back), new StreamMessageWriter(there));
    if (ends) onTestFinished(() => ours.dispose());
    return Client.over(ours, ROOT);
  }

  /** A client of whatever server is at the other end; `root` is where the repository lies. */
  static async over(connection: MessageConnection, root: string, capabilities: object = {}): Promise<Client> {
    const client = new Client(connection, root);
    await client.request<InitializeResult>("initialize", { processId: process.pid, rootUri: null, capabilities });
    connection.sendNotification("initialized", {});
    return client;
  }

  uri(path: string): string {
    return pathToFileURL(`${this.root}/${path}`).href;
  }

  request<Answer>(method: string, params: object): Promise<Answer> {
    return this.connection.sendRequest(method, params);
  }

  /** The text of a document as the client has it. */
  text(path: string): string {
    return this.#texts.get(path) ?? "";
  }

  open(path: string, text: string): Promise<readonly Diagnostic[]> {
    const uri = this.uri(path);
    this.#texts.set(path, text);
    this.#versions.set(path, 1);
    this.connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "markdown", version: 1, text },
    });
    return this.found(path);
  }

  /** Replaces what stands between two offsets, and tells so by positions. */
  change(path: string, from: number, to: number, text: string): void {
    const was = this.text(path);
    const version = (this.#versions.get(path) ?? 0) + 1;
    this.#versions.set(path, version);
    const range = { start: positionOf(was, from), end: positionOf(was, to) };
    this.#texts.set(path, was.slice(0, from) + text + was.slice(to));
    this.connection.sendNotification("textDocument/didChange", {
      textDocument: { uri: this.uri(path), version },
      contentChanges: [{ range, text }],
    });
  }

  /** What is found in the newest text of a document, once it was judged. */
  async found(path: string): Promise<readonly Diagnostic[]> {
    const uri = this.uri(path);
    const end = performance.now() + 60_000;
    for (;;) {
      const told = this.#found.get(uri);
      if (told?.version === this.#versions.get(path)) return told?.diagnostics ?? [];
      if (performance.now() > end)
        throw new Error(`nothing was told of ${path} in version ${this.#versions.get(path)}`);
      await new Promise<void>((resolve) => {
        this.#woken = resolve;
        setTimeout(resolve, 1000);
      });
    }
  }

  /** Waits until what is told of a document is as asked for. */
  async until(path: string, wanted: (diagnostics: readonly Diagnostic[]) => boolean): Promise<readonly Diagnostic[]> {
    const end = performance.now() + 30_000;
    for (;;) {
      const told = this.#found.get(this.uri(path))?.diagnostics ?? [];
      if (wanted(told)) return told;
      if (performance.now() > end) throw new Error(`what is told of ${path} stays ${JSON.stringify(told)}`);
      await new Promise<void>((resolve) => {
        this.#woken = resolve;
        setTimeout(resolve, 250);
      });
    }
  }
}

/** The position of an offset, by the lines of the protocol (3.17, Position): UTF-16 code units from 0. */
export function positionOf(text: string, offset: number): { readonly line: number; readonly character: number } {
  const before = text.slice(0, offset);
  const lines = before.split(/\r\n|\n|\r/u);
  // Between the two characters of a line end there is no position: it is the end of the line.
  if (before.endsWith("\r") && text[offset] === "\n")
    return { line: lines.length - 2, character: (lines.at(-2) as string).length };
  return { line: lines.length - 1, character: (lines.at(-1) as string).length };
}

interface Range {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** What stands at a range; undefined where it is not within the text. */
export function textAt(text: string, { start, end }: Range): string | undefined {
  const starts = [0];
  for (const { index, 0: mark } of text.matchAll(/\r\n|\n|\r/gu)) starts.push(index + mark.length);
  const lengths = text.split(/\r\n|\n|\r/u).map(({ length }) => length);
  const offset = ({ line, character }: Range["start"]): number => {
    const length = lengths[line];
    return length === undefined || character > length ? Number.NaN : (starts[line] as number) + character;
  };
  const [from, to] = [offset(start), offset(end)];
  return Number.isNaN(from) || Number.isNaN(to) || from > to ? undefined : text.slice(from, to);
}

/** A text with the edits of an answer made in it. */
export function withEdits(text: string, edits: readonly { readonly range: Range; readonly newText: string }[]): string {
  const starts = [0];
  for (const { index, 0: mark } of text.matchAll(/\r\n|\n|\r/gu)) starts.push(index + mark.length);
  const offset = ({ line, character }: Range["start"]): number => (starts[line] ?? text.length) + character;
  return [...edits]
    .sort((one, other) => offset(other.range.start) - offset(one.range.start))
    .reduce(
      (made, { range, newText }) => made.slice(0, offset(range.start)) + newText + made.slice(offset(range.end)),
      text,
    );
}
