import { difference, sum, type Value } from "@plumbmark/calc";
import { atLeast, atMost, type Bar, type Hang, type RawCheck, rule, type Thing, tabled } from "@plumbmark/kit";

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

function* ofHang(hang: Hang, within: Value): Iterable<RawCheck> {
  if (!hang.bridled) {
    yield* spans(hang, hang.bar.drop, hang.ownAssembly.length, within);
    return;
  }
  for (const leg of hang.legs) yield* spans(leg, leg.length, leg.assembly.length, within);
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
    "Length of an assembly: the `length` of its ropes and the `effective` length of its hardware, of a turnbuckle from its shortest to its longest. A hang's way is the height its hardware bears on less the height of the middle of the bar; a bridle leg's is √(rise² + run²); both have to be met within the setting. A second suspension has to reach round the structure (`girth`) and down to the bar. The trim of a face has to be the height of the bar less the attachment's drop and the height of the face, within the setting.",
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
