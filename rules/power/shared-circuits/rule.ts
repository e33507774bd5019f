import { rule, type SharedThing } from "@plumbmark/kit";
import { type SharedWords, sharedChecks } from "../../shared-use.js";

const WORDS: Readonly<Record<string, Pick<SharedWords, "mend"> & { readonly says: SharedWords["says"] }>> = {
  circuit: {
    says: ({ label }, measured, allowed) =>
      `${label} carries ${measured} with all builds on it; its continuous rating is ${allowed}.`,
    mend: "Move one of the builds to another circuit, or to other days.",
  },
  supply: {
    says: ({ label }, measured, allowed) =>
      `${label} carries ${measured} with all builds on it; its continuous rating is ${allowed}.`,
    mend: "Take circuits of one of the builds from another supply, or move it to other days.",
  },
  outlets: {
    says: ({ label }, measured, allowed) =>
      `${label}: ${measured} are taken by all builds on the circuit; it has ${allowed}.`,
    mend: "Feed one of the builds from another circuit, or have an electrician of the house add an outlet.",
  },
};

const wordsFor = ({ of }: SharedThing): SharedWords => WORDS[of] as SharedWords;

export default rule({
  id: "power.shared-circuits",
  states:
    "A circuit that several builds use at once carries no more than its continuous rating, and has outlets for all.",
  level: "shall",
  why: "Each of two builds is right by itself, and the breaker they share trips on the evening both are lit.",
  judged:
    "Over all documents of the repository that are in the same venue on any of this build's days on site: circuits and supplies of the same name. The currents of runs and devices of every build are added, of a three-phase circuit leg by leg and plainly, which is never below the vector sum; what is written as other load is the house's, and counts once, as the most that any of the documents says. Each run takes an outlet, and the devices a circuit serves take one. The day on which most is drawn decides, against the rating as this document has it; of a generator no more counts than one of its legs gives. A venue is the name of its survey or what is written, spaces and case aside. Drafts and builds without days are left out; how it would be with them is told at level `note`.",
  sources: ["nec-210.20a", "iec-60364-4-43", "arithmetic"],
  *checks({ build }) {
    yield* sharedChecks(build.shared("circuit", "supply", "outlets"), wordsFor);
  },
});
