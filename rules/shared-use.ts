import type { Booked, SharedThing, WorstDay } from "@plumbmark/kit";
import { atMost, is, open, type RawCheck } from "@plumbmark/kit";

/** Words of one kind of shared thing. */
export interface SharedWords {
  /** `Circuit stage-4 carries 18.8 A`: what it comes to on the worst day. */
  readonly says: (thing: SharedThing, measured: string, allowed: string) => string;
  readonly mend: string;
}

const LEVEL = { level: "note" } as const;

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
  const undated = things.filter(({ stay }) => stay === undefined);
  const first = undated.find(({ others }) => alone || others.length > 0);
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
    const { counted, leftOut, stay } = thing;
    if (stay !== undefined) {
      if (alone || counted.length > 0) yield compared(thing, counted, words(thing));
      else yield is(thing, { holds: true, says: `On the days on site no other build uses ${of(thing)}.` });
    }
    if (leftOut.length > 0 || (stay === undefined && counted.length > 0)) {
      const check = compared(thing, [...counted, ...leftOut], words(thing));
      const also = leftOut.length > 0 ? ` ${whole(leftOut)} would be there, too, as a draft or without days.` : "";
      yield { ...check, ...LEVEL, says: (said) => `${check.says(said)}${also}` };
    }
  }
}
