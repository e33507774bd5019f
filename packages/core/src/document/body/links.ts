import type { Root } from "mdast";
import { type Place, type Positioned, placeOfNode } from "../place.js";

/** A link or an image of the body that leads to a file or a heading, not to another host and not to a value. */
export interface LocalLink {
  readonly url: string;
  readonly place: Place;
}

const LEAVES = /^(?:[a-z][a-z0-9+.-]*:|\/\/)/iu;

export function localLinksOf(tree: Root): readonly LocalLink[] {
  const links: LocalLink[] = [];
  const visit = (
    node: Positioned & {
      readonly type: string;
      readonly url?: string;
      readonly children?: readonly { type: string }[];
    },
  ): void => {
    const { type, url } = node;
    if ((type === "link" || type === "image" || type === "definition") && url !== undefined && !LEAVES.test(url))
      links.push({
        url,
        place: placeOfNode(node),
      });
    for (const child of node.children ?? []) visit(child);
  };
  visit(tree as never);
  return links;
}

const decoded = (text: string): string => {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
};

/** Path from the root a local link of `file` leads to; undefined when it leaves the root or starts at a host's root. */
export function targetOf(url: string, file: string): string | undefined {
  const path = decoded(url.replace(/[?#].*$/u, ""));
  if (path.startsWith("/")) return undefined;
  const steps = file.split("/").slice(0, -1);
  for (const step of path.split("/")) {
    if (step === "..") {
      if (steps.pop() === undefined) return undefined;
    } else if (step !== "" && step !== ".") steps.push(step);
  }
  return steps.join("/");
}

const named = new WeakMap<readonly string[], ReadonlySet<string>>();

/** Names of headings as links call them: small letters, blanks to hyphens, punctuation left out, later twins numbered. */
export function anchorsOf(titles: readonly string[]): ReadonlySet<string> {
  const anchors = named.get(titles) ?? namesOf(titles);
  named.set(titles, anchors);
  return anchors;
}

function namesOf(titles: readonly string[]): ReadonlySet<string> {
  const anchors = new Set<string>();
  const twins = new Map<string, number>();
  for (const title of titles) {
    const name = title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, "")
      .replace(/\s/gu, "-");
    let twin = twins.get(name) ?? 0;
    let own = twin === 0 ? name : `${name}-${twin}`;
    for (; anchors.has(own); own = `${name}-${twin}`) twin += 1;
    twins.set(name, twin);
    anchors.add(own);
  }
  return anchors;
}

const known = new WeakMap<readonly string[], ReadonlySet<string>>();

/** Files and the folders above them. */
function withFolders(files: readonly string[]): ReadonlySet<string> {
  const all = new Set(files);
  for (const file of files)
    for (let end = file.lastIndexOf("/"); end > 0; end = file.lastIndexOf("/", end - 1)) {
      const folder = file.slice(0, end);
      if (all.has(folder)) break;
      all.add(folder);
    }
  return all;
}

/** Whether there is a file, or a folder with one in it, at a path from the root. */
export function isThere(files: readonly string[], path: string): boolean {
  const all = known.get(files) ?? withFolders(files);
  known.set(files, all);
  return all.has(path);
}

/** Whether a local link leads somewhere; undefined when it leads to a file the inspection is not given. */
export function leads(
  url: string,
  file: string,
  files: readonly string[],
  titles: readonly string[],
): boolean | undefined {
  if (url === "") return false;
  if (url.startsWith("#")) return url === "#" || anchorsOf(titles).has(decoded(url.slice(1)).toLowerCase());
  const target = targetOf(url, file);
  if (target === undefined) return undefined;
  return isThere(files, target) ? true : undefined;
}
