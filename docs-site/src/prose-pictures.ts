import { createHash } from "node:crypto";
import type { ElementContent } from "hast";
import { h } from "hastscript";
import type { Published } from "./documents.js";
import { linkTo } from "./page.js";
import { withinRepository } from "./repository-path.js";
import type { Site } from "./site.js";

/** What stands in place of an author's picture; undefined when it cannot be shown. */
export type Picture = (src: string, alt: string) => ElementContent | undefined;

/** Kinds of picture by how their bytes begin. An SVG is none of them: opened by itself it can run a script. */
const KINDS: readonly (readonly [ending: string, at: number, bytes: string])[] = [
  ["png", 0, "\u0089PNG\r\n\u001a\n"],
  ["jpg", 0, "\u00ff\u00d8\u00ff"],
  ["gif", 0, "GIF8"],
  ["webp", 8, "WEBP"],
  ["avif", 4, "ftypavif"],
];

const endingOf = (bytes: Uint8Array): string | undefined =>
  KINDS.find(
    ([, at, begins]) => Buffer.from(bytes.subarray(at, at + begins.length)).toString("latin1") === begins,
  )?.[0];

/** Named by what is in it: two pictures that are alike are one file, and one that changes is another. */
const pathOf = (bytes: Uint8Array, ending: string): string =>
  `pictures/${createHash("sha256").update(bytes).digest("hex").slice(0, 16)}.${ending}`;

/** Pictures of the repository, copied into the site; what leads elsewhere, or is no picture, is not shown. */
export const pictures =
  ({ entry, page }: Published, { picture, pictures: kept }: Site): Picture =>
  (src, alt) => {
    const path = withinRepository(src, entry.file)?.path;
    const bytes = path === undefined ? undefined : picture?.(path);
    const ending = bytes && endingOf(bytes);
    if (!bytes || ending === undefined) return undefined;
    const target = pathOf(bytes, ending);
    kept.set(target, bytes);
    return h("img", { src: linkTo(page, target), alt, loading: "lazy" });
  };
