import { dirname, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import {
  CodeActionKind,
  type Connection,
  type Diagnostic,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver/node.js";
import { TextDocument } from "vscode-languageserver-textdocument";
import { publishedRule } from "../answers/index.js";
import { inSteps, turn, untilCancelled } from "./cancelling.js";
import { diagnosticOf, rangeOf } from "./convert.js";
import type { Host } from "./host.js";
import type { About } from "./question.js";
import { answerQuestions } from "./questions.js";
import { refusedDiagnostics } from "./refused.js";
import { Session } from "./session.js";

/** A person stops typing: only then are plugins asked, which takes a process of their own. */
const PLUGINS_AFTER_MS = 400;
/** At which figures findings turn is worked out once nobody has typed for a moment. */
const TURNS_AFTER_MS = 250;
/** How soon it is tried again to read a docs repository that could not be read. */
const RETRY_AFTER_MS = 400;
/** Several files are saved together. */
const REFRESH_AFTER_MS = 150;

const COMPLETES_AT = [" ", ":", "{", "[", ",", "(", ".", "-"];

/** Of letters and of pages of the published site it counts whether they are there. */
const WATCHED = ["**/*.{md,yaml,yml}", "**/letters/**", "**/site/{builds,rules}/*.html"];

/** A place in the files of one docs repository. */
interface Located {
  readonly session: Session;
  readonly path: string;
}

/** Under which a folder's docs repository is known; its root is known by its path alone. */
const folderKey = (path: string): string => `${dirname(path)}\u0000`;

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

class Server {
  readonly #documents = new TextDocuments(TextDocument);
  readonly #sessions = new Map<string, Promise<Session | undefined>>();
  /** Why files of a folder are in no docs repository that can be read. */
  readonly #refusals = new Map<string, string>();
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
    // A document that is opened is told as one that changed, too.
    this.#documents.onDidChangeContent(({ document }) => this.#go(this.#change(document)));
    this.#documents.onDidClose(({ document }) => this.#go(this.#close(document)));
    this.#documents.onDidSave(() => this.#later());
    connection.onDidChangeWatchedFiles(() => this.#later());
    answerQuestions(connection, this.#about);
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
      watchers: WATCHED.map((globPattern) => ({ globPattern })),
    });
  }

  /** What fails is told, and the server goes on. */
  #go(work: Promise<void>): void {
    work.catch((error: unknown) => this.connection.console.error(reasonOf(error)));
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
    const key = folderKey(path);
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
      this.#refusals.delete(key);
      const known = await this.#sessions.get(disk.root);
      if (known) return known;
      const session = new Session(disk, this.host);
      this.#sessions.set(disk.root, Promise.resolve(session));
      return session;
    } catch (error) {
      const reason = reasonOf(error);
      // It is asked for again and again.
      if (this.#refusals.get(key) !== reason) this.connection.console.warn(reason);
      this.#refusals.set(key, reason);
      // It may be put right: the next question tries again.
      setTimeout(() => this.#sessions.delete(key), RETRY_AFTER_MS).unref();
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
    if (text === undefined) return;
    if (!located) return this.#refuse(document);
    await located.session.put(located.path, text);
    this.#look(located.session);
  }

  #refusalOf({ uri }: TextDocument): string | undefined {
    return uri.startsWith("file:") ? this.#refusals.get(folderKey(fileURLToPath(uri))) : undefined;
  }

  /** Tells in a file of no docs repository that can be read why nothing is found in it. */
  #refuse(document: TextDocument): void {
    const reason = this.#refusalOf(document);
    if (reason === undefined) return;
    this.#send(document, refusedDiagnostics(fileURLToPath(document.uri), document.getText(), reason));
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
    for (const key of this.#refusals.keys()) this.#sessions.delete(key);
    const sessions = new Set((await Promise.all(this.#sessions.values())).filter((session) => session !== undefined));
    for (const session of sessions)
      try {
        await session.refresh();
        this.#look(session);
      } catch (error) {
        this.connection.console.warn(reasonOf(error));
      }
    // What could not be read may be put right.
    for (const document of this.#documents.all())
      if (this.#refusalOf(document) !== undefined) await this.#change(document);
  }

  // What is found

  #look(session: Session): void {
    if (session.hasPlugins) this.#askPlugins(session);
    this.#lookAgain(session);
  }

  /** Looks at all open documents of a repository, once what is being looked at is done. */
  #lookAgain(session: Session): void {
    this.#dirty.add(session);
    if (this.#isLooking) return;
    this.#isLooking = true;
    const looking = this.#lookAll().finally(() => {
      this.#isLooking = false;
    });
    this.#go(looking);
  }

  async #lookAll(): Promise<void> {
    for (let [session] = this.#dirty; session; [session] = this.#dirty) {
      this.#dirty.delete(session);
      for (const document of this.#documents.all()) {
        await turn();
        // A change that came meanwhile has everything looked at again.
        if (this.#dirty.has(session)) break;
        const located = await this.#locate(document.uri);
        try {
          if (located?.session === session) this.#tell(located, document);
        } catch (error) {
          this.connection.console.error(reasonOf(error));
        }
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
        this.connection.console.warn(reasonOf(error));
      }
    }
  }

  #tell({ session, path }: Located, document: TextDocument): void {
    this.#send(document, this.#diagnostics(session, path));
  }

  #send({ uri, version }: TextDocument, diagnostics: Diagnostic[]): void {
    const text = JSON.stringify(diagnostics);
    // The version tells which text it is of, so it is told for every one that was judged.
    const mark = `${version} ${text}`;
    if (this.#told.get(uri) === mark) return;
    this.#told.set(uri, mark);
    void this.connection.sendDiagnostics({ uri, version, diagnostics });
  }

  #diagnostics(session: Session, path: string): Diagnostic[] {
    const found = session
      .findings(path)
      .map((finding) => diagnosticOf(finding, this.#uri(session), publishedRule(session, finding.rule)));
    const { problem } = session;
    if (problem?.path !== path) return found;
    const at = { line: problem.line, column: problem.column, endLine: problem.line, endColumn: problem.column };
    return [
      { range: rangeOf(at), severity: 1, source: "plumbmark", code: "house-standard", message: problem.says },
      ...found,
    ];
  }

  #askPlugins(session: Session): void {
    clearTimeout(this.#plugins);
    this.#plugins = setTimeout(() => {
      const asking = session.askPlugins().then(() => this.#lookAgain(session));
      this.#go(asking);
    }, PLUGINS_AFTER_MS);
  }

  // What is asked

  /** Answers about a file at its newest text; nothing where it belongs to no docs repository. */
  readonly #about: About = async (uri, token, answer) => {
    await turn();
    const located = await untilCancelled(this.#locate(uri), token);
    if (!located) return null;
    const { session, path } = located;
    const text = this.#documents.get(uri)?.getText();
    if (text !== undefined) session.replace(path, text);
    const file = session.file(path);
    if (!file) return null;
    const asked = text === undefined || text === file.text ? file : { ...file, text };
    return answer(asked, { session, path, uriOf: this.#uri(session), inSteps: inSteps(session, token) });
  };
}

/** Serves a client of the Language Server Protocol 3.17 over a connection. */
export function serve(connection: Connection, host: Host): void {
  new Server(connection, host).listen();
}
