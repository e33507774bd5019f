import { readdirSync, readFileSync } from "node:fs";

const GUIDE = new URL("../../docs-site/guide/", import.meta.url);

/** One fenced block of the guide: its language and, where it is a file, the file's path. */
export interface Block {
  readonly language: string;
  readonly path: string | undefined;
  readonly text: string;
}

export interface GuidePage {
  readonly name: string;
  readonly blocks: readonly Block[];
}

const FENCE = /^```(\w+)(?: (\S+))?\n([\s\S]*?)^```$/gmu;

export const guidePages: readonly GuidePage[] = readdirSync(GUIDE)
  .filter((file) => file.endsWith(".md"))
  .sort()
  .map((file) => ({
    name: file.slice(0, -".md".length),
    blocks: [...readFileSync(new URL(file, GUIDE), "utf8").matchAll(FENCE)].map(
      ([, language = "", path, text = ""]) => ({
        language,
        path,
        text,
      }),
    ),
  }));

/** Commands of a page with what they print, where the page says so. */
export const shownCommands = ({
  blocks,
}: GuidePage): readonly { readonly words: readonly string[]; readonly lines: readonly string[] }[] =>
  blocks.flatMap((block, index) => {
    const next = blocks[index + 1];
    if (block.language !== "sh" || next?.language !== "text") return [];
    const words = block.text.trim().split(" ").slice(1);
    return [
      {
        words,
        lines: next.text
          .trim()
          .split("\n")
          .map((line) => line.trim()),
      },
    ];
  });
