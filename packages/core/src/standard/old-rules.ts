/** Rules that have another name now; the old one is still read in house standards and waivers. */
const OLD_RULES: Readonly<Record<string, string>> = { "panels.stock": "stock.promised-twice" };

/** The name a rule has now. */
export const currentRule = (id: string): string => (Object.hasOwn(OLD_RULES, id) ? (OLD_RULES[id] as string) : id);

/** Names rules had before, and still may be called by. */
export const OLD_RULE_IDS: readonly string[] = Object.keys(OLD_RULES);

/** The name a rule had before; undefined of one that always had its name. */
export const formerRule = (id: string): string | undefined => OLD_RULE_IDS.find((old) => OLD_RULES[old] === id);
