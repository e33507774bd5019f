import { posix } from "node:path";
import { Read, readBlobs, readBlobsNow } from "../git/blobs.js";
import type { Entries, Entry } from "../git/entries.js";
import { fromRoot, isOutside } from "./paths.js";
import { type Patterns, readPatterns } from "./patterns.js";
import { LEADS_BACK, LEADS_OUTSIDE, LIES_OUTSIDE, type Text } from "./read-text.js";
import type { FileSource, Tree } from "./source.js";

const problem = (says: string, mend: string): Text => ({ problem: { says, mend } });

const ABSENT = problem("The file is not there.", "Check its name and folder.");
const ASTRAY = problem("The link cannot be followed.", "Put the file itself there.");
const UNSETTLED = problem("A merge has left two versions of the file.", "Settle the merge and stage the file.");

const LONGEST_WAY = 10;

/** Files as git keeps them; `top` is the folder of the work tree they belong to, `folder` where git is asked. */
export function gitSource(folder: string, top: string, entries: Entries, contents = new Read()): FileSource {
  const folders = new Set<string>();
  for (const path of entries.keys())
    for (let above = posix.dirname(path); above !== "." && !folders.has(above); above = posix.dirname(above))
      folders.add(above);

  /** Where a path leads from the top, links to files and to folders followed inside the root. */
  async function real(path: string, within: string, ways = LONGEST_WAY): Promise<string | Text> {
    if (within !== "" && path !== within && !path.startsWith(`${within}/`)) return LEADS_OUTSIDE;
    if (entries.get(path)?.kind === "file") return path;
    const steps = path.split("/");
    const link = steps.findIndex((_, index) => entries.get(steps.slice(0, index + 1).join("/"))?.kind === "link");
    if (link < 0) return path;
    const { id } = entries.get(steps.slice(0, link + 1).join("/")) as Entry;
    const target = (await readBlobs(folder, [id], contents)).get(id);
    if (target === undefined || "problem" in target || ways === 0) return ASTRAY;
    const next = posix.join(...steps.slice(0, link), target.text, ...steps.slice(link + 1));
    return posix.isAbsolute(target.text) || isOutside(next) ? LEADS_OUTSIDE : real(next, within, ways - 1);
  }

  /** The entry a path leads to. */
  async function follow(path: string, within: string): Promise<Entry | Text> {
    const found = await real(path, within);
    if (typeof found !== "string") return found;
    const entry = entries.get(found);
    if (!entry) return found === "." || folders.has(found) ? LEADS_BACK : ABSENT;
    return entry.unsettled ? UNSETTLED : entry;
  }

  const someLinks = [...entries.values()].some(({ kind }) => kind === "link");

  async function linkAt(path: string): Promise<string | undefined> {
    const entry = entries.get(path);
    if (entry?.kind !== "link") return undefined;
    const target = (await readBlobs(folder, [entry.id], contents)).get(entry.id);
    return target && "text" in target ? target.text : undefined;
  }

  const below = (above: string): readonly string[] => {
    if (above === "" || above === ".") return [...entries.keys()];
    const prefix = `${above}/`;
    return [...entries.keys()].filter((path) => path.startsWith(prefix)).map((path) => path.slice(prefix.length));
  };

  /** What a link to a folder adds: the files there if nothing else finds them, or itself if it leads back. */
  async function linked(link: string, within: string, { fits }: Patterns): Promise<readonly string[]> {
    const target = await real(posix.join(within, link), within);
    if (typeof target !== "string" || !(target === "." || folders.has(target))) return [];
    if (!isOutside(fromRoot(`/${target}`, `/${posix.join(within, link)}`))) return [link];
    const own = fromRoot(`/${within}`, `/${target}`);
    return below(target)
      .filter((path) => !fits(posix.join(own, path)))
      .map((path) => posix.join(link, path))
      .filter(fits);
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
    const entryAt = (path: string): Entry | undefined => entries.get(within === "" ? path : posix.join(within, path));
    return {
      find: async (written) => {
        const patterns = readPatterns(written);
        const own = below(within);
        const isLink = (path: string): boolean => entryAt(path)?.kind === "link";
        const links = someLinks ? own.filter((path) => isLink(path) && patterns.reaches(path)) : [];
        const found = own.filter(patterns.fits);
        for (const link of links) found.push(...(await linked(link, within, patterns)));
        return [...new Set(found)].sort();
      },
      read: (paths) => read(paths, within),
      ...(someLinks ? { linkAt: (path) => linkAt(posix.join(within, path)) } : {}),
      named: {
        names: (paths) =>
          paths.map((path) => {
            const entry = entryAt(path);
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
    text: async (path, root = top) =>
      isOutside(fromRoot(root, path))
        ? LIES_OUTSIDE
        : ((await read([fromRoot(root, path)], inside(root)))[0] ?? ABSENT),
    kind: async (path) => {
      const named = inside(path);
      return named === "" || folders.has(named) ? "folder" : entries.has(named) ? "file" : undefined;
    },
  };
}
