import type { Booked, SharedThing, WorstDay } from "@plumbmark/kit";
import { atMost, is, open, type RawCheck } from "@plumbmark/kit";

/** Words of one kind of shared thing. */
export interface SharedWords {
  /** `Circuit stage-4 carries 18.8 A`: what it comes to on the worst day. */
  readonly says: (thing: SharedThing, measured: string, allowed: string) => string;
  readonly mend: string;
}

/** Who uses it with the build, and how much each. */
function withWhom({ day, others }: WorstDay): string {
  if (others.length === 0) return "";
  const list = others.map(({ file, path, text }) => `${file} (${path}) ${text}`).join(", ");
  return ` ${day === undefined ? "On every day" : `On ${day}`} with ${list}.`;
}

const of = ({ label, of: kind, which }: SharedThing): string =>
  which === undefined || kind === "item" ? label : `${label} (${which})`;

const whole = (others: readonly Booked[]): string => [...new Set(others.map(({ file }) => file))].join(", ");

/** One comparison of what some others and the build use together on the worst day. */
function compared(thing: SharedThing, others: readonly Booked[], words: SharedWords): RawCheck {
  const worst = thing.worst(others);
  const unknown = thing.unknownIn(others);
  const { total } = worst;
  const { allowed } = thing;
  const isOver = total.known && allowed.known && total.value > allowed.value * (1 + 1e-9);
  // What is known may be too much already; only when it is not does the unknown matter.
  if (unknown.length > 0 && !isOver)
    return open(thing, {
      says: `What ${of(thing)} has to bear in all cannot be told: how much of it ${unknown.join(", ")} ${unknown.length === 1 ? "uses" : "use"} is not written down, or guessed.`,
      mend: `Write down in ${unknown.join(", ")} what is missing there.`,
    });
  const leg = worst.leg === undefined ? "" : ` Leg ${worst.leg} is the fullest.`;
  return atMost(thing, {
    measured: total,
    allowed,
    says: ({ measured, allowed: most }) => `${words.says(thing, measured, most)}${leg}${withWhom(worst)}`,
    mend: words.mend,
  });
}

/** How it would be with those that are left out. */
interface Supposed {
  readonly thing: SharedThing;
  readonly check: RawCheck;
  /** Files of those that are left out, as a text. */
  readonly whose: string;
  readonly holds: boolean;
}

function supposed(thing: SharedThing, words: SharedWords): Supposed | undefined {
  const { counted, leftOut, stay, allowed } = thing;
  if (leftOut.length === 0 && (stay !== undefined || counted.length === 0)) return undefined;
  const others = [...counted, ...leftOut];
  const check = compared(thing, others, words);
  const { total } = thing.worst(others);
  const holds = check.form === "compare" && total.known && allowed.known && total.value <= allowed.value * (1 + 1e-9);
  return { thing, check, whose: whole(leftOut.length > 0 ? leftOut : counted), holds };
}

/** Notes on things that are shared with the same documents are one note: a page of them is read by nobody. */
function* notes(all: readonly Supposed[]): Iterable<RawCheck> {
  const groups = new Map<string, Supposed[]>();
  for (const each of all) groups.set(each.whose, [...(groups.get(each.whose) ?? []), each]);
  for (const [whose, group] of groups) {
    const [first] = group as [Supposed];
    const also =
      first.thing.stay === undefined
        ? ` Without days this build is there beside ${whose} on every day.`
        : ` ${whose} would be there, too, as a draft or without days.`;
    if (group.length === 1) {
      yield { ...first.check, level: "note", says: (said) => `${first.check.says(said)}${also}` };
      continue;
    }
    const over = group.filter(({ holds }) => !holds);
    const list = over.slice(0, MOST_NAMED).map(({ thing }) => of(thing));
    const more = over.length > MOST_NAMED ? ` and ${over.length - MOST_NAMED} more` : "";
    const says =
      over.length === 0
        ? `All that is shared would do for all.${also}`
        : `Not enough for all, or not to be told: ${list.join("; ")}${more}.${also}`;
    const mend =
      first.thing.stay === undefined
        ? { mend: "Write the days under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`." }
        : { mend: first.check.mend ?? "" };
    yield { ...is((over[0] ?? first).thing, { holds: over.length === 0, says, ...mend }), level: "note" };
  }
}

/** So many things are named in a note. */
const MOST_NAMED = 6;

/**
 * Checks of what the build shares with others: with those that are sure, and at level `note` how it would be with drafts
 * and documents without days.
 * @param alone whether it is compared where nobody else uses it: what is owned may not be enough for one build
 */
export function* sharedChecks(
  things: readonly SharedThing[],
  words: (thing: SharedThing) => SharedWords,
  alone = false,
): Iterable<RawCheck> {
  const first = things.find(({ stay, others }) => stay === undefined && (alone || others.length > 0));
  if (first)
    yield open(
      { path: "on-site", label: "The build" },
      {
        says: "The build has no dates on site that can be read, so with whom it shares what cannot be told.",
        mend: "Write the days under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`.",
        needs: ["on-site"],
      },
    );
  for (const thing of things) {
    if (thing.stay === undefined) continue;
    if (alone || thing.counted.length > 0) yield compared(thing, thing.counted, words(thing));
    else yield is(thing, { holds: true, says: `On the days on site no other build uses ${of(thing)}.` });
  }
  yield* notes(things.flatMap((thing) => supposed(thing, words(thing)) ?? []));
}
