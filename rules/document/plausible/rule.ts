import { times } from "@plumbmark/calc";
import { atLeast, atMost, type Build, is, type RawCheck, rule } from "@plumbmark/kit";

type Stand = NonNullable<Build["faces"][number]["stand"]>;

/** A base that is a tenth as deep as its face is high stands like a plank on its edge (common practice). */
const LEAST_DEPTH = 0.1;

/** Edges are measured and rounded; a footprint may look a little larger than the base it is under. */
const ALLOWANCE = 1.05;

function* ofStand(stand: Stand): Iterable<RawCheck> {
  const { face, depth, footprint, baseArea } = stand;
  yield atLeast(stand, {
    measured: depth,
    allowed: times(face.height, LEAST_DEPTH, "1 ÷ 10"),
    says: ({ measured, allowed }) =>
      `${stand.label} is ${measured} deep; under a face this high ${allowed} is the least that is plausible.`,
    mend: "Correct the depth of the base, or its unit. If it is right, waive this with the name of whoever designed the base.",
  });
  // That none is written is for rigging.deck-load to say.
  if (footprint.known)
    yield atMost(stand, {
      measured: footprint,
      allowed: times(baseArea, ALLOWANCE, "1.05"),
      says: ({ measured, allowed }) =>
        `${stand.label} is said to stand on ${measured}; from its own width and depth it covers no more than ${allowed}.`,
      mend: "Correct the footprint, or the depth and width of the base: what is larger than the base carries nothing.",
    });
}

export default rule({
  id: "document.plausible",
  states: "Every figure is of the size its field has.",
  level: "shall",
  why: "A figure with a slipped point or another unit computes as well as a right one, and whatever rests on it holds: a beam rated 1e300 lb carries everything.",
  judged:
    "Every quantity of the document and of the parts it names against the range that its field has in the schemas, which is far wider than anything ordinary: what lies outside is a slip. The depth of a base against a tenth of the height of the face on it, and a footprint against the base it is under, `width` × `depth`, or the face's own width where the base has none. The ranges are common practice.",
  sources: ["practice"],
  *checks({ build }) {
    const { implausible } = build;
    for (const { of, path, found } of implausible) {
      const name = found.title === undefined ? `\`${found.path}\`` : `\`${found.path}\` (${found.title})`;
      yield is(
        { path, label: name },
        {
          holds: false,
          says: `${of}${name} is \`${found.text}\`; from ${found.range[0]} to ${found.range[1]} is plausible.`,
          mend: "Correct the figure or its unit. If it is right, waive this with the name of whoever stands for it.",
        },
      );
    }
    if (implausible.length === 0) yield is(build, { holds: true, says: "Every figure is of the size its field has." });
    for (const { stand } of build.faces) if (stand) yield* ofStand(stand);
  },
});
