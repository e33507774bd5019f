import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript-api";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { localDay } from "../../packages/cli/src/terminal/context.js";
import { plumbmark, type Told } from "../plumbmark.js";
import { notEmpty } from "../run/not-empty.js";
import { type Block, type GuidePage, guidePages, shownCommands } from "./pages.js";

// The samples are used as their readers would: from files outside the workspace, with the built packages.
const workspace = fileURLToPath(new URL("../../", import.meta.url));
const top = mkdtempSync(join(tmpdir(), "plumbmark-guide-"));
const folderOf = ({ name }: GuidePage): string => join(top, name);
const isCode = (path: string): boolean => /\.(?:ts|mjs|js)$/u.test(path);

type Sample = { readonly path: string; readonly text: string };

/** The samples of a page that are files, by path, with those of the pages it goes on from: its own take their place. */
function samplesOf(page: GuidePage): ReadonlyMap<string, string> {
  const before = guidePages.find(({ name }) => name === page.filesOf);
  expect(before === undefined, `${page.name} goes on from no page of the guide`).toBe(page.filesOf === undefined);
  const own = page.blocks.flatMap(({ path, text }) => (path === undefined ? [] : [[path, text] as const]));
  return new Map([...(before ? samplesOf(before) : []), ...own]);
}

const filesOf = (page: GuidePage): readonly Sample[] =>
  [...samplesOf(page)].map(([path, text]) => ({ path: join(folderOf(page), path), text }));

const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** What is left empty is taken out. */
function laidOver(under: unknown, over: unknown): unknown {
  if (!isMapping(under) || !isMapping(over)) return over;
  const changed = Object.entries(over).map(([key, value]) => [key, laidOver(under[key], value)] as const);
  return Object.fromEntries([...Object.entries(under), ...changed].filter(([key]) => over[key] !== null));
}

const OPTIONS: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  strict: true,
  exactOptionalPropertyTypes: true,
  allowJs: true,
  checkJs: true,
  skipLibCheck: true,
  noEmit: true,
  types: ["node"],
  typeRoots: [join(workspace, "node_modules/@types")],
};

const node = (folder: string, ...words: string[]) =>
  spawnSync(process.execPath, words, {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, NODE_OPTIONS: "", NO_COLOR: "1" },
  });

/** As whoever reads runs it: the built program. */
const built = (folder: string, ...words: string[]): Told => {
  const { status, stdout, stderr } = node(folder, join(workspace, "packages/cli/dist/plumbmark.js"), ...words);
  return { status: status ?? Number.NaN, out: stdout, err: stderr };
};

/** The same command, carried out here: to start the program takes longer than what most of them do. */
const carriedOut = (folder: string, ...words: string[]): Promise<Told> =>
  plumbmark(folder, words, { today: localDay(new Date()), width: 110 });

/** The page that is read first has its commands carried out by the program. */
const FIRST = "your-first-build";

const put = (path: string, text: string): void => {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};

/** A document with a sample laid over its front matter. */
function changed(document: string, { text }: Block): string {
  const [, frontMatter = "", body = ""] = /^---\n([\s\S]*?)^---\n([\s\S]*)$/mu.exec(document) ?? [];
  expect(frontMatter).not.toBe("");
  return `---\n${stringify(laidOver(parse(frontMatter), parse(text)))}---\n${body}`;
}

/** The files of a page in a folder of their own, with no document but one, and that one changed. */
function writeChanged(page: GuidePage, change: Block, folder: string): void {
  const files = filesOf(page).map((each) => ({ ...each, path: relative(folderOf(page), each.path) }));
  for (const each of files)
    if (each.path === change.changes) put(join(folder, each.path), changed(each.text, change));
    else if (!each.path.endsWith(".md")) put(join(folder, each.path), each.text);
}

beforeAll(() => {
  symlinkSync(join(workspace, "node_modules"), join(top, "node_modules"));
  writeFileSync(join(top, "package.json"), '{ "type": "module" }\n');
  for (const { path, text } of guidePages.flatMap(filesOf)) {
    put(path, text);
    if (!path.endsWith(".ts")) continue;
    const { outputText } = ts.transpileModule(text, {
      compilerOptions: { target: ts.ScriptTarget.ES2023, module: ts.ModuleKind.ESNext },
    });
    writeFileSync(path.replace(/\.ts$/u, ".js"), outputText);
  }
  for (const page of guidePages)
    for (const block of page.blocks)
      if (block.tries !== undefined) {
        const path = join(folderOf(page), block.tries);
        put(path, changed(readFileSync(path, "utf8"), block));
      }
});

afterAll(() => rmSync(top, { recursive: true, force: true }));

const isRule = ({ path }: Sample): boolean => isCode(path) && !path.includes(".test.");
const compiled = (path: string): string => path.replace(/\.ts$/u, ".js");

/** Loads modules by their paths, and prints where the rules of each do not keep their contract. */
const CHECK = `import { contractProblems } from "@plumbmark/core";
const found = {};
for (const path of process.argv.slice(1))
  found[path] = await import(path).then(
    ({ default: made }) => (made.rules ?? [made]).flatMap(contractProblems),
    (error) => [String(error)],
  );
console.log(JSON.stringify(found));`;

let found: Readonly<Record<string, readonly string[]>> | undefined;

