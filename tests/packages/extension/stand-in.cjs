// What the extension asks of an editor, as far as a start, one open document and its diagnostics need it: `vscode` is
// no package, the editor itself gives it. Run as `node stand-in.cjs EXTENSION REPOSITORY DOCUMENT`; prints each set of
// diagnostics as one line of JSON, and ends the extension as an editor does when a line comes in.
const { readFileSync } = require("node:fs");
const Module = require("node:module");
const { join } = require("node:path");
const { fileURLToPath, pathToFileURL } = require("node:url");

const [, , extension, repository, path] = process.argv;

const disposable = { dispose: () => undefined };
const event = () => disposable;

class Uri {
  constructor(fsPath) {
    Object.assign(this, { scheme: "file", fsPath, path: fsPath, authority: "", query: "", fragment: "" });
  }
  toString() {
    return pathToFileURL(this.fsPath).href;
  }
  static file(path) {
    return new Uri(path);
  }
  static parse(text) {
    return new Uri(fileURLToPath(text));
  }
}

class Emitter {
  #heard = [];
  event = (hear, self) => {
    this.#heard.push(hear.bind(self));
    return disposable;
  };
  fire(what) {
    for (const hear of this.#heard) hear(what);
  }
  dispose() {}
}

class CancellationTokenSource {
  token = { isCancellationRequested: false, onCancellationRequested: event };
  cancel() {}
  dispose() {}
}

class Kind {
  constructor(value) {
    this.value = value;
  }
  append(word) {
    return new Kind(this.value === "" ? word : `${this.value}.${word}`);
  }
  static Empty = new Kind("");
}

class Diagnostic {
  constructor(range, message, severity) {
    Object.assign(this, { range, message, severity });
  }
}

/** Whatever else is asked for is there, does nothing, and gives something that can be disposed of. */
const anything = (name) =>
  new Proxy(class {}, {
    get: (own, key) => {
      if (key === Symbol.toPrimitive) return () => name;
      return key === "then" ? undefined : key in own ? own[key] : anything(`${name}.${String(key)}`);
    },
    apply: () => disposable,
  });
const having = (name, given) =>
  new Proxy(given, { get: (own, key) => (key in own ? own[key] : callable(`${name}.${String(key)}`)) });
const callable = (name) => Object.assign(() => disposable, { toString: () => name });

const document = {
  uri: new Uri(join(repository, path)),
  languageId: "markdown",
  version: 1,
  fileName: join(repository, path),
  isClosed: false,
  getText: () => readFileSync(join(repository, path), "utf8"),
};

const show = (uri, diagnostics) =>
  process.stdout.write(
    `${JSON.stringify({ uri: String(uri), codes: diagnostics.map(({ code }) => code?.value ?? code) })}\n`,
  );
const log = (text) => process.stderr.write(`${text}\n`);

const vscode = new Proxy(
  {
    version: "1.101.0",
    Uri,
    EventEmitter: Emitter,
    CancellationTokenSource,
    CodeActionKind: Kind,
    Diagnostic,
    DiagnosticSeverity: { Error: 0, Warning: 1, Information: 2, Hint: 3 },
    env: having("env", { appName: "stand-in", language: "en" }),
    workspace: having("workspace", {
      textDocuments: [document],
      notebookDocuments: [],
      workspaceFolders: [{ uri: new Uri(repository), name: "docs", index: 0 }],
      findFiles: async () => [new Uri(join(repository, "house-standard.yaml"))],
      getConfiguration: () => ({ get: (_, otherwise) => otherwise, has: () => false, inspect: () => undefined }),
      createFileSystemWatcher: () => ({
        onDidCreate: event,
        onDidChange: event,
        onDidDelete: event,
        ...disposable,
      }),
      getWorkspaceFolder: () => undefined,
    }),
    window: having("window", {
      createOutputChannel: () => ({ append: log, appendLine: log, show: () => undefined, ...disposable }),
      showErrorMessage: async (text) => log(`shown as an error: ${text}`),
      visibleTextEditors: [],
      activeTextEditor: undefined,
      tabGroups: having("tabGroups", { all: [] }),
    }),
    languages: having("languages", {
      createDiagnosticCollection: () => ({ set: show, delete: () => undefined, clear: () => undefined, ...disposable }),
      match: (selector, { languageId }) => ([selector].flat().some(({ language }) => language === languageId) ? 10 : 0),
    }),
    commands: having("commands", {}),
  },
  { get: (own, key) => (key in own ? own[key] : anything(String(key))) },
);

const load = Module._load;
Module._load = function loadOr(name, ...rest) {
  return name === "vscode" ? vscode : load.call(this, name, ...rest);
};

const { activate, deactivate } = require(join(extension, "extension.cjs"));
process.stdin.once("data", async () => {
  await deactivate();
  process.exit(0);
});
activate({ extensionPath: extension, subscriptions: [] }).catch((error) => {
  log(String(error));
  process.exit(1);
});
