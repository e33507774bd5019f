import { difference, type Known, sum, type Value } from "@plumbmark/calc";
import { atLeast, atMost, type Bar, type Hang, is, type RawCheck, rule, type Thing, tabled } from "@plumbmark/kit";

/** A way and what spans it: with the setting either way it is neither too short nor too long. */
function* spans(thing: Thing, way: Value, [short, long]: readonly [Value, Value], within: Value): Iterable<RawCheck> {
  yield atLeast(thing, {
    measured: long,
    allowed: difference(way, within, "length", "way"),
    says: ({ measured, allowed }) =>
      `${thing.label}: its parts reach ${measured} at most; the way, less all it may be off, is ${allowed}.`,
    mend: "Take a longer rope, or a turnbuckle with more take-up; correct the heights if they are wrong.",
  });
  yield atMost(thing, {
    measured: short,
    allowed: sum([way, within], "length", "way"),
    says: ({ measured, allowed }) =>
      `${thing.label}: its parts are ${measured} long at least; the way, with all it may be off, is ${allowed}.`,
    mend: "Take a shorter rope, or a turnbuckle with more take-up; correct the heights if they are wrong.",
  });
}

type Leg = Hang["legs"][number];

/** The run that is written against the place of the leg's point, where the survey has both. */
function* ofRun(leg: Leg, within: Value): Iterable<RawCheck> {
  const { writtenRun: run, runByPoint } = leg;
  if (!run || !runByPoint) return;
  const says = ({ measured, allowed }: { measured: string; allowed: string }, most: string): string =>
    `${leg.label} has a run of ${measured}; from its point to over its hang it is ${allowed} at ${most}.`;
  const mend = "Correct the run, the point the leg goes up to, or the place of the hang.";
  yield atLeast(leg, {
    measured: run,
    allowed: difference(runByPoint, within, "length", "run"),
    says: (words) => says(words, "least"),
    mend,
  });
  yield atMost(leg, {
    measured: run,
    allowed: sum([runByPoint, within], "length", "run"),
    says: (words) => says(words, "most"),
    mend,
  });
}

/** Both legs to one side have nothing to balance them: the bar swings until it hangs below its points. */
function* ofSide(leg: Leg, within: Known): Iterable<RawCheck> {
  const { sideByPoint, runByPoint, side } = leg;
  // A point right above its hang, as far as anybody measures, is on neither side.
  if (!runByPoint?.known || runByPoint.value <= within.value) return;
  yield is(leg, {
    holds: sideByPoint === side,
    says: `${leg.label} goes up to a point that is to the ${sideByPoint} of its hang, as the audience sees it.`,
    mend: `Take a point to the ${side} of the hang. Legs that both pull to one side let the bar swing away until it hangs below its points. A qualified rigger works out the bridle.`,
  });
}

/** What hangs below the apex reaches the bar. By each leg's own rise: where both agree, it is said once. */
function* ofApex(hang: Hang, within: Value): Iterable<RawCheck> {
  if (hang.assembly === undefined) return;
  const [left, right] = hang.legs.map(({ apexDrop }) => apexDrop);
  const agree = left?.known && right?.known && Math.abs(left.value - right.value) < 1e-9;
  for (const leg of agree || !left?.known ? hang.legs.slice(0, 1) : hang.legs)
    yield* spans(
      { path: hang.path, label: `${hang.label}, below the apex its ${leg.side} leg makes` },
      leg.apexDrop,
      hang.ownAssembly.length,
      within,
    );
}

function* ofHang(hang: Hang, within: Known): Iterable<RawCheck> {
  if (!hang.bridled) {
    yield* spans(hang, hang.bar.drop, hang.ownAssembly.length, within);
    return;
  }
  for (const leg of hang.legs) {
    yield* spans(leg, leg.length, leg.assembly.length, within);
    yield* ofRun(leg, within);
    yield* ofSide(leg, within);
  }
  yield* ofApex(hang, within);
}

function* ofSecond(bar: Bar): Iterable<RawCheck> {
  const { second } = bar;
  if (second)
    yield atLeast(second, {
      measured: second.length[1],
      allowed: second.way,
      says: ({ measured, allowed }) =>
        `${second.label} is ${measured} long at most; round the structure and down to the bar it is ${allowed}.`,
      mend: "Take a longer rope: it goes round the structure and down to the bar.",
    });
}

/** A face hangs its attachment's drop below the middle of the bar, and its trim has to say so. */
function* trims(bar: Bar, within: Value): Iterable<RawCheck> {
  for (const { face } of bar.carries) {
    const { hungBy, trim } = face;
    if (!hungBy || !trim) continue;
    const bottom = difference(bar.height, sum([hungBy.drop, face.height], "length", "below"), "length", "lower edge");
    yield atLeast(face, {
      measured: trim,
      allowed: difference(bottom, within, "length", "lower edge"),
      says: (words) =>
        `${face.label}: its trim is ${words.measured}; from the height of the bar its lower edge comes to ${words.allowed} at least.`,
      mend: "Correct the trim, the height of the bar or the attachment's drop.",
    });
    yield atMost(face, {
      measured: trim,
      allowed: sum([bottom, within], "length", "lower edge"),
      says: (words) =>
        `${face.label}: its trim is ${words.measured}; from the height of the bar its lower edge comes to ${words.allowed} at most.`,
      mend: "Correct the trim, the height of the bar or the attachment's drop.",
    });
  }
}

export default rule({
  id: "rigging.reach",
  states: "What a hang, a leg or a second suspension is made of is as long as its way.",
  level: "shall",
  why: "A rope that is a foot short is found out at the top of a ladder, and what is then put in between has no marking.",
  judged:
    "Length of an assembly: the `length` of its ropes and the `effective` length of its hardware, of a turnbuckle from its shortest to its longest. A hang's way is the height its hardware bears on less the height of the middle of the bar; a bridle leg's is √(rise² + run²), and below the apex it is the height the leg bears on less its rise and the height of the bar; all have to be met within the setting. Where the survey has the point of a leg and the place of the bar, the run of the leg has to be the distance from the one to over its hang, and the point on the side the leg is named by: two legs to one side hold nothing where it is. A second suspension has to reach round the structure (`girth`) and down to the bar. The trim of a face has to be the height of the bar less the attachment's drop and the height of the face, within the setting.",
  sources: ["geometry", "practice"],
  settings: {
    within: {
      us: 0.0254,
      iec: 0.025,
      kind: "length",
      stricter: "less",
      describe: "how far a length may be off its way",
    },
  },
  *checks({ build, settings }) {
    const within = tabled(Number(settings.within), "length", "house", "how far it may be off");
    for (const bar of build.bars) {
      for (const hang of bar.hangs) yield* ofHang(hang, within);
      yield* ofSecond(bar);
      yield* trims(bar, within);
    }
  },
});
