import { atMost, counted, open, type RawCheck, rule, type Thing } from "@plumbmark/kit";

const DAY = 86_400_000;

/** Whole days from one day to another; less than nothing where the other is the earlier. */
const daysBetween = (from: string, to: string): number => Math.round((Date.parse(to) - Date.parse(from)) / DAY);

const unsaid = (thing: Thing, says: string, mend: string, needs: string): RawCheck =>
  open(thing, { says, mend, needs: [needs] });

export default rule({
  id: "venue.survey-age",
  states: "The survey of the venue is not too old on the last day on site.",
  level: "should",
  why: "Halls are rewired, beams get loaded with something else and seats are moved. A survey tells what somebody saw on one day.",
  judged:
    "Days from `surveyed.on` of the survey to the last day on site; of a build that stays, to the day of the inspection or its first day, whichever is later. A survey of a day to come was not made yet.",
  sources: ["practice"],
  settings: {
    days: { us: 730, iec: 730, stricter: "less", describe: "most days from the survey to the last day on site" },
  },
  *checks({ build, repository, limits }) {
    const { survey, surveyedOn } = build.venue;
    if (!survey) return;
    const thing = { path: "venue", label: build.venue.label };
    const { stay } = build;
    if (surveyedOn === undefined || surveyedOn > repository.today) {
      yield unsaid(
        thing,
        surveyedOn === undefined
          ? `The survey ${survey.name} (${survey.file}) does not say on which day it was made.`
          : `The survey ${survey.name} (${survey.file}) is of ${surveyedOn}, a day to come.`,
        `Write the day under \`surveyed.on\` in ${survey.file}.`,
        "surveyed.on",
      );
      return;
    }
    if (!stay) {
      yield unsaid(thing, "The build has no days on site.", "Write them under `on-site`.", "on-site");
      return;
    }
    const last = stay.to ?? (repository.today > stay.from ? repository.today : stay.from);
    yield atMost(thing, {
      measured: counted(Math.max(0, daysBetween(surveyedOn, last)), "days"),
      allowed: limits.days,
      says: ({ measured, allowed }) =>
        `On ${last} the survey ${survey.name} of ${surveyedOn} is ${measured} days old; ${allowed} is the most.`,
      mend: "Have the venue looked at again, and write the day.",
    });
  },
});
