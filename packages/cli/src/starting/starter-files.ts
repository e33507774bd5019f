import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { choices, openRepository, type RepositoryFiles, type SourceFile } from "@plumbmark/core";
import { Trouble } from "../terminal/trouble.js";
import { livingFiles } from "./living-files.js";

/** A file to be put into a new docs repository. */
export interface StartFile {
  readonly path: string;
  readonly text: string;
  readonly mode?: number;
}

export interface StartOptions {
  readonly practice?: string | undefined;
  /** Name of the folder, for what is named after it. */
  readonly name: string;
  /** Of Plumbmark: the one that is pinned. */
  readonly version: string;
  readonly forge?: string | undefined;
  /** Day the builds are approved for. */
  readonly today: string;
}

const LEFT_OUT = new Set(["node_modules", ".git"]);
const STANDARD = "house-standard.yaml";

async function filesIn(folder: string, under = ""): Promise<readonly SourceFile[]> {
  const entries = await readdir(join(folder, under), { withFileTypes: true });
  const found = await Promise.all(
    entries
      .filter(({ name }) => !LEFT_OUT.has(name))
      .map(async (entry): Promise<readonly SourceFile[]> => {
        const path = under === "" ? entry.name : `${under}/${entry.name}`;
        if (entry.isDirectory()) return filesIn(folder, path);
        return [{ path, text: await readFile(join(folder, path), "utf8") }];
      }),
  );
  return found.flat().toSorted((one, other) => (one.path < other.path ? -1 : 1));
}

const lineOf = (text: string, key: string): string | undefined => new RegExp(`^${key}: *(\\S+)`, "mu").exec(text)?.[1];

/** What a build or wish writes itself, else what the survey of its venue says. */
function practiceOf({ text }: SourceFile, files: readonly SourceFile[]): string | undefined {
  const venue = lineOf(text, "venue");
  const survey = files.find((each) => /^venues\//u.test(each.path) && lineOf(each.text, "survey") === venue);
  return lineOf(text, "practice") ?? (survey && lineOf(survey.text, "practice"));
}

/** Builds, wishes and surveys of another practice. */
const isOther = (file: SourceFile, practice: string, files: readonly SourceFile[]): boolean =>
  /^(?:builds|wishes|venues)\//u.test(file.path) && practiceOf(file, files) !== practice;

/** Lines of the README that tell of a build that is not there. */
const without = (text: string, gone: readonly string[]): string =>
  text
    .split("\n")
    .filter((line) => !gone.some((path) => line.includes(`(${path})`)))
    .join("\n");

/** Links to builds that are not there, as their words. */
const unlinked = (text: string, gone: readonly string[]): string =>
  gone.reduce((rest, path) => {
    const name = path.replace(/^builds\//u, "").replaceAll(".", "\\.");
    return rest.replace(new RegExp(`\\[([^\\]]*)\\]\\(${name}(?:#[^)]*)?\\)`, "gu"), "$1");
  }, text);

/** The builds of one practice, under a house standard of that practice. */
function inPractice(files: readonly SourceFile[], practice: string): readonly SourceFile[] {
  const gone = files.filter((file) => isOther(file, practice, files)).map(({ path }) => path);
  return files
    .filter(({ path }) => !gone.includes(path))
    .map(({ path, text }) => {
      if (path === STANDARD) return { path, text: text.replace(/^practice: \w+$/mu, `practice: ${practice}`) };
      return { path, text: path.startsWith("builds/") ? unlinked(text, gone) : without(text, gone) };
    });
}

/** The builds approved as they now are: an approval is of the house standard, too. */
function approved(files: readonly SourceFile[], today: string): readonly SourceFile[] {
  const under = (folder: string, ending: string): readonly SourceFile[] =>
    files.filter(({ path }) => path.startsWith(`${folder}/`) && path.endsWith(ending));
  const one = (name: string): SourceFile | undefined => files.find(({ path }) => path === name);
  const [houseStandard, stock] = [one(STANDARD), one("stock.yaml")];
  const repositoryFiles: RepositoryFiles = {
    ...(houseStandard ? { houseStandard } : {}),
    ...(stock ? { stock } : {}),
    parts: under("parts", ".yaml"),
    papers: under("letters", "").map(({ path }) => path),
    surveys: under("venues", ".md"),
    documents: under("builds", ".md"),
  };
  const repository = openRepository(repositoryFiles, [], { today });
  return files.map(({ path, text }) => {
    if (!repository.documents.includes(path)) return { path, text };
    const { code } = repository.model(path).build.approval;
    if (code === undefined) return { path, text };
    return { path, text: text.replace(/(^approved: \{.*code: )[0-9A-Z-]+/mu, `$1${code}`) };
  });
}

const SCHEMAS: readonly (readonly [of: RegExp, schema: string])[] = [
  [/^house-standard\.yaml$/u, "house-standard"],
  [/^parts\/.*\.yaml$/u, "parts"],
  [/^stock\.yaml$/u, "stock"],
  [/^wishes\/.*\.yaml$/u, "wish"],
];

/** At the end of a file, so that no line of it moves: editors that know YAML look for it anywhere. */
function withSchema({ path, text }: SourceFile): SourceFile {
  const schema = SCHEMAS.find(([of]) => of.test(path))?.[1];
  if (schema === undefined) return { path, text };
  const up = "../".repeat(path.split("/").length - 1);
  const line = `# yaml-language-server: $schema=${up === "" ? "./" : up}node_modules/plumbmark/schema/${schema}.schema.json`;
  return { path, text: `${text.trimEnd()}\n\n${line}\n` };
}

const PRACTICES = ["us", "iec"];

/** Everything that is put into a new docs repository, the house standard last: with it, the folder is one. */
export async function starterFiles(from: string, options: StartOptions): Promise<readonly StartFile[]> {
  const { practice } = options;
  if (practice !== undefined && !PRACTICES.includes(practice))
    throw new Trouble(`There is no practice \`${practice}\`.`, choices(PRACTICES, practice));
  const all = await filesIn(from);
  const own = practice === undefined || practice === "us" ? all : approved(inPractice(all, practice), options.today);
  const files: readonly StartFile[] = [...own.map(withSchema), ...livingFiles(options)];
  const isStandard = ({ path }: StartFile): boolean => path === STANDARD;
  return [...files.filter((file) => !isStandard(file)), ...files.filter(isStandard)];
}
