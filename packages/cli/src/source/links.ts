import { posix } from "node:path";
import { isOutside } from "./paths.js";
import type { Tree } from "./source.js";

const LONGEST_WAY = 10;

/** Everything that decides what stands at a path: the path itself, every link on the way, and where each of them leads. */
async function waysOf(path: string, linkAt: NonNullable<Tree["linkAt"]>): Promise<readonly string[]> {
  const ways = [path];
  for (let here: string | undefined = path; here !== undefined && ways.length < 2 * LONGEST_WAY; ) {
    const steps: readonly string[] = here.split("/");
    here = undefined;
    for (let end = 1; end <= steps.length && here === undefined; end += 1) {
      const link = steps.slice(0, end).join("/");
      const target = await linkAt(link);
      if (target === undefined) continue;
      const next = posix.join(posix.dirname(link), target, ...steps.slice(end));
      if (posix.isAbsolute(target) || isOutside(next)) return [...ways, link];
      ways.push(link, next);
      here = next;
    }
  }
  return ways;
}

/** Where a path ends when every link on its way is followed; the path itself where links are not told. */
export const followedPath = async (path: string, { linkAt }: Tree): Promise<string> =>
  linkAt ? ((await waysOf(path, linkAt)).at(-1) as string) : path;

/** Paths whose content a change may have changed although it happened elsewhere: they lead there by links. */
export async function reachedBy(
  touched: ReadonlySet<string>,
  paths: readonly string[],
  { linkAt }: Tree,
): Promise<readonly string[]> {
  if (!linkAt) return [];
  const reached: string[] = [];
  for (const path of paths)
    if (!touched.has(path) && (await waysOf(path, linkAt)).some((way) => touched.has(way))) reached.push(path);
  return reached;
}
