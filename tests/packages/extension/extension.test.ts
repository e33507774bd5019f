import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { homedir, tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { starterRepository } from "@plumbmark/starter";
import { Ajv2020 } from "ajv/dist/2020.js";
import picomatch from "picomatch";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node.js";
import type { PublishDiagnosticsParams } from "vscode-languageserver-protocol";
import { parse } from "yaml";
import { commandFor, ownCommand } from "../../../packages/editor/extension/src/server.js";
import { notEmpty } from "../../run/not-empty.js";

// The extension as somebody has it who takes the packed file: unpacked, in a folder that knows nothing of this workspace.

const ROOT = fileURLToPath(new URL("../../..", import.meta.url));
const TOOL = join(ROOT, "packages/build-tools/packing/");
const STAND_IN = fileURLToPath(new URL("stand-in.cjs", import.meta.url));
const WALL = "builds/gala-wall.md";
/** What README shows of it: the starter's wall is not ready for four reasons. */
const OF_WALL = ["panels.batch", "power.circuit-load", "connectors.locking-overhead", "data.port-load"];

// The tool that packs is installed when it is missing.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 600_000 });

interface Manifest {
  readonly main: string;
  readonly engines: { readonly vscode: string };
  readonly activationEvents: readonly string[];
  readonly contributes: {
    readonly yamlValidation: readonly { readonly fileMatch: readonly string[]; readonly url: string }[];
  };
}

let folder: string;
let packed: string;
let said: string;
let extension: string;
let docs: string;

const surroundings = { PATH: process.env.PATH, HOME: process.env.HOME, NO_COLOR: "1" };

const filesUnder = (place: string): readonly string[] =>
  readdirSync(place, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => join(each.parentPath, each.name).slice(place.length + 1))
    .sort();

const manifest = (): Manifest => JSON.parse(readFileSync(join(extension, "package.json"), "utf8")) as Manifest;

interface Archive {
  on(event: "entry", take: (entry: { readonly fileName: string }) => void): void;
  on(event: "end", take: () => void): void;
  readEntry(): void;
  openReadStream(entry: unknown, take: (error: Error | null, stream: NodeJS.ReadableStream) => void): void;
}

/** Unpacks what is a ZIP archive by its name (APPNOTE.TXT), with the library the tool that packs reads it with. */
async function unpack(path: string, to: string): Promise<void> {
  const { open } = createRequire(TOOL)("yauzl") as {
    open: (path: string, options: object, take: (error: Error | null, archive: Archive) => void) => void;
  };
  const archive = await new Promise<Archive>((resolve, reject) =>
    open(path, { lazyEntries: true }, (error, found) => (error ? reject(error) : resolve(found))),
  );
  await new Promise<void>((resolve, reject) => {
    archive.on("end", resolve);
    archive.on("entry", (entry) =>
      archive.openReadStream(entry, (error, stream) => {
        if (error) return reject(error);
        const chunks: Buffer[] = [];
        stream.on("data", (chunk) => chunks.push(chunk as unknown as Buffer));
        stream.on("end", () => {
          mkdirSync(dirname(join(to, entry.fileName)), { recursive: true });
          writeFileSync(join(to, entry.fileName), Buffer.concat(chunks));
          archive.readEntry();
        });
      }),
    );
    archive.readEntry();
  });
}

beforeAll(async () => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-extension-")));
  const made = spawnSync(
    process.execPath,
    [join(ROOT, "packages/build-tools/src/extension.mjs"), join(folder, "packed")],
    { encoding: "utf8" },
  );
  expect(made.status, made.stderr).toBe(0);
  said = made.stdout;
  packed = join(folder, "packed", readdirSync(join(folder, "packed"))[0] as string);
  await unpack(packed, join(folder, "unpacked"));
  extension = join(folder, "unpacked/extension");
  docs = join(folder, "docs");
  cpSync(starterRepository, docs, { recursive: true });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the packed file", () => {
  test("is of at most 3 MB, and its size is told", () => {
    const { size } = statSync(packed);
    expect(size).toBeLessThan(3e6);
    expect(said).toContain(`${(size / 1e6).toFixed(2)} MB`);
  });

  test("holds what the tool that packs lists of it: the same again when it is packed again", () => {
    const listed = spawnSync(
      process.execPath,
      [join(TOOL, "node_modules/@vscode/vsce/vsce"), "ls", "--no-dependencies"],
      { cwd: extension, encoding: "utf8" },
    );
    expect(listed.status, listed.stderr).toBe(0);
    expect(listed.stdout.trim().split("\n").sort()).toEqual(filesUnder(extension));
  });

  test("has its licence, those of the work of others in it, and a page with the cautions", () => {
    const names = filesUnder(extension);
    expect(names).toEqual(expect.arrayContaining(["LICENSE.txt", "NOTICES.md", "readme.md", "changelog.md"]));
    expect(readFileSync(join(extension, "LICENSE.txt"), "utf8")).toBe(readFileSync(join(ROOT, "LICENSE"), "utf8"));
    const bundled = JSON.parse(readFileSync(join(ROOT, "packages/cli/dist/bundled.json"), "utf8")) as readonly string[];
    const notices = readFileSync(join(extension, "NOTICES.md"), "utf8");
    for (const path of notEmpty([...bundled, "node_modules/vscode-languageclient"]))
      expect(notices).toContain(`## ${path.replace(/^.*node_modules\//u, "")} `);
    expect(readFileSync(join(extension, "readme.md"), "utf8")).toMatch(
      /licensed electricians, engineers and qualified/u,
    );
  });

  test("has no files of one machine, and no path of this one", () => {
    const names = filesUnder(extension);
    expect(names.length).toBeGreaterThan(20);
    expect(names.filter((name) => /\.(?:code|map|node|exe|tsbuildinfo|ts)$|\.test\.js$|^src\//u.test(name))).toEqual(
      [],
    );
    const own = [ROOT, homedir(), tmpdir()].filter((path) => path.length > 5);
    expect(own.length).toBeGreaterThan(0);
    for (const name of notEmpty(names)) {
      const text = readFileSync(join(extension, name), "utf8");
      expect({ name, found: own.filter((path) => text.includes(path)) }).toEqual({ name, found: [] });
    }
  });

  test("asks the editor for nothing but what every one of them gives", () => {
    const text = readFileSync(join(extension, manifest().main), "utf8");
    const asked = new Set([...text.matchAll(/\brequire\("([^"]+)"\)/gu)].map((match) => match[1] as string));
    expect(asked).toContain("vscode");
    const builtIn = new Set(createRequire(import.meta.url)("node:module").builtinModules as readonly string[]);
    const strange = [...asked].filter((name) => name !== "vscode" && !builtIn.has(name.replace(/^node:/u, "")));
    expect(strange).toEqual([]);
  });
});

describe("the schemas", () => {
  const associated = (path: string): string | undefined =>
    manifest().contributes.yamlValidation.find(({ fileMatch }) => picomatch.isMatch(path, [...fileMatch]))?.url;

  // A general validator of JSON Schema, draft 2020-12, that knows nothing of ours; what it does not know it leaves out.
  const problems = (schema: string, data: unknown): readonly string[] => {
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    const isRight = ajv.compile(JSON.parse(readFileSync(join(extension, schema), "utf8")));
    return isRight(data) ? [] : (isRight.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
  };

  test("lead from every YAML file of a docs repository to its own, and take what stands in the starter", () => {
    const yaml = filesUnder(docs).filter((path) => path.endsWith(".yaml") && !path.startsWith("house-rules/"));
    expect(yaml.length).toBeGreaterThan(8);
    for (const path of yaml) {
      const schema = associated(path);
      expect({ path, schema }).toEqual({ path, schema: expect.stringMatching(/^\.\/schema\/[a-z-]+\.schema\.json$/u) });
      const data = parse(readFileSync(join(docs, path), "utf8"));
      expect({ path, problems: problems(schema as string, data) }).toEqual({ path, problems: [] });
    }
  });

  test("do not take a key that is none", () => {
    for (const path of notEmpty([
      "house-standard.yaml",
      "parts/panels.yaml",
      "stock.yaml",
      "wishes/spring-banner.yaml",
    ])) {
      const data = parse(readFileSync(join(docs, path), "utf8")) as object;
      expect({ path, found: problems(associated(path) as string, { ...data, "no such key": 1 }).length }).not.toEqual({
        path,
        found: 0,
      });
    }
  });

  test("of builds and surveys lie beside them, each whole in itself", () => {
    for (const name of notEmpty(["build", "survey"])) {
      const text = readFileSync(join(extension, `schema/${name}.schema.json`), "utf8");
      expect(text).toContain('"$ref":"#/$defs/');
      expect(text).not.toMatch(/"\$ref":"[^#]/u);
    }
  });
});

describe("the server", () => {
  test("is that of the package a docs repository has installed, or one above it, or else its own", () => {
    const there = ["/repository/node_modules/plumbmark/plumbmark.js"];
    const isThere = (path: string): boolean => there.includes(path);
    expect(commandFor(["/repository/docs"], "/extension", isThere)).toBe(there[0]);
    expect(commandFor(["/other", "/repository"], "/extension", isThere)).toBe(there[0]);
    expect(commandFor(["/other"], "/extension", isThere)).toBe(ownCommand("/extension"));
    expect(commandFor([], "/extension", () => true)).toBe(ownCommand("/extension"));
  });

  interface Running {
    readonly child: ChildProcess;
    readonly until: (path: string, wanted: (codes: readonly unknown[]) => boolean) => Promise<readonly unknown[]>;
    readonly open: (path: string) => void;
    readonly end: () => Promise<number | null>;
  }

  /** The server as the extension starts it, and a client of the protocol. */
  async function serving(repository: string): Promise<Running> {
    const child = spawn(process.execPath, [ownCommand(extension), "language-server", "--stdio"], {
      env: surroundings,
      stdio: ["pipe", "pipe", "inherit"],
    });
    const connection = createMessageConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    const found = new Map<string, readonly unknown[]>();
    let wake = (): void => undefined;
    connection.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }: PublishDiagnosticsParams) => {
      found.set(
        uri,
        diagnostics.map(({ code }) => code),
      );
      wake();
    });
    connection.listen();
    await connection.sendRequest("initialize", { processId: process.pid, rootUri: null, capabilities: {} });
    void connection.sendNotification("initialized", {});
    const uriOf = (path: string): string => pathToFileURL(join(repository, path)).href;
    return {
      child,
      open: (path) =>
        void connection.sendNotification("textDocument/didOpen", {
          textDocument: {
            uri: uriOf(path),
            languageId: "markdown",
            version: 1,
            text: readFileSync(join(repository, path), "utf8"),
          },
        }),
      until: async (path, wanted) => {
        for (const end = performance.now() + 90_000; ; ) {
          const codes = found.get(uriOf(path));
          if (codes && wanted(codes)) return codes;
          if (performance.now() > end) throw new Error(`what is told of ${path} stays ${JSON.stringify(codes)}`);
          await new Promise<void>((resolve) => {
            wake = resolve;
            setTimeout(resolve, 500);
          });
        }
      },
      end: async () => {
        const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
        await connection.sendRequest("shutdown");
        void connection.sendNotification("exit");
        return ended;
      },
    };
  }

  test("tells of the starter what README does", async () => {
    const { open, until, end } = await serving(docs);
    open(WALL);
    expect(await until(WALL, (codes) => codes.length > 0)).toEqual(OF_WALL);
    expect(await end()).toBe(0);
  });

  test("carries out rules a docs repository brings, with the kit that comes with it", async () => {
    const own = join(folder, "with-plugin");
    cpSync(docs, own, { recursive: true });
    const standard = readFileSync(join(own, "house-standard.yaml"), "utf8").replace(/^rules-from:.*\n/mu, "");
    writeFileSync(join(own, "house-standard.yaml"), `${standard}\nrules-from: ["./title.mjs"]\n`);
    writeFileSync(
      join(own, "title.mjs"),
      `import { is, plugin, rule } from "@plumbmark/kit";
const title = rule({ id: "house.title", states: "S.", level: "should", why: "w", judged: "j", sources: ["house"],
  *checks({ build }) { yield is(build, { holds: false, says: "A title.", mend: "Another." }); } });
export default plugin({ kit: 1, rules: [title] });\n`,
    );
    const { open, until, end } = await serving(own);
    open(WALL);
    const codes = await until(WALL, (all) => all.includes("house.title") || all.includes("plugin.failed"));
    expect(codes).toContain("house.title");
    expect(await end()).toBe(0);
  });
});

describe("in an editor", () => {
  test("the extension starts its server, shows what it tells, and ends it again", async () => {
    const child = spawn(process.execPath, [STAND_IN, extension, docs, WALL], { env: surroundings });
    let [out, err] = ["", ""];
    child.stderr.on("data", (chunk) => {
      err += String(chunk);
    });
    const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
    child.stdout.on("data", (chunk) => {
      out += String(chunk);
      if (out.includes("\n")) child.stdin.write("end\n");
    });
    expect(await ended, err).toBe(0);
    const [shown] = out.split("\n").map((line) => (line === "" ? undefined : JSON.parse(line)));
    expect(shown).toEqual({ uri: pathToFileURL(join(docs, WALL)).href, codes: OF_WALL });
    expect(err).not.toMatch(/error/iu);
  });

  test("it starts where there is a house standard, and in no folder that is not trusted", () => {
    expect(manifest().activationEvents).toEqual(["workspaceContains:**/house-standard.yaml"]);
    expect(manifest()).toMatchObject({ capabilities: { untrustedWorkspaces: { supported: false } } });
    expect(existsSync(join(extension, manifest().main))).toBe(true);
  });
});
