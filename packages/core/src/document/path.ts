/** The dotted path of what stands under a key, or of an item of a list. */
export const join = (path: string, key: string | number): string => (path === "" ? String(key) : `${path}.${key}`);
