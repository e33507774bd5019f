import { readdirSync, readFileSync } from "node:fs";

const GUIDE = new URL("../../docs-site/guide/", import.meta.url);

/** One fenced block of the guide: its language and, where it is a file, the file's path. */
export interface Block {
  readonly language: string;
  readonly path: string | undefined;
  /** The document of the page that its front matter is laid over: a sample that shows only what is otherwise. */
  readonly changes: string | undefined;
  readonly text: string;
}

export interface GuidePage {
  readonly name: string;
  readonly blocks: readonly Block[];
}

const CHANGE = "change:";

const FENCE = /^```(\w+)(?: (\S+))?\n([\s\S]*?)^```$/gmu;

export const guidePages: readonly GuidePage[] = readdirSync(GUIDE)
  .filter((file) => file.endsWith(".md"))
  .sort()
  .map((file) => ({
    name: file.slice(0, -".md".length),
    blocks: [...readFileSync(new URL(file, GUIDE), "utf8").matchAll(FENCE)].map(
      ([, language = "", place = "", text = ""]) => ({
        language,
        path: place === "" || place.startsWith(CHANGE) ? undefined : place,
        changes: place.startsWith(CHANGE) ? place.slice(CHANGE.length) : undefined,
        text,
      }),
    ),
  }));

/** Words of a command line; what stands in quotes is one. */
const wordsOf = (line: string): readonly string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain = ""]) => quoted ?? plain);

/** Commands of a page with what they print, where the page says so; `…` at the end of a line stands for the rest of it. */
export const shownCommands = ({
  blocks,
}: GuidePage): readonly { readonly words: readonly string[]; readonly lines: readonly string[] }[] =>
  blocks.flatMap((block, index) => {
    const next = blocks[index + 1];
    if (block.language !== "sh" || next?.language !== "text") return [];
    const words = wordsOf(block.text.trim()).slice(1);
    return [
      {
        words,
        lines: next.text
          .trim()
          .split("\n")
          .map((line) => line.trim().replace(/…$/u, "")),
      },
    ];
  });
