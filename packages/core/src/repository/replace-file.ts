import { asStock, type FolderStandard, type RepositoryFiles, type SourceFile, stockFiles } from "./files.js";
import { outlineOf } from "./outline.js";

/** What a file is to an inspection. */
export type FileRole = "document" | "parts" | "survey" | "wish" | "stock" | "house standard" | "folder standard";

/** What the file at a path is; undefined when there is none. */
function roleOf(files: RepositoryFiles, path: string): FileRole | "other" | undefined {
  const among = (list: readonly { readonly path: string }[] | undefined): boolean =>
    list?.some((each) => each.path === path) ?? false;
  if (among(files.documents)) return "document";
  if (among(files.others)) return "other";
  if (among(files.parts)) return "parts";
  if (among(files.surveys)) return "survey";
  if (among(files.wishes)) return "wish";
  if (among(stockFiles(files))) return "stock";
  if (files.houseStandard?.path === path) return "house standard";
  return among(files.folderStandards) ? "folder standard" : undefined;
}

/** The list with a file replaced, taken out, or put in ahead of the first whose path comes after it. */
function replaced<File extends { readonly path: string }>(
  list: readonly File[],
  path: string,
  file: File | undefined,
): readonly File[] {
  const at = list.findIndex((each) => each.path === path);
  if (at >= 0) return file ? list.with(at, file) : list.toSpliced(at, 1);
  if (!file) return list;
  const behind = list.findIndex((each) => each.path > path);
  return list.toSpliced(behind < 0 ? list.length : behind, 0, file);
}

const folderOf = (path: string): string => path.slice(0, Math.max(0, path.lastIndexOf("/")));

/** Without the key where there is nothing: a file that is not there is not named. */
const withOr = <Key extends string>(key: Key, file: SourceFile | undefined): { readonly [K in Key]?: SourceFile } =>
  (file ? { [key]: file } : {}) as { readonly [K in Key]?: SourceFile };

/**
 * The files of a repository with one of them replaced, added or, without a text, taken out.
 * @param role what a file is that was not there before
 * @throws RangeError when that is not said
 */
export function replaceFile(
  files: RepositoryFiles,
  path: string,
  text: string | undefined,
  role?: FileRole,
): RepositoryFiles {
  const is = roleOf(files, path) ?? role;
  if (is === undefined && text === undefined) return files;
  if (is === undefined) throw new RangeError(`${path} was not there before: say whether it is a document, parts …`);
  const file = text === undefined ? undefined : { path, text };
  const { stock: _stock, moreStock: _more, houseStandard: _standard, ...rest } = files;
  const stock = stockFiles(files);
  const { documents, parts, others = [], folderStandards = [], surveys = [], wishes = [] } = files;
  const folder = (): FolderStandard | undefined => file && { ...file, folder: folderOf(path) };
  switch (is) {
    case "document":
      return { ...files, documents: replaced(documents, path, file) };
    case "other":
      return { ...files, others: replaced(others, path, file && outlineOf(file)) };
    case "parts":
      return { ...files, parts: replaced(parts, path, file) };
    case "survey":
      return { ...files, surveys: replaced(surveys, path, file) };
    case "wish":
      return { ...files, wishes: replaced(wishes, path, file) };
    case "folder standard":
      return { ...files, folderStandards: replaced(folderStandards, path, folder()) };
    case "stock":
      return { ...rest, ...withOr("houseStandard", files.houseStandard), ...asStock(replaced(stock, path, file)) };
    default:
      return { ...rest, ...asStock(stock), ...withOr("houseStandard", file) };
  }
}
