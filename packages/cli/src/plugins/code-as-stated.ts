import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, posix } from "node:path";
import type { FileSource } from "../source/source.js";

// What a commit is judged by is what it holds: a plugin that was changed in the work tree and not staged is not the one
// that is to be committed, and one that was taken out of it is nobody's.

/** What a module may be made of, wherever it lies. */
const CODE = ["**/*.mjs", "**/*.cjs", "**/*.js", "**/*.json"];

/** Everything beside a plugin that the house standard names by its path: it may read a table of its own. */
const beside = (names: readonly string[]): readonly string[] =>
  names
    .filter((name) => name.startsWith("."))
    .map((name) => posix.dirname(posix.normalize(name)))
    .filter((folder) => folder !== "." && !folder.startsWith(".."))
    .map((folder) => `${folder}/**`);

const onDisk = (path: string): string | undefined => {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
};

/** The packages a module of a folder finds: those that lie in it, else those that lie nearest above. */
function packagesFor(folder: string): string | undefined {
  const found = join(folder, "node_modules");
  if (existsSync(found)) return found;
  return dirname(folder) === folder ? undefined : packagesFor(dirname(folder));
}

/** A folder that plugins run from. */
export interface CodeFolder {
  readonly folder: string;
  /** It is not needed any more. */
  readonly end: () => void;
}

/**
 * Where plugins run from, so that their code is what a source has of it, be that what is staged or a commit: the folder
 * itself where it holds just that, else a copy beside which the same packages are found.
 * @param names of the plugins, as the house standard has them
 */
export async function codeFolder(source: FileSource, folder: string, names: readonly string[]): Promise<CodeFolder> {
  const itself = { folder, end: () => undefined };
  if (!names.some((name) => name.startsWith("."))) return itself;
  const tree = source.treeAt(folder);
  const found = await tree.find([...CODE, ...beside(names)]);
  const paths = [...new Set(found)].filter((path) => !path.split("/").includes("node_modules"));
  const texts = await tree.read(paths);
  const files = paths.flatMap((path, index) => {
    const read = texts[index];
    return read !== undefined && "text" in read ? [{ path, text: read.text }] : [];
  });
  const missing = names.some(
    (name) => name.startsWith(".") && !files.some(({ path }) => path === posix.normalize(name)),
  );
  if (!missing && files.every(({ path, text }) => onDisk(join(folder, path)) === text)) return itself;
  const copy = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-code-")));
  const linked = new Set<string>();
  const link = (at: string): void => {
    if (linked.has(at)) return;
    linked.add(at);
    const packages = at === "" ? packagesFor(folder) : join(folder, at, "node_modules");
    if (packages !== undefined && existsSync(packages))
      symlinkSync(packages, join(copy, at, "node_modules"), "junction");
  };
  link("");
  for (const { path, text } of files) {
    mkdirSync(join(copy, dirname(path)), { recursive: true });
    writeFileSync(join(copy, path), text);
    for (let at = posix.dirname(path); at !== "."; at = posix.dirname(at)) link(at);
  }
  return { folder: copy, end: () => rmSync(copy, { recursive: true, force: true }) };
}
