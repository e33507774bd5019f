import { rule, type SharedThing } from "@plumbmark/kit";
import { type SharedWords, sharedChecks } from "../../shared-use.js";

const wordsFor = ({ of }: SharedThing): SharedWords => ({
  says: ({ label }, measured, allowed) =>
    of === "point"
      ? `${label} bears ${measured} at worst with all builds that hang there; it is rated ${allowed}.`
      : `${label} bears ${measured} with all builds that hang from it; it is stated to carry ${allowed} in all.`,
  mend: "Hang one of the builds elsewhere, or on other days. A licensed engineer states what the structure carries.",
});

export default rule({
  id: "rigging.shared-structure",
  states: "What several builds hang from a point or a structure at once is no more than it is stated to carry.",
  level: "shall",
  why: "Two riggers each know their own load. The beam bears both.",
  judged:
    "Over all documents of the repository that are in the same venue on any of this build's days on site: every point of the venue that several hang from, and every structure in all. At a point each hang counts with what it bears in the worst balance of its bar and with its hardware; of a structure each bar counts with everything that hangs from it. The day on which most hangs there decides, against the ratings as this document has them. Drafts and builds without days are left out; how it would be with them is told at level `note`.",
  sources: ["practice", "arithmetic"],
  *checks({ build }) {
    yield* sharedChecks(build.shared("point", "structure"), wordsFor);
  },
});
