import { times } from "@plumbmark/calc";
import { atLeast, atMost, type Hang, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Grip = Hang["grips"][number];

/** A pipe is sold as 48.3 mm and 1.9 in alike, and measures within a hundredth of that; a flange is measured. */
const PLAY = 0.01;

/** What is held, in words: the bar's own pipe, else what is above. */
const heldBy = ({ end, by }: Grip): string =>
  end === "bar" ? "the bar is" : by === "flange" ? "the flange above is" : "the pipe above is";

function* ofGrip(grip: Grip): Iterable<RawCheck> {
  const { path, label, part, by, end, made, there } = grip;
  const here = { path, label };
  if (by === "round" || by === "eye") {
    const how = by === "round" ? "is laid round" : "hangs in an eye of";
    yield is(here, { holds: true, says: `${label}: ${part.name} ${how} the ${end}.` });
    return;
  }
  if (by === "straight") {
    yield open(here, {
      says: `${label}: ${part.name} is pulled straight, and what joins it to the ${end} is not written down.`,
      mend:
        end === "bar"
          ? "Write what takes hold of the bar as its last part, or `mode: choke` or `basket` where it is laid round."
          : "Write what takes hold of the structure as its first part, or `mode: choke` or `basket` where it is laid round.",
      needs: [path],
    });
    return;
  }
  if (!by || !made) {
    yield open(here, {
      says: `${label}: the catalogue does not say what ${part.name} takes hold of.`,
      mend:
        end === "bar"
          ? "Enter the pipes it is made for in the catalogue under `fits`, or write what takes hold of the bar as the last part."
          : "Enter in the catalogue, from the maker's sheet, the flanges it is made for under `flange` or the pipes under `fits`; `flange: none` for what hangs in an eye.",
      needs: [path],
    });
    return;
  }
  const [thin, thick] = made;
  const [least, greatest] = by === "flange" ? made : [times(thin, 1 - PLAY, "0.99"), times(thick, 1 + PLAY, "1.01")];
  const size = by === "flange" ? "wide" : "thick";
  const mend = by === "flange" ? "Take a clamp made for this flange." : "Take one that is made for this pipe.";
  yield atLeast(here, {
    measured: there,
    allowed: least,
    says: ({ measured, allowed }) =>
      `${label}: ${heldBy(grip)} ${measured} ${size}; ${part.name} takes hold from ${allowed}.`,
    mend,
  });
  yield atMost(here, {
    measured: there,
    allowed: greatest,
    says: ({ measured, allowed }) =>
      `${label}: ${heldBy(grip)} ${measured} ${size}; ${part.name} takes hold up to ${allowed}.`,
    mend,
  });
}

export default rule({
  id: "rigging.fit",
  states: "What takes hold of the bar and of the structure is made for their size.",
  level: "shall",
  why: "A collar for a thinner pipe does not close, one for a thicker pipe slides and rocks; a clamp on too wide a flange hangs by its tips. Marked loads are for what they are made for.",
  judged:
    "Of every hang the last part of its assembly against the outside diameter of the bar, or of a truss's chord, and the first against the structure: a beam clamp (`flange` of its part) against the width of the flange, a collar (`fits` of its part) against the diameter of the pipe, as the survey or the bar has them. Of a bridle the legs take hold above. A sling that is choked or laid as a basket goes round anything; one that is pulled straight leaves open what joins it. `flange: none` hangs in an eye, which the letter on the structure covers. What a part is made for and nobody wrote down is open. A pipe may be a hundredth thinner or thicker than what is stated.",
  sources: ["part", "practice"],
  *checks({ build }) {
    for (const bar of build.bars) for (const hang of bar.hangs) for (const grip of hang.grips) yield* ofGrip(grip);
  },
});
