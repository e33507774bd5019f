import { cordUse, type SourceId } from "@plumbmark/calc";
import { type Build, type Cable, is, open, type RawCheck, type Run, rule } from "@plumbmark/kit";

interface Asked {
  readonly use: "extra-hard" | "heavy";
  readonly words: string;
  readonly such: string;
  readonly source: SourceId;
}

const ASKED: Readonly<Record<"us" | "iec", Asked>> = {
  us: { use: "extra-hard", words: "for extra-hard usage", such: "SOOW or STOOW", source: "nec-520.68" },
  iec: { use: "heavy", words: "for heavy duty", such: "H07RN-F", source: "hd-22.4" },
};

/** In iec practice it is a recommendation: the clause is not at hand in print. */
const grave = (practice: "us" | "iec", check: RawCheck): RawCheck =>
  practice === "iec" ? { ...check, level: "should" } : check;

/** The type of one cord. What is known of a type from memory only is told and fails nothing. */
function judgeType(cable: Cable, practice: "us" | "iec"): RawCheck {
  const { use, words, such, source } = ASKED[practice];
  const jacket = cable.part?.data.jacket;
  const type = typeof jacket === "string" ? cordUse(jacket) : undefined;
  const mend = `Take a cord ${words}, such as ${such}.`;
  const needs = [cable.part ? `${cable.part.name}.jacket` : `${cable.path}.part`];
  if (typeof jacket !== "string")
    return open(cable, {
      says: `${cable.label}: its cord type is not written down.`,
      mend: "Read it off the jacket, and write it under `jacket` of the part.",
      needs,
      sources: [source],
    });
  if (!type)
    return open(cable, {
      says: `${cable.label} is of the type ${jacket}, which is in no table at hand.`,
      mend,
      needs,
      sources: [source],
    });
  if (type.use !== use && type.source.endsWith("-memory"))
    return open(cable, {
      says: `${cable.label} is of the type ${jacket}; it is not listed ${words} as far as we know.`,
      mend,
      needs,
      sources: [source, type.source],
    });
  return is(cable, {
    holds: type.use === use,
    says: `${cable.label} is of the type ${jacket}, ${type.use === use ? words : `which is not made ${words}`}.`,
    mend,
    sources: [source, type.source],
  });
}

/** What of the building a feed that stays there is led through or fastened to. */
function judgeWay({ feed }: Run, build: Build): RawCheck {
  const { reader } = build;
  const path = `${feed.path}.passes`;
  const passes = reader.list(path).filter((each) => typeof each === "string");
  if (!reader.isNone(path) && passes.length === 0)
    return open(feed, {
      says: `${feed.label}: what of the building it runs through, above or is fastened to is not written down.`,
      mend: "Write `passes: none` where it lies open from outlet to panel, else what it passes: `[wall, fastened]`.",
      needs: [path],
      sources: ["nec-400.12"],
    });
  return is(feed, {
    holds: passes.length === 0,
    says:
      passes.length === 0
        ? `${feed.label} lies open from its outlet to the panel.`
        : `${feed.label} stays, and passes ${passes.join(", ")}: there it stands in for the wiring of the building.`,
    mend: "Have a licensed electrician bring an outlet to the place, so that the cord reaches from there to the panel.",
    sources: ["nec-400.12", "nec-400.10"],
  });
}

/** A way out stays clear, however short the build. */
const judgeExit = (run: Run): RawCheck =>
  is(run.feed, {
    holds: false,
    says: `${run.feed.label} lies across a way out, or holds a fire door open.`,
    mend: "Lead it over the door or another way. Nothing lies in a way out, not for an hour either.",
    sources: ["osha-1910.37"],
  });

export default rule({
  id: "power.cord-type",
  states: "Cords are of a type made for where they lie, and none stands in for the wiring of the building.",
  level: "shall",
  why: "A light cord on a stage is crushed by the first trolley. One that is led through a wall or fastened to it for years wears through where nobody sees it.",
  judged:
    "In us practice, where the build is portable equipment `on-stage`, every feed and jumper by the letters on its jacket: listed for extra-hard usage (S and its kin; SJ is hard usage and fails). In a build that stays (`on-site: from …`) every feed by what it `passes`: through, above or fastened to the building it is refused; an open cord from its outlet to the panel is what 400.10 permits. A feed that passes an `exit` is refused, however short the build. In iec practice cords on a stage are recommended to be of the H07RN-F class. A type that is known from memory only, or not at all, is open.",
  sources: [
    "nec-520.68",
    "nec-400.4",
    "nec-400.4-memory",
    "nec-400.10",
    "nec-400.12",
    "osha-1910.37",
    "hd-22.4",
    "iec-harmonised-memory",
  ],
  *checks({ build }) {
    const { practice, runs, reader, stay } = build;
    if (runs.length === 0) return;
    const onStage = reader.data("on-stage");
    const stage = { path: "on-stage", label: build.label };
    if (onStage === false)
      yield is(stage, { holds: true, says: "The build is no portable equipment on a stage.", sources: ["nec-520.68"] });
    if (typeof onStage !== "boolean")
      yield grave(
        practice,
        open(stage, {
          says: "Whether the build is portable equipment on a stage is not written down; it decides which cords are allowed.",
          mend: "Write `on-stage: true` or `on-stage: false`. A stage of any building used for presentations, drama or music counts, a church among them.",
          needs: ["on-stage"],
        }),
      );
    for (const run of runs) {
      const cables = (run.panels?.length ?? 0) > 1 ? [run.feed, run.jumper] : [run.feed];
      if (onStage === true) for (const cable of cables) yield grave(practice, judgeType(cable, practice));
      if (build.reader.list(`${run.feed.path}.passes`).includes("exit")) yield grave(practice, judgeExit(run));
      if (stay && stay.to === undefined) yield grave(practice, judgeWay(run, build));
    }
  },
});
