import type { Bare } from "../kept/outlines.js";
import { type NamedFile, placed } from "../kept/outlines.js";
import type { Shelf } from "../kept/shelf.js";
import { Trouble } from "../trouble.js";
import { readMany } from "./let-go.js";
import type { Unreadable } from "./read-files.js";
import type { Named, Tree } from "./tree.js";

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
  readonly outline: Bare;
}

function known(paths: readonly string[], names: readonly (string | undefined)[], outlines: Shelf): readonly Known[] {
  return paths.flatMap((path, index) => {
    const id = names[index];
    const outline = id === undefined ? undefined : (outlines.get(id) as Bare | undefined);
    return id === undefined || !outline ? [] : [{ path, id, outline }];
  });
}

function textOf(id: string, all: readonly Known[], named: Named): string {
  // Whoever looks at one text that was not asked for is likely to look at all of them.
  const text = named.now(all.map((each) => each.id)).get(id);
  if (text && "text" in text) return text.text;
  throw new Trouble("Git does not have the content of a document.", "Fetch it, or stage the file again.");
}

const lazily = ({ path, id, outline }: Known, all: readonly Known[], named: Named): NamedFile => {
  let read: string | undefined;
  return {
    path,
    id,
    outline: placed(outline, path),
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
  outlines: Shelf | undefined,
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
