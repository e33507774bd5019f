import { type Build, is, open, rule } from "@plumbmark/kit";

const FIELDS = ["rule", "because", "by", "until"] as const;

/** What stands in the body has paths of its own. */
const OF_BODY = /^(?:cautions|links|sections|tasks)(?:\.|$)/u;

/** Whether a place is one: in the front matter, among the computed values, or in the body. */
const leads = (build: Build, where: string | undefined): boolean =>
  where === undefined || OF_BODY.test(where) || build.reader.data(where) !== undefined || build.values.has(where);

export default rule({
  id: "document.waivers",
  states: "A waiver names a rule, a reason, a person and a date that has not passed.",
  level: "shall",
  why: "An exception nobody signed, or that ran out last season, is no exception.",
  judged:
    "Every waiver is looked at for its four fields, the place it is for, and its last day against the day of the inspection.",
  sources: ["house"],
  *checks({ build }) {
    const waivers = build.reader.data("waivers");
    if (!Array.isArray(waivers)) return;
    for (let number = 1; number <= waivers.length; number += 1) {
      const path = `waivers.${number}`;
      const thing = { path, label: `Waiver ${number}` };
      const absent = FIELDS.filter((field) => !build.reader.text(`${path}.${field}`)?.trim());
      const until = build.reader.text(`${path}.until`) ?? "";
      const named = build.reader.text(`${path}.rule`);
      if (named !== undefined && !build.around.rules.includes(named))
        yield is(thing, {
          holds: false,
          says: `Waiver ${number} names the rule \`${named}\`, which there is not.`,
          mend: "List the rules with `plumbmark rules`.",
        });
      else if (!leads(build, build.reader.text(`${path}.where`)))
        yield is(thing, {
          holds: false,
          says: `Waiver ${number} is for \`${build.reader.text(`${path}.where`)}\`, which is not in the document.`,
          mend: "Write the path the check is reported with, such as `faces.banner`, or leave `where` out for the whole document.",
        });
      else if (absent.length > 0)
        yield open(thing, {
          says: `Waiver ${number} does not say ${absent.map((field) => `\`${field}\``).join(", ")}.`,
          mend: "Write the rule, the reason, the person and the last day.",
          needs: absent.map((field) => `${path}.${field}`),
        });
      else
        yield is(thing, {
          holds: until >= build.around.today,
          says:
            until >= build.around.today
              ? `Waiver ${number} is in force until ${until}.`
              : `Waiver ${number} ran out on ${until}.`,
          mend: "Mend what it excuses, or have it signed anew with a later day.",
        });
    }
  },
});
