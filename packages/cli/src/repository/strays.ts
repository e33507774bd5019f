import { documentKind, surveyKind } from "@plumbmark/core";
import { followedPath } from "../source/links.js";
import { readPatterns } from "../source/patterns.js";
import type { Tree } from "../source/source.js";
import { readFiles, type Unreadable } from "./read-files.js";

/** Markdown under any of the names it goes by, in whatever capitals. */
const MARKDOWN = [
  "**/*.[mM][dD]",
  "**/*.[mM][kK][dD]",
  "**/*.[mM][dD][oO][wW][nN]",
  "**/*.[mM][aA][rR][kK][dD][oO][wW][nN]",
];

/** How many are read at a time: other Markdown of a repository may be much, and nothing of it is kept. */
const AT_A_TIME = 50;

const told = (path: string, kind: "build" | "meant", isNamed: boolean): Unreadable => ({
  path,
  says: `This ${kind === "build" ? "is a build document" : "was meant to be a build document"}, and no pattern${isNamed ? " of the house standard" : ""} matches its path: nobody would look at it.`,
  mend: isNamed
    ? `Move it to where documents are kept, write a pattern for it under \`documents\`, or leave it out by name: \`"!${path}"\`.`
    : "Give its name the ending `.md`, in small letters.",
});

const strayed = (path: string): Unreadable => ({
  path,
  says: "This is a survey of a venue, and no pattern matches its path: no build would be completed by it.",
  mend: "Move it to where surveys are kept, `venues/` where the house standard says nothing, or write a pattern for it under `surveys`.",
});

/**
 * Build documents and surveys that no pattern matches. What a pattern leaves out by name (`!builds/old/**`) is left out on purpose.
 * @param patterns of the house standard; undefined without one
 * @param found documents that are looked at
 */
export async function strays(
  tree: Tree,
  patterns: readonly string[] | undefined,
  found: readonly string[],
): Promise<readonly Unreadable[]> {
  const known = new Set(found);
  const refused = (patterns ?? []).filter((pattern) => pattern.startsWith("!")).map((pattern) => pattern.slice(1));
  const leftOut = refused.length === 0 ? () => false : readPatterns(refused).fits;
  const others = (await tree.find(MARKDOWN)).filter((path) => !known.has(path) && !leftOut(path));
  const all: Unreadable[] = [];
  let read: ReadonlySet<string> | undefined;
  // What is looked at by way of a link is looked at: only asked where something would be told.
  const isRead = async (path: string): Promise<boolean> => {
    read ??= new Set(await Promise.all(found.map((each) => followedPath(each, tree))));
    return read.has(await followedPath(path, tree));
  };
  for (let from = 0; from < others.length; from += AT_A_TIME) {
    const { files } = await readFiles(tree, others.slice(from, from + AT_A_TIME));
    for (const { path, text } of files) {
      const kind = documentKind(text);
      if (kind !== "other" && !(await isRead(path))) all.push(told(path, kind, patterns !== undefined));
      else if (kind === "other" && text.includes("survey") && surveyKind(text) === "survey" && !(await isRead(path)))
        all.push(strayed(path));
    }
  }
  return all;
}
