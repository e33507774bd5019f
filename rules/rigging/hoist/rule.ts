import { times } from "@plumbmark/calc";
import { atMost, type Hang, is, open, type RawCheck, rule } from "@plumbmark/kit";

/** What a hoist is called, in its name or its description. */
const MOVES = /hoist|winch|motor/iu;

/** What moves nothing, and is described by the hoist it belongs to: `shackle for use below a hoist`. */
const STILL = /\b(?:shackle|ring|link|clamp|sling|collar|coupler|turnbuckle|eye ?bolt|eye ?nut|plate|bracket)s?\b/iu;
const BESIDE = /\b(?:for|below|under|beneath|above|over|beside|between)\b/iu;

/** Whether a hoist it is, and not only beside one: what is not plainly something else counts as one. */
function isHoist(name: string, described: string): boolean {
  if (MOVES.test(name)) return true;
  const [head = ""] = described.split(BESIDE);
  return MOVES.test(described) && (MOVES.test(head) || !STILL.test(head));
}

type Strand = Hang["strands"][number];
type Each = Strand["assembly"]["parts"][number];

function* ofHoist(hang: Hang, { path, label, assembly }: Strand, each: Each): Iterable<RawCheck> {
  const { name, part } = each;
  const here = { path, label };
  const said = part?.data.dynamic;
  const factor = part?.quantities.get("dynamic");
  if (said !== "none" && !factor) {
    yield open(here, {
      says: `${label}: ${name} moves its load, it seems; what it puts on its point when it starts and stops is not written down.`,
      mend: `Look up in its data sheet how many times its load that is, and write it under \`dynamic\` of ${name} in ${part?.file}: \`1.25\`; or \`none\` where it moves nothing.`,
      needs: [`${each.path}.dynamic`],
    });
    return;
  }
  if (!factor) {
    yield is(here, { holds: true, says: `${label}: ${name} moves nothing once it is rigged.` });
    return;
  }
  const moved = times(hang.worst.reaction, factor.value, `${factor.value} (starting and stopping)`);
  yield atMost(here, {
    measured: moved,
    allowed: assembly.weakest,
    says: (words) =>
      `${label}: ${name} starts and stops with ${words.measured}${hang.worst.when}; the weakest part is rated ${words.allowed}.`,
    mend: "Take load off the hang, or take hardware of a higher WLL.",
  });
  for (const { thing, pull, allowed } of hang.bridled
    ? hang.legs.map((leg) => ({ thing: leg, pull: leg.onStructure(leg.tension(moved)), allowed: leg.structure }))
    : [{ thing: hang, pull: hang.onStructure(moved), allowed: hang.structure }])
    yield atMost(thing, {
      measured: pull,
      allowed,
      says: (words) =>
        `${thing.label}: starting and stopping, ${name} puts ${words.measured} on the structure; it bears ${words.allowed} there.`,
      mend: "Take load off the hang, or have a licensed engineer state that the point bears a moving load.",
    });
}

export default rule({
  id: "rigging.hoist",
  states: "Where a hoist moves the load, hardware and structure bear its starting and stopping.",
  level: "shall",
  why: "A chain hoist that starts or stops pulls with more than hangs on it, and a point that holds the wall at rest may not hold it on the way up.",
  judged:
    "Of every hang with a hoist in it: the worst reaction (rigging.slack-hang) times what its maker states for starting and stopping, `dynamic` in the catalogue, against the least WLL of its parts and, with the mass of the hang, against what the structure bears. `none` is for what moves nothing once it is rigged. A part of whose name or description is a hoist, a winch or a motor, and that says nothing, is open; not a shackle, ring, clamp, sling or the like that is only for use below or above one. That hoists run together, that nobody is below while they move, and that the load is let down on its second suspension before anybody is, is for the lift plan.",
  sources: ["practice"],
  *checks({ build }) {
    for (const hang of build.bars.flatMap(({ hangs }) => hangs))
      for (const strand of hang.strands)
        for (const each of strand.assembly.parts) {
          const { part, name } = each;
          if (part?.kind !== "hardware") continue;
          if (isHoist(name, String(part.data.describes ?? "")) || part.data.dynamic !== undefined)
            yield* ofHoist(hang, strand, each);
        }
  },
});
