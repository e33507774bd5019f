import { times } from "@plumbmark/calc";
import {
  atLeast,
  atMost,
  type Bar,
  type Build,
  type Face,
  is,
  open,
  type RawCheck,
  rule,
  tabled,
} from "@plumbmark/kit";
import { overPeople } from "../over-people.js";

type Carried = Bar["carries"][number];

interface Factors {
  readonly factor: number;
  /** Over people: half the maker's WLL instead of the factor. */
  readonly half: boolean;
}

function* ofColumn(bar: Bar, carried: Carried, people: boolean, { factor, half }: Factors): Iterable<RawCheck> {
  const { hungBy } = carried.face;
  if (!hungBy) return;
  const load = hungBy.load(bar.heaviestColumn(carried));
  yield atMost(hungBy, {
    measured: load,
    allowed: half ? times(hungBy.wll, 0.5, "½") : hungBy.wll,
    says: (words) =>
      `${hungBy.label}: one ${hungBy.name} carries ${words.measured}; ${half ? "over people half its WLL" : "its WLL"} is ${words.allowed}.`,
    mend: "Take an attachment of a higher WLL, more of them, or fewer panels below one another.",
  });
  if (!half)
    yield atLeast(hungBy, {
      measured: hungBy.designFactor(load),
      allowed: tabled(factor, "factor", "house", `design factor${people ? " over people" : " of a static load"}`),
      says: (words) =>
        `${hungBy.label}: one ${hungBy.name} breaks at ${words.measured} times what it carries; ${words.allowed} times is the least${people ? " over people" : ""}.`,
      mend: "Take an attachment of a higher breaking strength, more of them, or fewer panels below one another.",
    });
  const { grip } = bar.section;
  const [thin, thick] = hungBy.fits;
  yield atLeast(hungBy, {
    measured: grip,
    allowed: times(thin, 1 - PLAY, "0.99"),
    says: (words) =>
      `${hungBy.label}: ${bar.label} is ${words.measured} thick; ${hungBy.name} fits from ${words.allowed}.`,
    mend: "Take an attachment made for this pipe.",
  });
  yield atMost(hungBy, {
    measured: grip,
    allowed: times(thick, 1 + PLAY, "1.01"),
    says: (words) =>
      `${hungBy.label}: ${bar.label} is ${words.measured} thick; ${hungBy.name} fits up to ${words.allowed}.`,
    mend: "Take an attachment made for this pipe.",
  });
}

/** A pipe is sold as 48.3 mm and 1.9 in alike, and measures within a hundredth of that. */
const PLAY = 0.01;

function* ofFace(build: Build, face: Face, people: boolean, factors: Factors): Iterable<RawCheck> {
  const { hungBy } = face;
  if (!hungBy) {
    yield open(face, {
      says: `What hangs the columns of face ${face.name} from the bar is not written down.`,
      mend: `Write the attachment under \`${face.path}.hung-by\`.`,
      needs: [`${face.path}.hung-by`],
    });
    return;
  }
  yield atLeast(hungBy, {
    measured: hungBy.count,
    allowed: hungBy.needed,
    says: ({ measured, allowed }) =>
      `${hungBy.label}: there are ${measured} ${hungBy.name}; its columns need ${allowed}.`,
    mend: "Take as many as the columns need.",
    mends: hungBy.needed.known ? [{ at: `${hungBy.path}.count`, becomes: `${hungBy.needed.value}`, sure: true }] : [],
  });
  const { takes } = hungBy;
  const panels = [...new Set(face.kinds.map(({ part }) => part?.name ?? ""))];
  const strange = panels.filter((name) => !(takes ?? []).includes(name));
  if (takes === undefined)
    yield open(hungBy, {
      says: `${hungBy.label}: the catalogue does not say which panels ${hungBy.name} is made for.`,
      mend: "Enter them in the catalogue under `takes`, from the maker's sheet.",
      needs: [`${hungBy.path}`],
    });
  else
    yield is(hungBy, {
      holds: strange.length === 0,
      says:
        strange.length === 0
          ? `${hungBy.label}: ${hungBy.name} is made for its panels.`
          : `${hungBy.label}: ${hungBy.name} is not made for ${strange.join(", ") || "its panels"}.`,
      mend: "Take the attachment that the maker of the panels names.",
    });
  const extra = `${face.path}.extras.${hungBy.name}`;
  const written = face.reader.data(extra);
  const twice = written !== undefined;
  yield is(hungBy, {
    holds: !twice,
    says: twice
      ? `${hungBy.label}: ${hungBy.name} stands under \`extras\` as well, and is counted and weighed twice.`
      : `${hungBy.label}: it is counted once.`,
    mend: `Take \`${hungBy.name}\` out of \`${face.path}.extras\`.`,
    // As many as the columns need are these very ones; of another number only a person knows what they are.
    ...(twice
      ? { mends: [{ at: extra, becomes: undefined, sure: hungBy.needed.known && written === hungBy.needed.value }] }
      : {}),
  });
  for (const bar of build.bars)
    for (const carried of bar.carries) if (carried.face === face) yield* ofColumn(bar, carried, people, factors);
}

export default rule({
  id: "rigging.attachment",
  states: "Every column hangs from attachments whose WLL, strength, number, pipe and panels suit.",
  level: "shall",
  why: "Between the bar and the first panel there is one hook. It is hidden when the face is up, and everything below hangs on it.",
  judged:
    "The attachment a flown face names under `hung-by`: as many as its columns need; the heaviest column with its share of what the face carries, its jumpers and the cables that end in it, times the columns one carries, against its WLL and, over people, against the factor or half the WLL, as an assembly (rigging.design-factor); what hangs below or behind the same columns counts with it; the diameter of the pipe, or of a truss's chord, within a hundredth of what it fits; the panels it is made for. The same part under `extras` is counted twice.",
  sources: ["part", "dguv-215-313-2.1", "house"],
  settings: {
    static: { us: 5, iec: 5, stricter: "more", describe: "least design factor of a static load with nobody below" },
    "over-people": { us: 8, iec: 10, stricter: "more", describe: "least design factor over people" },
    "half-wll": { us: false, iec: true, describe: "over people at most half the maker's WLL instead of the factor" },
  },
  *checks({ build, settings }) {
    const flown = build.faces.filter(({ support }) => support === "flown");
    if (flown.length === 0) return;
    const people = overPeople(build);
    if (people === undefined) {
      yield open(
        { path: "rigging", label: "The rigging" },
        {
          says: "Whether people are below is not written down, so what attachments have to hold is not known.",
          mend: "Write `over-people: true` or `over-people: false` under `rigging`.",
          needs: ["rigging.over-people"],
        },
      );
      return;
    }
    const half = people && settings["half-wll"] === true;
    const factor = Number(settings[people ? "over-people" : "static"]);
    for (const face of flown) yield* ofFace(build, face, people, { factor, half });
  },
});