/** Where the rules of every page do not keep their contract, by the path of the module: one process loads them all. */
function problems(): Readonly<Record<string, readonly string[]>> {
  if (found) return found;
  const paths = guidePages
    .flatMap(filesOf)
    .filter(isRule)
    .map(({ path }) => compiled(path));
  const { status, stdout, stderr } = node(top, "--input-type=module", "-e", CHECK, ...new Set(paths));
  expect([status, stderr]).toEqual([0, ""]);
  found = JSON.parse(stdout) as Readonly<Record<string, readonly string[]>>;
  return found;
}

let compiling: ts.Program | undefined;

/** All samples and one that is wrong, in one program: what they import is read and checked once. */
function program(): ts.Program {
  if (compiling) return compiling;
  const files = guidePages
    .flatMap(filesOf)
    .map(({ path }) => path)
    .filter(isCode);
  expect(files.length).toBeGreaterThan(10);
  const [settings] = guidePages.filter(({ name }) => name === "settings").flatMap(filesOf);
  const wrong = (settings?.text ?? "").replace("measured: face.mass", "measured: face.width");
  expect(wrong).not.toBe(settings?.text);
  writeFileSync(WRONG, wrong);
  compiling = ts.createProgram([...files, WRONG], OPTIONS);
  expect(compiling.getRootFileNames().every((path) => compiling?.getSourceFile(path))).toBe(true);
  return compiling;
}
const WRONG = join(top, "wrong.ts");
const isWrong = ({ file }: ts.Diagnostic): boolean => file?.fileName === WRONG;

test("every sample compiles", () => {
  const found = ts
    .getPreEmitDiagnostics(program())
    .filter((each) => !isWrong(each))
    .map(({ file, start = 0, messageText }) => {
      const line = file
        ? `${file.fileName.slice(top.length)}:${file.getLineAndCharacterOfPosition(start).line + 1}: `
        : "";
      return line + ts.flattenDiagnosticMessageText(messageText, "\n");
    });
  expect(found).toEqual([]);
});

test("a limit of the wrong kind does not compile", () => {
  expect(ts.getPreEmitDiagnostics(program(), program().getSourceFile(WRONG))).not.toEqual([]);
});

/** Loads the tests of every page in a suite of its name. */
const TESTS = `import { describe } from "node:test";
for (const [name, ...paths] of JSON.parse(process.argv[1]))
  describe(name, async () => { for (const path of paths) await import(path); });`;

const testsOf = (page: GuidePage): readonly string[] =>
  filesOf(page)
    .map(({ path }) => path)
    .filter((path) => path.endsWith(".test.mjs"));

let tested: string | undefined;

/** What the tests of every page come to, as the test runner of Node.js tells it: one process runs them all. */
function testReport(): string {
  if (tested !== undefined) return tested;
  const suites = guidePages.map((page) => [page.name, ...testsOf(page)]).filter(({ length }) => length > 1);
  const { status, stdout, stderr } = node(top, "--input-type=module", "-e", TESTS, JSON.stringify(suites));
  expect([status, stderr], stdout).toEqual([0, ""]);
  tested = stdout;
  return stdout;
}

describe.each(notEmpty(guidePages.map((page) => [page.name, page] as const)))("%s", (_, page) => {
  test.skipIf(testsOf(page).length === 0)("its tests pass", () => {
    const [, inside = ""] =
      new RegExp(`^# Subtest: ${page.name}\n([\\s\\S]*?)^ok \\d+ - ${page.name}$`, "mu").exec(testReport()) ?? [];
    expect(inside).toMatch(/^ {4}ok [1-9]/mu);
  });

  const modules = filesOf(page).filter(isRule);
  test.skipIf(modules.length === 0)("its rules keep their contract", () => {
    const paths = modules.map(({ path }) => compiled(path));
    expect(Object.fromEntries(paths.map((path) => [path, problems()[path]]))).toEqual(
      Object.fromEntries(paths.map((path) => [path, []])),
    );
  });

  const changes = page.blocks.filter(({ changes }) => changes !== undefined);
  test.skipIf(changes.length === 0)(
    "a document that is changed as it shows is ready, mended and approved",
    async () => {
      for (const [index, change] of notEmpty(changes).entries()) {
        const folder = `${folderOf(page)}-change-${index}`;
        const { changes: path = "" } = change;
        writeChanged(page, change, folder);
        const before = await carriedOut(folder, "inspect", path);
        expect(before.out).toContain("Not ready.");
        let out = "";
        for (const words of [
          ["mend", path],
          ["approve", path, "--by", "L. Alder"],
          ["inspect", path],
        ]) {
          const { status, err, ...told } = await carriedOut(folder, ...words);
          expect({ status, err }, told.out).toEqual({ status: 0, err: "" });
          out = told.out;
        }
        expect(out).toMatch(/\b[1-9]\d{2} checks: .*Ready\.|1 document: 1 ready\./u);
      }
    },
  );

  const commands = shownCommands(page);
  test.skipIf(commands.length === 0)("its commands print what it shows", async () => {
    const run = page.name === FIRST ? built : carriedOut;
    for (const { words, lines } of notEmpty(commands)) {
      const { out, err } = await run(folderOf(page), ...words);
      const plain = out.replace(/\s+/gu, " ");
      expect(err).toBe("");
      for (const line of notEmpty(lines)) expect(plain).toContain(line.replace(/\s+/gu, " "));
    }
  });
});
