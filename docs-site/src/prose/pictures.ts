import { createHash } from "node:crypto";
import type { ElementContent } from "hast";
import { h } from "hastscript";
import { linkTo } from "../pages/page.js";
import type { PublishedDocument } from "../site/published-document.js";
import { withinRepository } from "../site/repository-path.js";
import type { Site } from "../site/site.js";

/** What stands in place of an author's picture; undefined when it cannot be shown. */
export type PictureFor = (
  src: string,
  alt: string,
  at?: { readonly line: number; readonly column: number },
) => ElementContent | undefined;

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

/** The bytes of a picture with their ending, or why it is not shown. */
function found(src: string, file: string, picture: Site["picture"]): readonly [Uint8Array, string] | string {
  const path = src === "" ? undefined : withinRepository(src, file)?.path;
  if (path === undefined) return "it is no path of the docs repository";
  const bytes = picture?.(path) ?? "nobody reads pictures here";
  if (typeof bytes === "string") return bytes;
  const ending = endingOf(bytes);
  return ending === undefined ? "it is no PNG, JPEG, GIF, WebP or AVIF" : [bytes, ending];
}

/** Pictures of the repository, copied into the site; what leads elsewhere, or is no picture, is not shown. */
export const pictures =
  ({ entry: { file }, page }: PublishedDocument, { picture, unshown, pictures: kept }: Site): PictureFor =>
  (src, alt, at) => {
    const known = found(src, file, picture);
    if (typeof known === "string") {
      unshown?.({ at: at ? `${file}:${at.line}:${at.column}` : file, file, src, why: known });
      return undefined;
    }
    const target = pathOf(...known);
    kept.set(target, known[0]);
    return h("img", { src: linkTo(page, target), alt, loading: "lazy" });
  };
