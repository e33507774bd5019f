/** The id of a row of the register: letters, digits and dashes, with a capital since it is ours. */
export const anchor = (what: "Source" | "Formula" | "Method" | "Table", id: string): string =>
  `${what}-${id.replaceAll(".", "_")}`;

/** The id of a row for an author's name, with everything but letters, digits and dashes as its code. */
export const nameAnchor = (what: "Part" | "Lot" | "Item" | "Shapes", name: string): string =>
  `${what}-${name.replace(/[^A-Za-z0-9-]/gu, (letter) => `_${letter.codePointAt(0)?.toString(16)}_`)}`;
