import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { InspectionRecord } from "@plumbmark/core";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { notEmpty } from "../run/not-empty.js";
import { type Block, type GuidePage, guidePages, shownCommands } from "./pages.js";

// The samples are used as their readers would: from files outside the workspace, with the built packages.
const workspace = fileURLToPath(new URL("../../", import.meta.url));
const top = mkdtempSync(join(tmpdir(), "plumbmark-guide-"));
const folderOf = ({ name }: GuidePage): string => join(top, name);
const isCode = (path: string): boolean => /\.(?:ts|mjs|js)$/u.test(path);

const filesOf = (page: GuidePage): readonly { readonly path: string; readonly text: string }[] =>
  page.blocks.flatMap(({ path, text }) => (path === undefined ? [] : [{ path: join(folderOf(page), path), text }]));

const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const laidOver = (under: unknown, over: unknown): unknown =>
  isMapping(under) && isMapping(over)
    ? {
        ...under,
        ...Object.fromEntries(Object.entries(over).map(([key, value]) => [key, laidOver(under[key], value)])),
      }
    : over;

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

const plumbmark = (folder: string, ...words: string[]) =>
  node(folder, join(workspace, "packages/cli/dist/plumbmark.js"), ...words);

const put = (path: string, text: string): void => {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};

/** The files of a page in a folder of their own, its one document with a change laid over the front matter. */
function writeChanged(page: GuidePage, { changes: path = "", text }: Block, folder: string): void {
  for (const block of page.blocks)
    if (block.path !== undefined && block.language !== "md") put(join(folder, block.path), block.text);
  const document = page.blocks.find((block) => block.path === path)?.text ?? "";
  const [, frontMatter = "", body = ""] = /^---\n([\s\S]*?)^---\n([\s\S]*)$/mu.exec(document) ?? [];
  expect(frontMatter, `${path} is not on the page`).not.toBe("");
  put(join(folder, path), `---\n${stringify(laidOver(parse(frontMatter), parse(text)))}---\n${body}`);
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
});

afterAll(() => rmSync(top, { recursive: true, force: true }));

test("every sample compiles", () => {
  const files = guidePages
    .flatMap(filesOf)
    .map(({ path }) => path)
    .filter(isCode);
  const program = ts.createProgram(files, OPTIONS);
  const found = ts.getPreEmitDiagnostics(program).map(({ file, start = 0, messageText }) => {
    const line = file
      ? `${file.fileName.slice(top.length)}:${file.getLineAndCharacterOfPosition(start).line + 1}: `
      : "";
    return line + ts.flattenDiagnosticMessageText(messageText, "\n");
  });
  expect(files.length).toBeGreaterThan(10);
  expect(found).toEqual([]);
});

test("a limit of the wrong kind does not compile", () => {
  const path = join(top, "wrong.ts");
  const [settings] = guidePages.filter(({ name }) => name === "settings").flatMap(filesOf);
  const wrong = (settings?.text ?? "").replace("measured: face.mass", "measured: face.width");
  expect(wrong).not.toBe(settings?.text);
  writeFileSync(path, wrong);
  expect(ts.getPreEmitDiagnostics(ts.createProgram([path], OPTIONS))).not.toEqual([]);
});

describe.each(notEmpty(guidePages.map((page) => [page.name, page] as const)))("%s", (_, page) => {
  const tests = filesOf(page).filter(({ path }) => /\.test\.mjs$/u.test(path));
  test.skipIf(tests.length === 0)("its tests pass", () => {
    const { status, stdout } = node(folderOf(page), "--test", ...tests.map(({ path }) => path));
    expect(stdout).toMatch(/^# pass [1-9]/mu);
    expect(status, stdout).toBe(0);
  });

  const modules = filesOf(page).filter(({ path }) => isCode(path) && !path.includes(".test."));
  test.skipIf(modules.length === 0)("its rules keep their contract", () => {
    const check = `import { contractProblems } from "@plumbmark/core";
      for (const path of process.argv.slice(1)) {
        const { default: made } = await import(path);
        const problems = (made.rules ?? [made]).flatMap(contractProblems);
        if (problems.length > 0) throw new Error(problems.join("; "));
      }`;
    const paths = modules.map(({ path }) => path.replace(/\.ts$/u, ".js"));
    const { status, stderr } = node(folderOf(page), "--input-type=module", "-e", check, ...paths);
    expect(stderr).toBe("");
    expect(status).toBe(0);
  });

  const changes = page.blocks.filter(({ changes }) => changes !== undefined);
  test.skipIf(changes.length === 0)("the changes it shows leave nothing else to do", () => {
    for (const [index, change] of notEmpty(changes).entries()) {
      const folder = `${folderOf(page)}-change-${index}`;
      writeChanged(page, change, folder);
      const { stdout, stderr } = plumbmark(folder, "inspect", change.changes ?? "", "--as", "json");
      expect(stderr).toBe("");
      const record = JSON.parse(stdout) as InspectionRecord;
      const found = notEmpty(record.documents).flatMap(({ checks }) => checks);
      // What the text quotes is brought up to date, and what is changed is approved anew.
      const wanting = found.filter(({ level, outcome }) => level === "shall" && outcome !== "holds");
      const others = wanting.filter(({ rule }) => rule !== "document.quoted-values" && rule !== "document.sign-off");
      expect(others.map(({ rule, says }) => `${rule}: ${says}`)).toEqual([]);
      expect(record.totals.holds).toBeGreaterThan(200);
    }
  });

  const commands = shownCommands(page);
  test.skipIf(commands.length === 0)("its commands print what it shows", () => {
    for (const { words, lines } of notEmpty(commands)) {
      const { stdout, stderr } = plumbmark(folderOf(page), ...words);
      const plain = stdout.replace(/\s+/gu, " ");
      expect(stderr).toBe("");
      for (const line of notEmpty(lines)) expect(plain).toContain(line.replace(/\s+/gu, " "));
    }
  });
});
