import {
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  stringify,
  visit,
  type YAMLMap,
} from "yaml";

type Group = YAMLMap<Node, Node | null>;
type Entry = Pair<Node, Node | null>;

/** A merge key of YAML, `<<: *name`, which copies the keys of another group: yaml.org/type/merge.html. */
export interface MergeKey {
  readonly key: Node;
  readonly value: Node;
  /** Dotted path of the group it stands in. */
  readonly path: string;
  /** What to write in its place, for people. */
  readonly mend: string;
  /** The keys as they would stand there; undefined where nothing can be copied. */
  readonly written: readonly string[] | undefined;
  /** Whether they would stand inside braces. */
  readonly isFlow: boolean;
}

export interface Merged {
  readonly found: readonly MergeKey[];
  /** Keys of groups that are copied from another, group by group. */
  readonly copied: ReadonlyMap<readonly unknown[], ReadonlySet<Node>>;
  /** Groups that others are copied from. */
  readonly models: ReadonlySet<Node>;
}

/** So many are gone after in one text, and so many keys of one: each may stand for a group that has others in it. */
const MOST = 20;
const MOST_KEYS = 60;
/** So many keys are told of one. */
const TOLD = 4;

const nameOf = ({ key }: Entry): string => (isScalar(key) ? String(key.value) : String(key));
const brief = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);

function mendOf(written: readonly string[], isFound: boolean): string {
  if (!isFound) return "Write the keys that are meant in its place.";
  if (written.length === 0) return "Take it out: every key of the other group stands here already.";
  const more = written.length > TOLD ? ` and ${written.length - TOLD} more` : "";
  const told = written.slice(0, TOLD).map((line) => `\`${brief(line)}\``);
  return `Write the keys out in its place: ${told.join(", ")}${more}. A circuit, face, bar or hang that is like another says so by \`like: NAME\`.`;
}

/** Dotted path of what stands in groups and lists; items of a list count from 1. */
const pathOf = (around: readonly unknown[]): string =>
  around
    .flatMap((each, at) => {
      if (isPair(each)) return [nameOf(each as Entry)];
      return isSeq(each) ? [String(each.items.indexOf(around[at + 1]) + 1)] : [];
    })
    .join(".");

/**
 * Puts what merge keys copy in their place, so that nothing but the merge key itself is told. A group has its own keys
 * first, then those of the groups it copies, in their order.
 */
export function mergeKeys(parsed: Document): Merged {
  const found: MergeKey[] = [];
  const copied = new Map<readonly unknown[], ReadonlySet<Node>>();
  const models = new Set<Node>();
  const groupsOf = (value: Node | null, around: readonly unknown[]): readonly Group[] =>
    (found.length < MOST ? (isSeq(value) ? (value.items as readonly Node[]) : [value]) : [])
      .map((each) => (isAlias(each) ? each.resolve(parsed) : each))
      .filter((each): each is Group => isMap(each) && each.items.length <= MOST_KEYS && !around.includes(each));
  const flow = ({ value }: Entry): string =>
    stringify(value === null ? null : value.toJS(parsed, { maxAliasCount: MOST }), {
      collectionStyle: "flow",
      lineWidth: 0,
    }).trim();
  visit(parsed, {
    Map(_, map, around) {
      const group = map as Group;
      const merges = group.items.filter((each) => nameOf(each) === "<<");
      if (merges.length === 0) return;
      const path = pathOf([...around, group]);
      const names = new Set(group.items.map(nameOf));
      const all: Entry[] = [];
      for (const { key, value } of merges) {
        const groups = groupsOf(value, [...around, group]);
        for (const each of groups) models.add(each);
        const more = groups.flatMap(({ items }) => items).filter((each) => !names.has(nameOf(each)));
        const own = more.filter((each, at) => more.findIndex((other) => nameOf(other) === nameOf(each)) === at);
        for (const each of own) names.add(nameOf(each));
        all.push(...own);
        const written = own.map((each) => `${nameOf(each)}: ${flow(each)}`);
        const isFlow = group.flow === true;
        found.push({
          key,
          value: value ?? key,
          path,
          mend: mendOf(written, groups.length > 0),
          isFlow,
          written: own.length > 0 ? written : undefined,
        });
      }
      group.items = [...group.items.filter((each) => !merges.includes(each)), ...all];
      copied.set(group.items, new Set(all.map(({ key }) => key)));
    },
  });
  return { found, copied, models };
}
