import { leastOf, times } from "@plumbmark/calc";
import {
  atLeast,
  atMost,
  type Bar,
  type Build,
  type Hang,
  is,
  open,
  type Part,
  type RawCheck,
  rule,
  tabled,
} from "@plumbmark/kit";
import { overPeople } from "../over-people.js";

const RIGGING = { path: "rigging", label: "The rigging" };

/** A catch is twice the load at least, so half of what breaks it is left for the catch itself. */
const CATCH_FACTOR = 2;

function* ofHang(bar: Bar, hang: Hang): Iterable<RawCheck> {
  const { second } = bar;
  if (!second) return;
  const load = hang.worst.reaction;
  const caught = second.caught(load);
  yield atMost(second, {
    measured: load,
    allowed: second.assembly.weakest,
    says: (words) =>
      `At ${hang.name} ${words.measured} would hang on the second suspension; its weakest part is rated ${words.allowed}.`,
    mend: "Take a second suspension of a higher WLL.",
  });
  yield atMost(second, {
    measured: caught,
    allowed: times(
      leastOf(
        second.assembly.parts.map((part) => second.assembly.strengthOf(part)),
        "mass",
        "breaking strength",
      ),
      1 / CATCH_FACTOR,
      "½",
    ),
    says: (words) =>
      `At ${hang.name} the second suspension catches with ${words.measured}; half of what its weakest part breaks at is ${words.allowed}.`,
    mend: "Take out the slack, or take a second suspension of a higher breaking strength.",
  });
  for (const { thing, catching, load: pull } of hang.bridled
    ? hang.legs.map((leg) => ({ thing: leg, catching: leg.catching, load: leg.tension(caught) }))
    : [{ thing: hang, catching: hang.catching, load: caught }])
    yield atMost(thing, {
      measured: pull,
      allowed: catching,
      says: (words) =>
        `${thing.label}: a caught load pulls the structure with ${words.measured}; it bears ${words.allowed} there.`,
      mend: "Take out the slack, or have a licensed engineer state what the structure bears when a load is caught there (`catch`).",
    });
}

/** Hardware such as a shackle or a link; what takes hold of a pipe or of a flange joins no ends. */
const joins = ({ kind, data: { fits, flange } }: Part): boolean =>
  kind === "hardware" && fits === undefined && (flange === undefined || flange === "none");

function* ofBar(bar: Bar, most: number): Iterable<RawCheck> {
  const { second } = bar;
  if (!second) {
    yield open(bar, {
      says: `No second suspension of bar ${bar.name} is written down.`,
      mend: `Write where it is, its parts, its way round the structure and its slack under \`${bar.path}.second\`.`,
      needs: [`${bar.path}.second`],
    });
    return;
  }
  if (second.assembly.parts.length === 0) {
    yield open(second, {
      says: `${second.label} has no parts.`,
      mend: `Write its parts under \`${second.path}.assembly\`.`,
      needs: [`${second.path}.assembly`],
    });
    return;
  }
  const { hangs, rope } = second;
  const without = bar.hangs.filter((hang) => !second.isAt(hang)).map(({ name }) => name);
  if (!hangs)
    yield open(second, {
      says: `At which hangs ${second.label.replace(/^The/u, "the")} is is not written down.`,
      mend: `Write \`at: each hang\` under \`${second.path}\`.`,
      needs: [`${second.path}.at`],
    });
  else
    yield is(second, {
      holds: without.length === 0,
      says:
        without.length === 0 ? `${second.label} is at each hang.` : `${second.label} is not at ${without.join(", ")}.`,
      mend: "Fit one at each hang.",
    });
  yield is(second, {
    holds: rope !== undefined,
    says: rope
      ? `${second.label} catches by ${rope.name}.`
      : `${second.label} has no rope, chain or sling in it, so it catches nothing.`,
    mend: "Put a rope, chain or sling in it; a sling of the catalogue says what it is made of, under `sling`.",
  });
  // A rope lies round structure and bar and is joined with itself; what joins it has a rating, as the rope has.
  const isJoined = second.assembly.parts.some(({ part }) => part && joins(part));
  if (rope && !isJoined)
    yield open(second, {
      says: `${second.label} has ${rope.name} and nothing that joins its ends.`,
      mend: `Write the shackle or link that joins them under \`${second.path}.assembly\`; one that its maker has fitted to the rope, too, as a part of its own with its WLL.`,
      needs: [`${second.path}.assembly`],
    });
  const unmeant = second.assembly.parts.filter(({ part }) => part?.data.secondary === false).map(({ name }) => name);
  if (unmeant.length > 0)
    yield is(second, {
      holds: false,
      says: `${second.label} has ${unmeant.join(", ")} in it, which the maker does not let catch a load.`,
      mend: "Take parts that are made for it.",
    });
  // Its own way round the structure is its own anchor: what hangs on the clamp of the hang falls with it.
  yield atLeast(second, {
    measured: second.girth,
    allowed: tabled(0, "length", "practice", "some way round the structure"),
    says: ({ measured }) => `${second.label} goes round the structure itself, ${measured}.`,
    mend: "Lead it round the structure, apart from the hang.",
  });
  const { leastGirth } = second;
  if (leastGirth?.known && second.girth.known)
    yield atLeast(second, {
      measured: second.girth,
      allowed: leastGirth,
      says: ({ measured, allowed }) =>
        `${second.label} is said to go ${measured} round the structure; over and under what is that wide it is ${allowed} at least.`,
      mend: "Measure the way round the structure again, with the tape where the rope will lie. A rope that is cut to less does not reach the bar.",
    });
  yield atMost(second, {
    measured: second.slack,
    allowed: tabled(most, "length", "house", "most slack"),
    says: ({ measured, allowed }) => `${second.label} has ${measured} of slack; ${allowed} is the most.`,
    mend: "Take the slack out: a load that falls an inch is caught with many times its weight.",
  });
  for (const hang of bar.hangs) if (second.isAt(hang)) yield* ofHang(bar, hang);
}

