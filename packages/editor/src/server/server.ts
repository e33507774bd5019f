import { dirname, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import {
  type CancellationToken,
  CodeActionKind,
  type CodeActionParams,
  type Connection,
  type Diagnostic,
  DidChangeWatchedFilesNotification,
  FoldingRangeKind,
  type InitializeParams,
  type InitializeResult,
  LSPErrorCodes,
  type Position,
  ResponseError,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver/node.js";
import { TextDocument } from "vscode-languageserver-textdocument";
import {
  type CursorPoint,
  type Finding,
  foldsIn,
  guessActions,
  hintsIn,
  hoverAt,
  linksIn,
  type Mention,
  mendActions,
  mentionAt,
  type OpenedFile,
  outlineOfFile,
  publishedRule,
  refusalOf,
  sameNames,
  suggestionsAt,
  venueActions,
} from "../answers/index.js";
import { actionOf, completionItemOf, cursorPointOf, diagnosticOf, rangeOf, symbolOf, textEditsOf } from "./convert.js";
import type { Host } from "./host.js";
import { Session } from "./session.js";

/** A person stops typing: only then are plugins asked, which takes a process of their own. */
const PLUGINS_AFTER_MS = 400;
/** At which figures findings turn is worked out once nobody has typed for a moment. */
const TURNS_AFTER_MS = 250;
/** Several files are saved together. */
const REFRESH_AFTER_MS = 150;

const COMPLETES_AT = [" ", ":", "{", "[", ",", "(", ".", "-"];

/** Lets what arrived meanwhile be looked at first: another change, or that an answer is not wanted any more. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

const cancelled = (): ResponseError<void> =>
  new ResponseError(LSPErrorCodes.RequestCancelled, "The answer is not wanted any more.");

/** A place in the files of one docs repository. */
interface Located {
  readonly session: Session;
  readonly path: string;
}

class Server {
  readonly #documents = new TextDocuments(TextDocument);
  readonly #sessions = new Map<string, Promise<Session | undefined>>();
  /** What was told of a file last, so that the same is not told again. */
  readonly #told = new Map<string, string>();
  readonly #dirty = new Set<Session>();
  #plugins: NodeJS.Timeout | undefined;
  #turns: NodeJS.Timeout | undefined;
  #refresh: NodeJS.Timeout | undefined;
  #watches = false;
  #isLooking = false;

  constructor(
    readonly connection: Connection,
    readonly host: Host,
  ) {}

  listen(): void {
    const { connection } = this;
    connection.onInitialize((params) => this.#initialize(params));
    connection.onInitialized(() => this.#initialized());
    connection.onShutdown(() => this.#stop());
    this.#documents.onDidOpen(({ document }) => this.#change(document));
    this.#documents.onDidChangeContent(({ document }) => this.#change(document));
    this.#documents.onDidClose(({ document }) => this.#close(document));
    this.#documents.onDidSave(() => this.#later());
    connection.onDidChangeWatchedFiles(() => this.#later());
    this.#answers();
    this.#documents.listen(connection);
    connection.listen();
  }

  #initialize({ capabilities }: InitializeParams): InitializeResult {
    this.#watches = capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration === true;
    return {
      serverInfo: { name: "plumbmark", version: this.host.version },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
        completionProvider: { triggerCharacters: COMPLETES_AT },
        hoverProvider: true,
        inlayHintProvider: true,
        codeActionProvider: {
          codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, CodeActionKind.SourceFixAll],
        },
        definitionProvider: true,
        referencesProvider: true,
        renameProvider: { prepareProvider: true },
        documentSymbolProvider: true,
        foldingRangeProvider: true,
        documentLinkProvider: {},
      },
    };
  }

  async #initialized(): Promise<void> {
    if (!this.#watches) return;
    await this.connection.client.register(DidChangeWatchedFilesNotification.type, {
      // Of letters and pages of the published site it counts whether they are there.
      watchers: ["**/*.{md,yaml,yml}", "**/letters/**", "site/**/*.html"].map((globPattern) => ({ globPattern })),
    });
  }

  #stop(): void {
    for (const timer of [this.#plugins, this.#turns, this.#refresh]) clearTimeout(timer);
  }

  // Where a file belongs

  async #locate(uri: string): Promise<Located | undefined> {
    if (!uri.startsWith("file:")) return undefined;
    const path = fileURLToPath(uri);
    for (const [root, opening] of this.#sessions) {
      const session = await opening;
      if (session && (path === root || path.startsWith(root + sep)))
        return { session, path: relative(root, path).split(sep).join("/") };
    }
    return this.#open(path);
  }

  async #open(path: string): Promise<Located | undefined> {
    const folder = dirname(path);
    const key = `${folder}\u0000`;
    const opening = this.#sessions.get(key) ?? this.#read(path, key);
    this.#sessions.set(key, opening);
    const session = await opening;
    if (!session) return undefined;
    const from = relative(session.root, path).split(sep).join("/");
    return from.startsWith("../") ? undefined : { session, path: from };
  }

  async #read(path: string, key: string): Promise<Session | undefined> {
    try {
      const disk = await this.host.open(path);
      const known = await this.#sessions.get(disk.root);
      if (known) return known;
      const session = new Session(disk, this.host);
      this.#sessions.set(disk.root, Promise.resolve(session));
      return session;
    } catch (error) {
      this.connection.console.warn(error instanceof Error ? error.message : String(error));
      // It may be put right: the next question tries again.
      setTimeout(() => this.#sessions.delete(key), PLUGINS_AFTER_MS).unref();
      return undefined;
    }
  }

  readonly #uri =
    (session: Session) =>
    (path: string): string =>
      pathToFileURL(`${session.root}/${path}`).href;

  // What changes

  async #change(document: TextDocument): Promise<void> {
    const located = await this.#locate(document.uri);
    // A later change of the same document may have come first.
    const text = this.#documents.get(document.uri)?.getText();
    if (!located || text === undefined) return;
    await located.session.put(located.path, text);
    this.#look(located.session);
  }

  async #close(document: TextDocument): Promise<void> {
    const located = await this.#locate(document.uri);
    if (!located) return;
    await located.session.put(located.path, undefined);
    this.#told.delete(document.uri);
    void this.connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    this.#look(located.session);
  }

  /** Reads the disk again once what is being saved is saved. */
  #later(): void {
    clearTimeout(this.#refresh);
    this.#refresh = setTimeout(() => void this.#refreshAll(), REFRESH_AFTER_MS);
  }

  async #refreshAll(): Promise<void> {
    const sessions = new Set((await Promise.all(this.#sessions.values())).filter((session) => session !== undefined));
    for (const session of sessions)
      try {
        await session.refresh();
        this.#look(session);
      } catch (error) {
        this.connection.console.warn(error instanceof Error ? error.message : String(error));
      }
  }

  // What is found

  #look(session: Session): void {
    this.#dirty.add(session);
    if (session.hasPlugins) this.#askPlugins(session);
    if (this.#isLooking) return;
    this.#isLooking = true;
    void this.#lookAll().finally(() => {
      this.#isLooking = false;
    });
  }

  async #lookAll(): Promise<void> {
    for (let [session] = this.#dirty; session; [session] = this.#dirty) {
      this.#dirty.delete(session);
      for (const document of this.#documents.all()) {
        await turn();
        // A change that came meanwhile has everything looked at again.
        if (this.#dirty.has(session)) break;
        const located = await this.#locate(document.uri);
        if (located?.session === session) this.#tell(located, document);
      }
    }
    clearTimeout(this.#turns);
    this.#turns = setTimeout(() => void this.#turnAll(), TURNS_AFTER_MS);
  }

  /** Tells at which figures findings turn, which takes longer than finding them. */
  async #turnAll(): Promise<void> {
    for (const document of this.#documents.all()) {
      await turn();
      const located = await this.#locate(document.uri);
      if (this.#dirty.size > 0 || this.#isLooking) return;
      try {
        if (located?.session.turn(located.path)) this.#tell(located, document);
      } catch (error) {
        this.connection.console.warn(error instanceof Error ? error.message : String(error));
      }
    }
  }

  #tell({ session, path }: Located, { uri, version }: TextDocument): void {
    const diagnostics = this.#diagnostics(session, path);
    const text = JSON.stringify(diagnostics);
    // The version tells which text it is of, so it is told for every one that was judged.
    const mark = `${version} ${text}`;
    if (this.#told.get(uri) === mark) return;
    this.#told.set(uri, mark);
    void this.connection.sendDiagnostics({ uri, version, diagnostics });
  }

  #diagnostics(session: Session, path: string): Diagnostic[] {
    const found = session.findings(path).map((finding) => this.#diagnosticOf(session, finding));
    const { problem } = session;
    if (problem?.path !== path) return found;
    const at = { line: problem.line, column: problem.column, endLine: problem.line, endColumn: problem.column };
    return [
      { range: rangeOf(at), severity: 1, source: "plumbmark", code: "house-standard", message: problem.says },
      ...found,
    ];
  }

  #diagnosticOf(session: Session, finding: Finding): Diagnostic {
    return diagnosticOf(finding, this.#uri(session), publishedRule(session, finding.rule));
  }

  #askPlugins(session: Session): void {
    clearTimeout(this.#plugins);
    this.#plugins = setTimeout(() => {
      void session
        .askPlugins()
        .then((came) => {
          if (!came) return;
          this.#dirty.add(session);
          void this.#lookAll();
        })
        .catch((error: unknown) =>
          this.connection.console.warn(error instanceof Error ? error.message : String(error)),
        );
    }, PLUGINS_AFTER_MS);
  }

  // What is asked

  /** Answers about a file at its newest text; nothing where it belongs to no docs repository. */
  async #about<Answer>(
    uri: string,
    token: CancellationToken,
    answer: (file: OpenedFile, located: Located) => Answer,
  ): Promise<Answer | null> {
    await turn();
    const located = await this.#locate(uri);
    if (token.isCancellationRequested) throw cancelled();
    if (!located) return null;
    const text = this.#documents.get(uri)?.getText();
    if (text !== undefined) located.session.replace(located.path, text);
    const file = located.session.file(located.path);
    return file ? answer(text === undefined || text === file.text ? file : { ...file, text }, located) : null;
  }

  #named(file: OpenedFile, position: Position): Mention | undefined {
    return mentionAt(file.repository, file, cursorPointOf(position));
  }

  #answers(): void {
    const { connection } = this;
    connection.onCompletion(async ({ textDocument, position }, token) =>
      this.#about(textDocument.uri, token, (file) =>
        suggestionsAt(file, cursorPointOf(position)).map(completionItemOf),
      ),
    );
    connection.onHover(async ({ textDocument, position }, token) =>
      this.#about(textDocument.uri, token, (file) => {
        const told = hoverAt(file, cursorPointOf(position));
        return told ? { contents: { kind: "markdown" as const, value: told.text }, range: rangeOf(told.place) } : null;
      }),
    );
    connection.languages.inlayHint.on(async ({ textDocument, range }, token) =>
      this.#about(textDocument.uri, token, (file) =>
        hintsIn(file, range.start.line + 1, range.end.line + 1).map(({ place, text }) => ({
          position: rangeOf(place).start,
          label: text,
          paddingLeft: true,
        })),
      ),
    );
    connection.onCodeAction(async (params, token) =>
      this.#about(params.textDocument.uri, token, (file, located) => this.#actions(file, located, params)),
    );
    connection.onDefinition(async ({ textDocument, position }, token) =>
      this.#about(textDocument.uri, token, (file, { session }) => {
        const named = this.#named(file, position);
        const all = named ? sameNames(file.repository, named).filter(({ defines }) => defines) : [];
        return all.map(({ path, place }) => ({ uri: this.#uri(session)(path), range: rangeOf(place) }));
      }),
    );
    connection.onReferences(async ({ textDocument, position, context }, token) =>
      this.#about(textDocument.uri, token, (file, { session }) => {
        const named = this.#named(file, position);
        const all = named ? sameNames(file.repository, named) : [];
        return all
          .filter(({ defines }) => context.includeDeclaration || !defines)
          .map(({ path, place }) => ({ uri: this.#uri(session)(path), range: rangeOf(place) }));
      }),
    );
    connection.onPrepareRename(async ({ textDocument, position }, token) =>
      this.#about(textDocument.uri, token, (file) => {
        const named = this.#named(file, position);
        const isWritten = named && sameNames(file.repository, named).some(({ defines }) => defines);
        return isWritten ? { range: rangeOf(named.place), placeholder: named.name } : null;
      }),
    );
    connection.onRenameRequest(async ({ textDocument, position, newName }, token) =>
      this.#about(textDocument.uri, token, (file, { session }) => {
        const named = this.#named(file, position);
        if (!named) return null;
        const refusal = refusalOf(file.repository, named, newName);
        if (refusal !== undefined) throw new ResponseError(LSPErrorCodes.RequestFailed, refusal);
        const changes: Record<string, { range: ReturnType<typeof rangeOf>; newText: string }[]> = {};
        for (const { path, place } of sameNames(file.repository, named)) {
          const uri = this.#uri(session)(path);
          changes[uri] = [...(changes[uri] ?? []), { range: rangeOf(place), newText: newName }];
        }
        return { changes };
      }),
    );
    connection.onDocumentSymbol(async ({ textDocument }, token) =>
      this.#about(textDocument.uri, token, (file) => outlineOfFile(file).map(symbolOf)),
    );
    connection.onFoldingRanges(async ({ textDocument }, token) =>
      this.#about(textDocument.uri, token, (file) =>
        foldsIn(file).map(({ from, to }) => ({ startLine: from - 1, endLine: to - 1, kind: FoldingRangeKind.Region })),
      ),
    );
    connection.onDocumentLinks(async ({ textDocument }, token) =>
      this.#about(textDocument.uri, token, (file, { session }) =>
        linksIn(file).map(({ place, target, fragment }) => ({
          range: rangeOf(place),
          target: `${this.#uri(session)(target)}${fragment === undefined ? "" : `#${encodeURIComponent(fragment)}`}`,
        })),
      ),
    );
  }

  #actions(file: OpenedFile, { session, path }: Located, { textDocument: { uri }, range, context }: CodeActionParams) {
    const [from, to]: readonly CursorPoint[] = [cursorPointOf(range.start), cursorPointOf(range.end)];
    if (!from || !to) return [];
    session.turn(path);
    const findings = session.findings(path);
    const here = findings.filter(({ place }) => place.line <= to.line && place.endLine >= from.line);
    const wants = (kind: string): boolean =>
      !context.only || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
    const mends = [...mendActions(file, here), ...venueActions(file, here)].map((action) => {
      const own = action.finding ? [this.#diagnosticOf(session, action.finding)] : [];
      return actionOf(action, uri, own);
    });
    const guesses = guessActions(file, from).map((action) => actionOf(action, uri, []));
    const sure = mendActions(file, findings).filter((action) => action.sure);
    const all =
      sure.length === 0
        ? []
        : [
            {
              title: "Put right everything here that has one answer",
              kind: CodeActionKind.SourceFixAll,
              edit: { changes: { [uri]: apartEdits(sure.flatMap(textEditsOf)) } },
            },
          ];
    return [...mends, ...guesses, ...all].filter(({ kind }) => wants(kind ?? ""));
  }
}

type Edit = ReturnType<typeof textEditsOf>[number];

/** Edits of which no two overlap: an editor takes no others. */
function apartEdits(edits: readonly Edit[]): Edit[] {
  const isBefore = (one: Position, other: Position): boolean =>
    one.line < other.line || (one.line === other.line && one.character <= other.character);
  const sorted = [...edits].sort((one, other) => (isBefore(one.range.start, other.range.start) ? -1 : 1));
  const kept: Edit[] = [];
  for (const each of sorted) {
    const last = kept.at(-1);
    if (!last || isBefore(last.range.end, each.range.start)) kept.push(each);
  }
  return kept;
}

/** Serves a client of the Language Server Protocol 3.17 over a connection. */
export function serve(connection: Connection, host: Host): void {
  new Server(connection, host).listen();
}
