import { posix } from "node:path";
import picomatch from "picomatch";
import { fromRoot, isOutside, NEVER, refuseAstray } from "../files/find-files.js";
import type { Text } from "../files/read-text.js";
import type { Origin, Tree } from "../files/tree.js";
import { type Read, readBlobs, readBlobsNow } from "./blobs.js";
import type { Entries, Entry } from "./entries.js";

const problem = (says: string, mend: string): Text => ({ problem: { says, mend } });

const ABSENT = problem("The file is not there.", "Check its name and folder.");
const OUTSIDE = problem("The link leads outside the docs repository.", "Put the file itself there.");
const UNSETTLED = problem("A merge has left two versions of the file.", "Settle the merge and stage the file.");

const LONGEST_WAY = 10;

/** Files as git keeps them; `top` is the folder of the work tree they belong to, `folder` where git is asked. */
export function gitOrigin(folder: string, top: string, entries: Entries, contents: Read = new Map()): Origin {
  const folders = new Set<string>();
  for (const path of entries.keys())
    for (let above = posix.dirname(path); above !== "." && !folders.has(above); above = posix.dirname(above))
      folders.add(above);

  /** The entry a path leads to, links followed inside the root. */
  async function follow(path: string, within: string, ways = LONGEST_WAY): Promise<Entry | Text> {
    if (within !== "" && !path.startsWith(`${within}/`)) return OUTSIDE;
    const entry = entries.get(path);
    if (!entry) return ABSENT;
    if (entry.unsettled) return UNSETTLED;
    if (entry.kind === "file") return entry;
    const target = (await readBlobs(folder, [entry.id], contents)).get(entry.id);
    if (target === undefined || "problem" in target || ways === 0)
      return problem("The link cannot be followed.", "Put the file itself there.");
    const next = posix.join(posix.dirname(path), target.text);
    return posix.isAbsolute(target.text) || isOutside(next) ? OUTSIDE : follow(next, within, ways - 1);
  }

  async function read(paths: readonly string[], within: string): Promise<readonly Text[]> {
    const found: (Entry | Text)[] = [];
    for (const path of paths) found.push(await follow(posix.join(within, path), within));
    const blobs = await readBlobs(
      folder,
      found.flatMap((each) => ("id" in each ? [each.id] : [])),
      contents,
    );
    return found.map((each) => ("id" in each ? { ...(blobs.get(each.id) ?? ABSENT), id: each.id } : (each as Text)));
  }

  const treeAt = (root: string): Tree => {
    const within = fromRoot(top, root);
    const prefix = within === "" ? "" : `${within}/`;
    return {
      find: async (patterns) => {
        refuseAstray(patterns);
        const fits = picomatch([...patterns], { ignore: [...NEVER] });
        return [...entries.keys()]
          .filter((path) => path.startsWith(prefix))
          .map((path) => path.slice(prefix.length))
          .filter((path) => fits(path))
          .sort();
      },
      read: (paths) => read(paths, within),
      named: {
        names: (paths) =>
          paths.map((path) => {
            const entry = entries.get(posix.join(within, path));
            return entry?.kind === "file" && !entry.unsettled ? entry.id : undefined;
          }),
        load: async (ids) => void (await readBlobs(folder, ids, contents)),
        now: (ids) => readBlobsNow(folder, ids, contents),
      },
    };
  };

  const inside = (path: string): string => fromRoot(top, path);
  return {
    treeAt,
    text: async (path) => (await read([inside(path)], ""))[0] ?? ABSENT,
    isFile: async (path) => entries.has(inside(path)),
    isFolder: async (path) => inside(path) === "" || folders.has(inside(path)),
  };
}
