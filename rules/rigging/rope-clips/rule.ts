import { clipsNeeded } from "@plumbmark/calc";
import { type AssemblyPart, is, open, type RawCheck, rule } from "@plumbmark/kit";

/** Sizes of the chart by sixteenths of an inch, from one on; its least is for what is thinner, too. */
const SIZES = ["1/8", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2"];

/** The size the chart lists for a rope: the next larger where it is metric, the safe side. */
const sizeOf = (metres: number): string | undefined => SIZES[Math.ceil((metres / 0.0254) * 16 - 1e-6) - 1];

function check({ name, part, clips, path }: AssemblyPart, label: string): RawCheck {
  const here = { path, label };
  const diameter = part?.quantities.get("diameter");
  if (!diameter)
    return open(here, {
      says: `${label}: ${name} has no diameter in the catalogue.`,
      mend: "Enter its diameter in the catalogue.",
      needs: [`${name}.diameter`],
    });
  if (clips === undefined)
    return open(here, {
      says: `${label}: how many clips ${name} has on each eye is not written down.`,
      mend: "Count the clips of each eye and write them under `clips`.",
      needs: [`${path}.clips`],
    });
  const size = sizeOf(diameter.value);
  // Nothing tells that the clips are forged, so the larger count holds unless the maker's sheet is on record.
  const needed =
    size === undefined
      ? undefined
      : clipsNeeded(size, { makersSheet: part?.data["clips-by"] !== undefined, forged: false });
  if (!needed)
    return open(here, {
      says: `${label}: no chart at hand lists clips for the diameter of ${name}.`,
      mend: "Have a qualified rigger state the count by the maker's sheet.",
      needs: [`${name}.diameter`],
    });
  return is(here, {
    holds: clips >= needed.count,
    says: `${label}: each eye of ${name} has ${clips} clips; ${needed.count} are needed.`,
    mend: "Put on more clips, saddle on the live end, or take a rope with pressed eyes.",
  });
}

export default rule({
  id: "rigging.rope-clips",
  states: "Wire-rope eyes made with clips have enough of them.",
  level: "shall",
  why: "An eye with one clip too few holds while it is new and creeps open under load.",
  judged:
    "Clips on each eye against the maker's chart where the maker's sheet is on record, else four, the count for clips that are not known to be drop-forged.",
  sources: ["cfr-1918-app-2", "clip-charts"],
  *checks({ build }) {
    const strands = build.bars.flatMap((bar) => bar.hangs).flatMap((hang) => hang.strands);
    for (const { assembly, label } of strands)
      for (const part of assembly.parts) if (part.termination === "clips") yield check(part, label);
  },
});
