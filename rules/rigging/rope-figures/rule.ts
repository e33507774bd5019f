import {
  LEAST_ROPE_AREA,
  LEAST_ROPE_MASS,
  ROPE_GRADE,
  ropeAreas,
  ropeMassLeast,
  ropeStrengthMost,
  SOLID,
  tabled,
} from "@plumbmark/calc";
import { atLeast, atMost, type Bar, open, type RawCheck, rule, written } from "@plumbmark/kit";

type Strand = Bar["hangs"][number]["strands"][number]["assembly"];

/** As the table has it: without its core, lay and blanks. */
const plainName = (construction: string): string =>
  construction
    .toLowerCase()
    .replace(/\s+/gu, "")
    .replace(/×/gu, "x")
    .replace(/[-+(].*$/u, "");

const areaOf = (construction: string | undefined): number =>
  construction === undefined ? LEAST_ROPE_AREA : (ropeAreas[plainName(construction)] ?? SOLID);

/** What the greatest strength of a rope rests on; its least mass is of another table. */
const STRENGTH = ["rope-factors", "practice"] as const;

function* ofRope(bar: Bar, assembly: Strand, each: Strand["parts"][number]): Iterable<RawCheck> {
  const { name, part, path } = each;
  if (!part) return;
  const construction = written(part.data.construction);
  const breaking = assembly.statedStrength(each);
  const most = ropeStrengthMost.of({
    d: assembly.valueOf(each, "diameter", "length", "diameter"),
    C: tabled(areaOf(construction), "factor", "rope-factors", construction ?? "the least of any construction"),
    R: tabled(ROPE_GRADE, "stress", "practice", "the strongest grade that is drawn"),
  });
  if (construction === undefined && breaking.known && most.known && breaking.value > most.value) {
    yield open(bar, {
      says: `${bar.label}: how rope ${name} is made is not written down, so whether it can break as late as it says cannot be told.`,
      mend: `Write \`construction\` of ${name} in ${part.file}, as its data sheet has it: 7x19.`,
      needs: [`${path}.construction`],
      sources: STRENGTH,
    });
    return;
  }
  yield atMost(bar, {
    measured: breaking,
    allowed: most,
    says: ({ measured, allowed }) =>
      `${bar.label}: rope ${name}${construction === undefined ? "" : `, ${construction},`} is said to break at ${measured}; the steel in it bears ${allowed} at most.`,
    mend: "Read breaking strength, unit and diameter off the certificate again.",
    sources: STRENGTH,
  });
}

/** A rope of a known construction is never lighter than its wires; what its ends weigh stands in no table. */
function* massOfRope(bar: Bar, assembly: Strand, each: Strand["parts"][number]): Iterable<RawCheck> {
  const construction = written(each.part?.data.construction);
  if (construction === undefined || ropeAreas[plainName(construction)] === undefined) return;
  const measured = assembly.valueOf(each, "mass", "mass", "mass");
  const allowed = ropeMassLeast.of({
    W: tabled(LEAST_ROPE_MASS, "factor", "rope-length-mass", "the least of any construction"),
    d: assembly.valueOf(each, "diameter", "length", "diameter"),
    L: assembly.valueOf(each, "length", "length", "length"),
  });
  // What is not written is asked for by the rules that weigh and measure.
  if (!measured.known || !allowed.known) return;
  yield atLeast(bar, {
    measured,
    allowed,
    says: (words) =>
      `${bar.label}: rope ${each.name} is said to weigh ${words.measured}; its wires alone weigh ${words.allowed} at least.`,
    mend: "Correct the mass, the diameter or the length of the rope, or a unit.",
    sources: ["rope-length-mass"],
  });
}

export default rule({
  id: "rigging.rope-figures",
  states: "No rope is said to break later than the steel in it can bear, or to weigh less than its wires.",
  level: "should",
  why: "A breaking strength in pounds that is entered as kilograms more than doubles the rope, and every factor that rests on it holds.",
  judged:
    "Breaking strength of every wire rope, before its termination, against C × d² × R: the metallic area by its `construction` and its diameter, and the strongest grade that is drawn, 2,160 N/mm² (from memory). A construction in no table counts as a rod of solid steel of the rope's diameter; where none is written, the least of the table has to be enough, else it is open. No rope reaches it: laying wires up costs a tenth and more. Of a construction in the table the mass, too, against 0.29 kg for each 100 m and mm² of its diameter squared: a tenth under the least length mass factor. What ferrules and thimbles weigh stands in no table at hand, so the mass of a rope is never assumed.",
  sources: ["rope-factors", "rope-length-mass", "practice"],
  *checks({ build }) {
    for (const bar of build.bars) {
      const seen = new Set<string>();
      const all = [
        ...bar.hangs.flatMap(({ strands }) => strands.map(({ assembly }) => assembly)),
        ...(bar.second ? [bar.second.assembly] : []),
      ];
      for (const assembly of all)
        for (const each of assembly.parts) {
          if (each.part?.kind !== "rope" || seen.has(each.name)) continue;
          seen.add(each.name);
          yield* ofRope(bar, assembly, each);
          yield* massOfRope(bar, assembly, each);
        }
    }
  },
});
