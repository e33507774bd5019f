import { readdirSync, readFileSync } from "node:fs";

const GUIDE = new URL("../../docs-site/guide/", import.meta.url);

/** One fenced block of the guide: its language and, where it is a file, the file's path. */
export interface Block {
  readonly language: string;
  readonly path: string | undefined;
  /** The document whose front matter it is laid over: a sample that shows only what is otherwise, and is ready. */
  readonly changes: string | undefined;
  /** The same where the page goes on with the document as it is then, for better or worse. */
  readonly tries: string | undefined;
  readonly text: string;
}

export interface GuidePage {
  readonly name: string;
  readonly blocks: readonly Block[];
  /** Another page whose files its readers have already: `<!-- files of your-first-build -->`. */
  readonly filesOf: string | undefined;
}

const behind = (word: "change:" | "try:", place: string): string | undefined =>
  place.startsWith(word) ? place.slice(word.length) : undefined;

const FENCE = /^```(\w+)(?: (\S+))?\n([\s\S]*?)^```$/gmu;

export const guidePages: readonly GuidePage[] = readdirSync(GUIDE)
  .filter((file) => file.endsWith(".md"))
  .sort()
  .map((file) => ({ file, text: readFileSync(new URL(file, GUIDE), "utf8") }))
  .map(({ file, text }) => ({
    name: file.slice(0, -".md".length),
    filesOf: /^<!-- files of ([a-z-]+) -->$/mu.exec(text)?.[1],
    blocks: [...text.matchAll(FENCE)].map(([, language = "", place = "", text = ""]) => ({
      language,
      path: place === "" || /^(?:change|try):/u.test(place) ? undefined : place,
      changes: behind("change:", place),
      tries: behind("try:", place),
      text,
    })),
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
