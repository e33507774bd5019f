import { isDevice } from "@plumbmark/core";

const SAFE = /^[a-z0-9](?:[a-z0-9._-]*[a-z0-9_-])?$/u;

/** Together with an ending and a number it stays under the 255 bytes that a name of a file may have. */
const LONGEST = 120;

/** What a page is called must not be what the folder of another's files is called: `x.html` beside `x.html/sheet.css`. */
const PAGE = /\.html$/u;

const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\.(?:md|yaml|yml)$/u, "")
    .replace(/[^a-z0-9.-]+/gu, "-")
    .replace(/^[-.]+|[-.]+$/gu, "") || "page";

const harmless = (name: string): string =>
  `${isDevice(name) ? "the-" : ""}${name
    .replace(PAGE, "-html")
    .slice(0, LONGEST)
    .replace(/[-.]+$/u, "")}`;

/**
 * File names for things that are named by authors: never outside the folder, never two alike, not even where capital
 * and small letters are the same to the file system.
 */
export class Names {
  readonly #taken = new Set<string>();

  constructor(...taken: readonly string[]) {
    for (const name of taken) this.#taken.add(name);
  }

  take(wanted: string): string {
    const base = harmless(SAFE.test(wanted) ? wanted : slug(wanted));
    let name = base;
    for (let number = 2; this.#taken.has(name); number += 1) name = `${base}-${number}`;
    this.#taken.add(name);
    return name;
  }
}
