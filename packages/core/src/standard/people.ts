import { nobodyIn, type Person, person, samePerson } from "../document/person.js";
import type { Act, HouseStandardSettings } from "../repository/house-standard.js";
import { mistakeIn, type StandardFile, type StandardMistake } from "./file.js";

export type People = NonNullable<HouseStandardSettings["people"]>;

const entryOf = (people: People, { key }: Person): readonly Act[] =>
  Object.entries(people).find(([name]) => person(name)?.key === key)?.[1] ?? [];

/** Several lists of people as one: each has to let somebody do what they do. Undefined where there is none. */
export function mergedPeople([first, ...others]: readonly People[]): People | undefined {
  if (!first || others.length === 0) return first;
  const allowed = ([name, acts]: readonly [string, readonly Act[]]): readonly [string, readonly Act[]] => {
    const who = person(name);
    return [name, who ? acts.filter((act) => others.every((other) => entryOf(other, who).includes(act))) : []];
  };
  return Object.fromEntries(Object.entries(first).map(allowed));
}

/** Whether the house standard lets somebody do something: whoever is named, where it lists nobody. */
export const may = ({ people }: Pick<HouseStandardSettings, "people">, who: Person, act: Act): boolean =>
  people === undefined || entryOf(people, who).includes(act);

/** Those who may, as the house standard names them; undefined where it lists nobody. */
export const whoMay = ({ people }: Pick<HouseStandardSettings, "people">, act: Act): readonly string[] | undefined =>
  people && Object.entries(people).flatMap(([name, acts]) => (acts.includes(act) ? [name] : []));

/** Whether two names are of one person; the house standard tells apart those whom it lists under two names. */
export function oneAndTheSame(
  { people }: Pick<HouseStandardSettings, "people">,
  one: Person,
  other: Person,
): ReturnType<typeof samePerson> {
  const same = samePerson(one, other);
  if (same !== "perhaps" || !people) return same;
  const listed = Object.keys(people).map((name) => person(name)?.key);
  return listed.includes(one.key) && listed.includes(other.key) ? "different" : same;
}

/** Names of the list that name nobody, or somebody twice. */
export function peopleMistakes(standard: StandardFile): readonly StandardMistake[] {
  const seen = new Map<string, string>();
  return Object.keys(standard.settings.people ?? {}).flatMap((name) => {
    const path = `people.${name}`;
    const who = person(name);
    if (!who)
      return [
        mistakeIn(
          standard,
          path,
          `\`people\` lists \`${name}\`, which ${nobodyIn(name) ?? "names nobody"}.`,
          "Write the name of a person, such as `R. Tallow`.",
        ),
      ];
    const earlier = seen.get(who.key);
    seen.set(who.key, name);
    return earlier === undefined
      ? []
      : [
          mistakeIn(
            standard,
            path,
            `\`people\` lists \`${name}\`, who is \`${earlier}\` in another spelling.`,
            "Keep one of them, with everything they may do.",
          ),
        ];
  });
}
