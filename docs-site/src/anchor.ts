/** The id of a row of the register: letters, digits and dashes, with a capital since it is ours. */
export const anchor = (what: "Source" | "Formula" | "Method" | "Table", id: string): string =>
  `${what}-${id.replaceAll(".", "_")}`;
