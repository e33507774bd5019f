import { atMost, type Build, rule, type SharedThing } from "@plumbmark/kit";
import { type SharedWords, sharedChecks } from "../../shared-use.js";

const wordsFor = ({ of }: SharedThing): SharedWords => ({
  says: ({ label }, measured, allowed) =>
    of === "point"
      ? `${label} bears ${measured} at worst with all builds that hang there; it is rated ${allowed}.`
      : `${label} bears ${measured} with all builds that hang from it; it is stated to carry ${allowed} in all.`,
  mend: "Hang one of the builds elsewhere, or on other days. A licensed engineer states what the structure carries.",
});

/** Whether the build itself holds on to it more than once: several hangs at a point, several bars under a structure. */
const isShared = ({ of, own, name }: SharedThing, build: Build): boolean =>
  of === "point" ? own.length > 1 : build.bars.filter(({ under }) => under === name).length > 1;

/** What the build alone puts on what it holds on to more than once, whoever else is there and whenever that is. */
function* ofItself(build: Build) {
  for (const thing of build.shared("point", "structure"))
    if (isShared(thing, build))
      yield atMost(thing, {
        measured: thing.worst([]).total,
        allowed: thing.allowed,
        says: ({ measured, allowed }) =>
          thing.of === "point"
            ? `${thing.label} bears ${measured} at worst with all hangs of this build that hold on to it; it is rated ${allowed}.`
            : `${thing.label} bears ${measured} with all bars of this build under it; it is stated to carry ${allowed} in all.`,
        mend: "Hang a bar from another structure, or take weight off. A licensed engineer states what the structure carries.",
      });
}

export default rule({
  id: "rigging.shared-structure",
  states: "What several bars or builds hang from a point or a structure at once is no more than it is stated to carry.",
  level: "shall",
  why: "Two riggers each know their own load, and a bar knows only its own. The beam bears all of it.",
  judged:
    "Over all documents of the repository that are in the same venue on any of this build's days on site: every point of the venue that several hang from, and every structure in all. At a point each hang counts with what it bears in the worst balance of its bar and with its hardware; of a structure each bar counts with everything that hangs from it. The day on which most hangs there decides, against the ratings as this document has them. Drafts and builds without days are left out; how it would be with them is told at level `note`. A structure with several bars of this build under it, and a point that several of its hangs name, is judged by the build alone as well, whatever its days.",
  sources: ["practice", "arithmetic"],
  *checks({ build }) {
    yield* ofItself(build);
    yield* sharedChecks(build.shared("point", "structure"), wordsFor);
  },
});