/** Whether a bar stays up without any one hang: then a second suspension is advised, and not what saves people. */
const staysUp = (bar: Bar): boolean => "length" in bar.losses && bar.losses.every(({ tips }) => !tips);

/** What is made to catch a load carries nothing all the time: it is not in the first way as well. */
function* keptFree(bar: Bar): Iterable<RawCheck> {
  for (const hang of bar.hangs)
    for (const { assembly, path, label } of hang.strands)
      for (const { name } of assembly.parts.filter(({ part }) => part?.data.secondary === true))
        yield is(
          { path, label },
          {
            holds: false,
            says: `${label}: ${name} is made as a second suspension, and here it carries the load all the time.`,
            mend: "Hang the bar by parts that are made to carry, and keep this one for the second way.",
          },
        );
}

function* older(build: Build): Iterable<RawCheck> {
  if (!build.reader.has("rigging.secondary")) return;
  yield open(RIGGING, {
    says: "`secondary` lists parts and does not say where they are, how they reach and with what slack, so whether they catch anything cannot be told.",
    mend: "Write `second: {at: each hang, assembly: […], girth: …, slack: none}` at each bar.",
    needs: build.bars.map(({ path }) => `${path}.second`),
  });
}

export default rule({
  id: "rigging.secondary",
  states: "Whatever hangs over people has a second, independent suspension that holds the load when it catches it.",
  level: "shall",
  why: "One part that fails, or one shackle that was never closed, must not drop the load on anybody. A second rope with an inch of slack is hit by many times the load.",
  judged:
    "Over people, each bar's `second`: at each hang, with a rope, chain or sling in it, a rope with what joins its ends (a shackle or a link; a clamp or a collar joins none), round the structure itself (`girth`) and so on its own anchor, and with no more slack than the setting. What a hang carries at worst, W, is inside the WLL of its weakest part. The force of the catch is 2 × W without slack, else W × (1 + √(1 + 2 × EA ÷ L × s ÷ W)), with the stiffness EA its maker states and the length L of the rope; it is at most half the breaking strength of the weakest part, a rope's with its termination, and at most what the structure bears when a load is caught there (`catch` of the letter), else its rating. A part that its maker means as a second suspension (`secondary: true`) does not carry the load at a hang, and one its maker does not (`secondary: false`) is not in the second. Slack or stiffness that is not written is open. Whether it is long enough is judged by rigging.reach. Where losing any one hang tips the bar this is a requirement; where the bar stays up on the others, a recommendation. The list `secondary` of older documents is open.",
  sources: ["caught-energy", "dguv-17-7", "dguv-215-313-2.1", "dguv-215-313-2.3", "practice"],
  settings: {
    slack: {
      us: 0.25 * 0.0254,
      iec: 0.006,
      kind: "length",
      stricter: "less",
      describe: "most slack of a second suspension",
    },
  },
  *checks({ build, settings }) {
    const over = overPeople(build);
    if (over === false || (build.bars.length === 0 && !build.faces.some(({ support }) => support === "flown"))) return;
    if (over === undefined) {
      yield open(RIGGING, {
        says: "Whether people are below is not written down.",
        mend: "Write `over-people: true` or `over-people: false` under `rigging`.",
        needs: ["rigging.over-people"],
      });
      return;
    }
    if (build.bars.length === 0)
      yield open(RIGGING, {
        says: "No second suspension is written down.",
        mend: "Write the bar, its hangs and its second suspension under `rigging.bars`.",
        needs: ["rigging.bars"],
      });
    yield* older(build);
    for (const bar of build.bars) yield* keptFree(bar);
    for (const bar of build.bars)
      for (const each of ofBar(bar, Number(settings.slack))) yield staysUp(bar) ? { ...each, level: "should" } : each;
  },
});
