import type { Store } from "../engine/cache/store.js";
import type { NamedContents, Tree } from "../source/source.js";
import { Trouble } from "../terminal/trouble.js";
import { readMany } from "./lazy-text.js";
import { type NamedFile, outlineAt, type PlacelessOutline } from "./outlines.js";
import type { Unreadable } from "./read-files.js";

export interface ReadDocuments {
  readonly files: readonly NamedFile[];
  readonly unreadable: readonly Unreadable[];
  /** Has the texts of documents ready; without it each is read when it is first looked at, with all others. */
  readonly load: (paths: readonly string[]) => Promise<void>;
}

/** What is known of a document without reading it. */
interface Known {
  readonly path: string;
  readonly id: string;
  readonly outline: PlacelessOutline;
}

function known(paths: readonly string[], names: readonly (string | undefined)[], outlines: Store): readonly Known[] {
  return paths.flatMap((path, index) => {
    const id = names[index];
    const outline = id === undefined ? undefined : (outlines.get(id) as PlacelessOutline | undefined);
    return id === undefined || !outline ? [] : [{ path, id, outline }];
  });
}

function textOf(id: string, all: readonly Known[], named: NamedContents): string {
  // Whoever looks at one text that was not asked for is likely to look at all of them.
  const text = named.now(all.map((each) => each.id)).get(id);
  if (text && "text" in text) return text.text;
  throw new Trouble("Git does not have the content of a document.", "Fetch it, or stage the file again.");
}

const lazily = ({ path, id, outline }: Known, all: readonly Known[], named: NamedContents): NamedFile => {
  let read: string | undefined;
  return {
    path,
    id,
    outline: outlineAt(outline, path),
    get text() {
      read ??= textOf(id, all, named);
      return read;
    },
  };
};

/** Documents among the files, where nobody has to read those whose outline is kept. */
export async function readDocuments(
  tree: Tree,
  paths: readonly string[],
  outlines: Store | undefined,
): Promise<ReadDocuments> {
  const { named } = tree;
  const all = named && outlines ? known(paths, named.names(paths), outlines) : [];
  const unread = new Set(all.map(({ path }) => path));
  const rest = await readMany(
    tree,
    paths.filter((path) => !unread.has(path)),
  );
  const files = [...rest.files, ...(named ? all.map((each) => lazily(each, all, named)) : [])].sort((one, other) =>
    one.path < other.path ? -1 : 1,
  );
  const load = async (wanted: readonly string[]): Promise<void> => {
    const chosen = new Set(wanted);
    await named?.load(all.filter(({ path }) => chosen.has(path)).map(({ id }) => id));
  };
  return { files, unreadable: rest.unreadable, load };
}
