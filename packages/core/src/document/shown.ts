/** Something written, as a message quotes it: lists and groups are named, for they have no words of their own. */
export const shown = (value: unknown): string => {
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "a group of keys" : `\`${String(value).slice(0, 60)}\``;
};
