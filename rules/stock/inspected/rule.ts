import { type InspectedItem, inspectionDays, is, monthsAfter, open, type RawCheck, rule } from "@plumbmark/kit";
import { earliestFor } from "./due.js";

interface Days {
  readonly today: string;
  /** The first day on site. */
  readonly from: string;
  /** The day up to which an inspection has to be good. */
  readonly until: string;
}

const MEND = "Have it inspected by a qualified person, and write the day under `inspected` in the holdings.";

/** How it stands with the pieces that can be taken: those that are good to the last day against those that are needed. */
function judged(each: InspectedItem, { today, from, until }: Days, months: number): RawCheck {
  const { name, item, count } = each;
  const needs = [each.path];
  if (!item)
    return open(each, {
      says: `When ${name} was last inspected is not known: the holdings do not list it.`,
      mend: `List it under \`items.${name}\` in the holdings, with the day of its last inspection under \`inspected\`.`,
      needs,
    });
  const days = inspectionDays(item);
  const good = days.filter((day) => day !== undefined && day <= today && monthsAfter(day, months) >= until);
  // Not run out today, and there is a day before the build on which another would reach to its end: nobody is late yet.
  const earliest = earliestFor(until, months);
  const due = days.filter(
    (day) => day !== undefined && day <= today && monthsAfter(day, months) < until && monthsAfter(day, months) >= today,
  );
  const isComing = today < from && earliest <= from;
  const unsaid = days.filter((day) => day === undefined);
  const enough = item.serials ? (count === undefined ? days.length : count) : 1;
  if (good.length >= enough && days.length > 0) {
    const oldest = [...good].sort()[0];
    return is(each, {
      holds: true,
      says: `${name} was last inspected on ${oldest}, ${months} months or less before ${until}.`,
    });
  }
  if (good.length + unsaid.length >= enough && unsaid.length > 0)
    return open(each, {
      says: `When ${name} was last inspected is not written down in the holdings.`,
      mend: `Write the day under \`items.${name}.inspected\` in the holdings.`,
      needs,
    });
  if (isComing && due.length > 0 && good.length + unsaid.length + due.length >= enough) {
    const oldest = [...due].sort()[0] as string;
    return open(each, {
      says: `${name} was last inspected on ${oldest}, which lasts to ${monthsAfter(oldest, months)}: it has to be inspected again before the build, which comes down on ${until}.`,
      mend: `Have it inspected again by a qualified person, ${earliest > today ? `no earlier than ${earliest} and ` : ""}by ${from}, and write the day under \`inspected\` in the holdings.`,
    });
  }
  const last = days
    .filter((day) => day !== undefined && !good.includes(day))
    .sort()
    .at(-1);
  const found =
    last === undefined
      ? `There ${days.length === 0 ? `is no ${name}` : `are too few of ${name}`} that can be taken`
      : last > today
        ? `${name} is written down as inspected on ${last}, which is still to come`
        : `${name} was last inspected on ${last}, more than ${months} months before ${until}`;
  const of = item.serials ? ` (${good.length} of ${enough} needed are good to then)` : "";
  return is(each, { holds: false, says: `${found}${of}.`, mend: MEND });
}

export default rule({
  id: "stock.inspected",
  states: "Lifting gear was inspected no longer ago than the setting when the build comes down.",
  level: "shall",
  why: "A shackle that was bent last season looks like any other in the case. Somebody has to have looked.",
  judged:
    "Every rope, every piece of hardware and every attachment the design takes along, against the day of the last inspection in the holdings: that day and so many months reach the last day on site; of a build that stays, today or its first day. Where the last one has not run out yet and does before then, it is open until there is another: it has to be made so late that it reaches the end, and before the first day on site. What is listed by serial number needs as many sound pieces inspected in time as are taken. Bars, and what else the holdings write an inspection of, are recommended to be. What is looked at before each use, and daily, is the crew's and not judged here. ASME B30.26 has hardware inspected at intervals of a year at most and asks for no record; that there is a dated one is the house's.",
  sources: ["asme-b30.26-inspection", "cfr-1910-184e3", "loler-9", "house"],
  settings: {
    months: { us: 12, iec: 6, stricter: "less", describe: "most months from an inspection to the last day on site" },
  },
  *checks({ build, settings }) {
    const { inspectedUntil: until, inspectedItems: items, context, stay } = build;
    if (items.length === 0) return;
    if (until === undefined || !stay) {
      yield open(
        { path: "on-site", label: "The build" },
        {
          says: "Without dates on site it cannot be told whether lifting gear is inspected in time.",
          mend: "Write the days under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`.",
          needs: ["on-site"],
        },
      );
      return;
    }
    for (const each of items) {
      const check = judged(each, { today: context.today, from: stay.from, until }, settings.months);
      yield each.isGear ? check : { ...check, level: "should" };
    }
  },
});
