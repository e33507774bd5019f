import { type Booking, counted, peakUse, tabled } from "@plumbmark/calc";
import { atMost, type Build, open, rule } from "@plumbmark/kit";

type Promised = Build["around"]["promises"][number];
type Stay = NonNullable<Promised["stay"]>;

/** Days both are on site; undefined when there is none. A stay without an end lasts. */
function common(own: Stay, other: Stay): Stay | undefined {
  const from = own.from > other.from ? own.from : other.from;
  const ends = [own.to, other.to].filter((each) => each !== undefined).sort();
  const to = ends[0];
  if (to === undefined) return { from };
  return to < from ? undefined : { from, to };
}

interface Claims {
  readonly bookings: readonly Booking[];
  /** Documents whose number or dates are not written down. */
  readonly unknown: readonly string[];
}

/** Who has panels of the lot on the days of this build; a draft of somebody else promises nothing. */
function claimsOn(lot: string, stay: Stay, build: Build): Claims {
  const all = build.around.promises.filter(
    (each) => each.lot === lot && (each.file === build.around.file || !each.draft),
  );
  const unknown = (each: Promised): boolean =>
    each.stay === undefined || (each.count === undefined && common(stay, each.stay) !== undefined);
  const bookings = all.flatMap((each) => {
    const days = each.stay && common(stay, each.stay);
    return days && each.count !== undefined ? [{ lot, build: each.file, count: each.count, ...days }] : [];
  });
  return { bookings, unknown: [...new Set(all.filter(unknown).map(({ file }) => file))] };
}

export default rule({
  id: "panels.stock",
  states: "A lot is never promised twice for the same day.",
  level: "shall",
  why: "Two builds that each fit the stock do not fit it together, and it comes out on the morning the second van is loaded.",
  judged:
    "Over all documents of the repository that are not drafts, and this one, the largest number of panels and spares of a lot away on any of this build's days on site, against what the stock list has. Days of transport are not counted.",
  sources: ["arithmetic"],
  *checks({ build }) {
    const own = build.around.promises.filter(({ file }) => file === build.around.file);
    for (const lot of new Set(own.map((each) => each.lot))) {
      const stock = build.around.stock.lots.get(lot);
      const path = `faces.${own.find((each) => each.lot === lot)?.face}.lot`;
      const thing = { path, label: `Lot ${lot}` };
      const stay = own[0]?.stay;
      if (!stock || !stay) {
        yield open(
          thing,
          stock
            ? {
                says: "The build has no dates on site that can be read.",
                mend: "Write the days under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`.",
                needs: ["on-site"],
              }
            : {
                says: `The lot ${lot} is not in the stock list.`,
                mend: "Enter the lot in the stock list.",
                needs: [path],
              },
        );
        continue;
      }
      const { bookings, unknown } = claimsOn(lot, stay, build);
      const peak = peakUse(bookings)[0];
      // What is known may be too much already; only when it is not does the unknown matter.
      if (unknown.length > 0 && (peak?.count ?? 0) <= stock.count) {
        yield open(thing, {
          says: `How many panels of the lot ${lot} are promised cannot be told: ${unknown.join(", ")} does not say how many, or on which days.`,
          mend: "Write `spares` and `on-site` in every document that takes panels of the lot.",
          needs: ["on-site"],
        });
        continue;
      }
      if (!peak) continue;
      const who = [...new Set(peak.bookings.map((each) => each.build))].join(", ");
      yield atMost(thing, {
        measured: counted(peak.count, `panels of ${lot} away on ${peak.day}`),
        allowed: tabled(stock.count, "count", "house", `panels of ${lot} in the stock list`),
        says: ({ measured, allowed }) =>
          `On ${peak.day} ${measured} panels of ${lot} are promised (${who}); there are ${allowed}.`,
        mend: "Take another lot for one of the builds, or move one of them.",
      });
    }
  },
});
