const SAFE = /^[a-z0-9][a-z0-9._-]*$/u;

const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\.(?:md|yaml|yml)$/u, "")
    .replace(/[^a-z0-9.-]+/gu, "-")
    .replace(/^[-.]+|[-.]+$/gu, "") || "page";

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
    const base = SAFE.test(wanted) ? wanted : slug(wanted);
    let name = base;
    for (let number = 2; this.#taken.has(name); number += 1) name = `${base}-${number}`;
    this.#taken.add(name);
    return name;
  }
}
