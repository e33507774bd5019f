import { is, open, rule } from "@plumbmark/kit";
import { misnamed } from "./misnamed.js";
import { signed } from "./signed.js";

export default rule({
  id: "document.waivers",
  states: "A waiver names one rule, a reason, a person and a last day that has not passed, and excuses something.",
  level: "shall",
  why: "An exception nobody signed, or that ran out last season, is no exception. One that excuses nothing, or everything, hides the next fault.",
  judged:
    "Every waiver is looked at for its four fields, the rule and the place it names, and its last day against the day of the inspection. That it excuses nothing, or a requirement in several places at once, or runs for very long, is a recommendation only.",
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
      if (wrong) yield is(waiver, { holds: false, ...wrong });
      else if (waiver.absent.length > 0)
        yield open(waiver, {
          says: `${waiver.label} does not say ${waiver.absent.map((field) => `\`${field}\``).join(", ")}.`,
          mend: "Write the rule, the reason, the person and the last day.",
          needs: waiver.absent.map((field) => `${waiver.path}.${field}`),
        });
      else if (waiver.until === undefined)
        yield is(waiver, {
          holds: false,
          says: `${waiver.label} has a last day that is no day.`,
          mend: "Write it as year, month and day, such as 2027-06-30.",
        });
      else yield* signed(waiver, waiver.until, build.context.today, settings.longest);
    }
  },
});
