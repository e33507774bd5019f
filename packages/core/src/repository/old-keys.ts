import type { Mistake } from "../document/mistake.js";
import { type Place, START } from "../document/place.js";
import type { Data, Placed } from "../document/yaml/yaml.js";
import { currentRule, formerRule, OLD_RULE_IDS } from "../standard/old-rules.js";

/** Keys of a house standard that have another name now, read for one version more. */
export const OLD_KEYS = { rules: "requirements", plugins: "rules-from" } as const;

type Old = keyof typeof OLD_KEYS;

const OLD = Object.keys(OLD_KEYS) as readonly Old[];

type Mapping = Readonly<Record<string, Data>>;

/** The same with every old key under its new name; the new one counts where both stand, which is refused elsewhere. */
export function renewed(data: Mapping): Mapping {
  const entries = Object.entries(data).filter(([key]) => !Object.hasOwn(OLD_KEYS, key));
  const moved = OLD.flatMap((key) => (Object.hasOwn(data, key) ? [[OLD_KEYS[key], data[key]] as const] : []));
  return withCurrentRules(Object.fromEntries([...moved, ...entries]) as Mapping);
}

const isMapping = (data: Data | undefined): data is Mapping =>
  data !== null && typeof data === "object" && !Array.isArray(data);

/** Rules by the names they have now, wherever a house standard names some. */
function withCurrentRules(data: Mapping): Mapping {
  const { requirements, allows } = data;
  return {
    ...data,
    ...(isMapping(requirements)
      ? { requirements: Object.fromEntries(Object.entries(requirements).map(([id, set]) => [currentRule(id), set])) }
      : {}),
    ...(Array.isArray(allows)
      ? { allows: allows.map((name) => (typeof name === "string" ? currentRule(name) : (name as Data))) }
      : {}),
  } as Mapping;
}

/** The name by which a file sets a rule, which may be the one of before. */
export function writtenRule({ keys }: Placed, group: string, id: string): string {
  const former = formerRule(id);
  return former !== undefined && !keys.has(`${group}.${id}`) && keys.has(`${group}.${former}`) ? former : id;
}

/** Rules a file names as they were called before, each with its path. */
const oldRulesIn = (placed: Placed): readonly (readonly [path: string, id: string])[] => {
  const group = writtenKey(placed, "requirements");
  const set = OLD_RULE_IDS.map((id) => [`${group}.${id}`, id] as const).filter(([path]) => placed.keys.has(path));
  const allows = isMapping(placed.data) && Array.isArray(placed.data.allows) ? placed.data.allows : [];
  const allowed = allows.flatMap((name, index) =>
    typeof name === "string" && OLD_RULE_IDS.includes(name) ? [[`allows.${index + 1}`, name] as const] : [],
  );
  return [...set, ...allowed];
};

/** The key under which a file writes what is called `key` now. */
export function writtenKey({ keys }: Placed, key: (typeof OLD_KEYS)[Old]): string {
  const old = OLD.find((each) => OLD_KEYS[each] === key) as Old;
  return !keys.has(key) && keys.has(old) ? old : key;
}

const placeOf = ({ keys }: Placed, key: string): Place => keys.get(key) ?? START;

/** Old and new name of one key in one file: which of them would count nobody can tell. */
export const twiceNamed = (placed: Placed): readonly Mistake[] => [
  ...OLD_RULE_IDS.flatMap((old): readonly Mistake[] => {
    const group = writtenKey(placed, "requirements");
    const [path, now] = [`${group}.${old}`, currentRule(old)];
    if (!placed.keys.has(path) || !placed.keys.has(`${group}.${now}`)) return [];
    const says = `Both \`${old}\` and \`${now}\` are set; the first is the name the second had before.`;
    const mend = `Put all of it under \`${now}\`, and take \`${old}\` out.`;
    return [{ rule: "document.front-matter", path, place: placeOf(placed, path), says, mend }];
  }),
  ...OLD.filter((key) => placed.keys.has(key) && placed.keys.has(OLD_KEYS[key])).map((key) => ({
    rule: "document.front-matter" as const,
    path: key,
    place: placeOf(placed, key),
    says: `Both \`${key}\` and \`${OLD_KEYS[key]}\` are written; the first is the name the second had before.`,
    mend: `Put all of it under \`${OLD_KEYS[key]}\`, and take \`${key}\` out.`,
  })),
];

/** Old keys of one file, each with its place and its new name. */
export const oldKeys = (
  placed: Placed,
): readonly { readonly place: Place; readonly says: string; readonly mend: string }[] => [
  ...oldRulesIn(placed).map(([path, id]) => ({
    place: placed.keys.get(path) ?? placed.places.get(path) ?? START,
    says: `The rule \`${id}\` is now called \`${currentRule(id)}\`.`,
    mend: `Write \`${currentRule(id)}\`: the old name is read in this version, and no longer in the next.`,
  })),
  ...OLD.filter((key) => placed.keys.has(key)).map((key) => ({
    place: placeOf(placed, key),
    says: `\`${key}\` is now called \`${OLD_KEYS[key]}\`.`,
    mend: `Write \`${OLD_KEYS[key]}\`: the old name is read in this version, and no longer in the next.`,
  })),
];
