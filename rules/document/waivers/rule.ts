import { is, open, type RawCheck, rule } from "@plumbmark/kit";
import { type DocumentWaiver, misnamed } from "./misnamed.js";
import { signed } from "./signed.js";

type Problem = DocumentWaiver["problems"][number];

const told = ({ label }: DocumentWaiver, { path, says, mend, needs }: Problem): RawCheck =>
  needs ? open({ path, label }, { says, mend, needs }) : is({ path, label }, { holds: false, says, mend });

/** What ran out and has nothing left to excuse is in the way, no more. */
const leftover = (waiver: DocumentWaiver): boolean => waiver.state === "expired" && waiver.excuses?.length === 0;

export default rule({
  id: "document.waivers",
  states: "A waiver names one rule, what it accepts, a reason, a person who may and a last day, and excuses something.",
  level: "shall",
  why: "An exception nobody signed, or that ran out last season, is no exception. One that excuses nothing, or everything, or whatever figure there is, hides the next fault.",
  judged:
    "Every waiver is looked at for the rule and the place it names, its reason, its person and its last day. For a check that measures something it says what it `accepts`; a worse figure is not waived. It is for what `fails`, or, with `of: open`, for what cannot be told. It lasts to the last day on site or longer, at most 366 days for a build that stays. It is signed by somebody other than the preparer, one whom the house standard lets waive. A requirement of `rigging` or `power` needs a licensed engineer or electrician as well: `licensed: {by, licence, on, file}`. What the front matter, parts, sign-off, waivers and the structure's letter are judged by is never waived, nor what a plugin failed to judge. That a waiver excuses nothing, or a requirement in several places at once, or runs for very long, is a recommendation only.",
  sources: ["house"],
  settings: {
    longest: {
      us: 400,
      iec: 400,
      stricter: "less",
      describe: "most days a waiver may still run, common practice, no source",
    },
  },
  *checks({ build, settings }) {
    for (const waiver of build.waivers) {
      const wrong = misnamed(build, waiver);
      const { problems, uncovered, until, formerRule, rule: now } = waiver;
      if (formerRule !== undefined)
        yield {
          ...is(
            { path: `${waiver.path}.rule`, label: waiver.label },
            {
              holds: false,
              says: `The rule \`${formerRule}\` is now called \`${now}\`.`,
              mend: `Write \`${now}\`: the old name is read in this version, and no longer in the next.`,
            },
          ),
          level: "note",
        };
      if (wrong) yield is(waiver, { holds: false, ...wrong });
      else if (problems.length > 0 && !leftover(waiver)) for (const each of problems) yield told(waiver, each);
      else {
        for (const each of uncovered) yield told(waiver, each);
        if (until !== undefined && uncovered.length === 0)
          yield* signed(waiver, until, build.context.today, settings.longest);
      }
    }
  },
});
