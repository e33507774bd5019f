import { atMost, type Build, open, rule, type Turns } from "@plumbmark/kit";

/** Spares of the face that takes of a lot, where one face does and says how many. */
function sparesOf(faces: Build["faces"], lot: string): Turns | undefined {
  const [face, ...others] = faces.filter((each) => each.reader.text(`${each.path}.lot`) === lot);
  return face && others.length === 0 && (face.spares ?? 0) > 0
    ? { path: `${face.path}.spares`, sense: "at most" }
    : undefined;
}

export default rule({
  id: "panels.stock",
  states: "A lot is never promised twice for the same day.",
  level: "shall",
  why: "Two builds that each fit the stock do not fit it together, and it comes out on the morning the second van is loaded.",
  judged:
    "Over all documents of the repository that are not drafts, and this one, the largest number of panels and spares of a lot away on any of this build's days on site, against what the stock list has. What a build takes is what its design hangs and the spares it names: where a face lists fewer out of its lots than that, the rest counts against each of them. Days of transport are not counted.",
  sources: ["arithmetic"],
  *checks({ build }) {
    for (const use of build.lotUses) {
      const { name, lot, stay, unknown, peak } = use;
      if (!lot || !stay) {
        yield open(
          use,
          lot
            ? {
                says: "The build has no dates on site that can be read.",
                mend: "Write the days under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`.",
                needs: ["on-site"],
              }
            : {
                says: `The lot ${name} is not in the stock list.`,
                mend: "Enter the lot in the stock list.",
                needs: [use.path],
              },
        );
        continue;
      }
      // What is known may be too much already; only when it is not does the unknown matter.
      if (unknown.length > 0 && (peak?.count ?? 0) <= lot.count) {
        yield open(use, {
          says: `How many panels of the lot ${name} are promised cannot be told: ${unknown.join(", ")} does not say how many, or on which days.`,
          mend: "Write `spares` and `on-site` in every document that takes panels of the lot.",
          needs: unknown.includes(build.context.file) ? ["on-site"] : [],
        });
        continue;
      }
      if (!peak) continue;
      const who = [...new Set(peak.bookings.map((each) => each.build))].join(", ");
      yield atMost(use, {
        measured: use.atPeak,
        allowed: use.inStock,
        says: ({ measured, allowed }) =>
          `On ${peak.day} ${measured} panels of ${name} are promised (${who}); there are ${allowed}.`,
        turns: sparesOf(build.faces, name),
        mend: "Take another lot for one of the builds, or move one of them.",
      });
    }
  },
});
