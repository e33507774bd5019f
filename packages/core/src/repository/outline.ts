import { type Markdown, readMarkdown } from "../document/markdown.js";
import { type Data, type Placed, readYaml } from "../document/yaml.js";
import { promisesOf } from "../model/bookings.js";
import type { Outline, SourceFile } from "./files.js";

/** A document with its Markdown and its front matter read. */
export interface Opened {
  readonly file: SourceFile;
  readonly markdown: Markdown;
  readonly placed: Placed | undefined;
  readonly name: string | undefined;
}

export function open(file: SourceFile): Opened {
  const markdown = readMarkdown(file.text);
  const placed = markdown.frontMatter
    ? readYaml(file.text, markdown.frontMatter.from, markdown.frontMatter.to)
    : undefined;
  const data = placed?.data;
  const name =
    data !== null && typeof data === "object" && !Array.isArray(data)
      ? (data as Record<string, Data>).build
      : undefined;
  return { file, markdown, placed, name: typeof name === "string" ? name : undefined };
}

export const outline = ({ file, placed, name }: Opened): Outline => ({
  path: file.path,
  ...(name === undefined ? {} : { name }),
  promises: promisesOf(file.path, placed?.data),
});

/** What the other documents have to know of this one. */
export const outlineOf = (file: SourceFile): Outline => outline(open(file));
