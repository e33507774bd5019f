/** A place in the repository that a relative link of a document leads to. */
export interface LinkTarget {
  /** From the root, with forward slashes. */
  readonly path: string;
  /** `#heading`, or nothing. */
  readonly hash: string;
}

/** Where a link leads from a document; undefined for an address, and for what leads out of the repository. */
export function withinRepository(href: string, file: string): LinkTarget | undefined {
  try {
    const base = new URL(file.split("/").map(encodeURIComponent).join("/"), "file:///");
    const { pathname, hash, protocol, host } = new URL(href, base);
    return protocol === "file:" && host === "" ? { path: decodeURIComponent(pathname).slice(1), hash } : undefined;
  } catch {
    // Neither an address nor a path: it leads nowhere.
    return undefined;
  }
}
