import { atMost, type Build, type LotUse, open, type RawCheck, rule, type Turns } from "@plumbmark/kit";
import { sharedChecks } from "../../shared-use.js";

/** Spares of the face that takes of a lot, where one face does. */
function sparesOf(faces: Build["faces"], lot: string): Turns | undefined {
  const [face, ...others] = faces.filter((each) => each.reader.text(`${each.path}.lot`) === lot);
  return face && others.length === 0 ? { path: `${face.path}.spares`, sense: "at most" } : undefined;
}

const unknownSays = (name: string, unknown: readonly string[]): string =>
  `How many panels of the lot ${name} are promised cannot be told: ${unknown.join(", ")} does not say how many.`;

/** What is promised of a lot on its fullest day, of some builds. */
function promised(use: LotUse, whose: "sure" | "all", faces: Build["faces"]): readonly RawCheck[] {
  const { name } = use;
  const peak = whose === "sure" ? use.peak : use.wanted;
  const unknown = use.unknownOf(whose);
  const { inStock } = use;
  // What is known may be too much already; only when it is not does the unknown matter.
  if (unknown.length > 0 && inStock.known && (peak?.count ?? 0) <= inStock.value)
    return [
      open(use, {
        says: unknownSays(name, unknown),
        mend: "Write `columns`, `rows` and `spares` in every document that takes panels of the lot.",
        needs: unknown.includes(use.build.context.file) ? [use.path] : [],
      }),
    ];
  if (!peak) return [];
  const who = new Map<string, number>();
  for (const { build, count } of peak.bookings) who.set(build, (who.get(build) ?? 0) + count);
  const list = [...who].map(([file, count]) => `${file} ${count}`).join(", ");
  const also = whose === "all" ? " were drafts and builds without days counted" : "";
  return [
    atMost(use, {
      measured: use.countOf(peak),
      allowed: inStock,
      says: ({ measured, allowed }) =>
        `On ${peak.day} ${measured} panels of ${name} are promised (${list})${also}; there are ${allowed}.`,
      turns: whose === "sure" ? sparesOf(faces, name) : undefined,
      mend: "Take another lot for one of the builds, or move one of them.",
    }),
  ];
}

function* ofLots(build: Build): Iterable<RawCheck> {
  for (const use of build.lotUses) {
    const { name, lot, stay } = use;
    if (!lot) {
      yield open(use, {
        says: `The lot ${name} is not in the stock list.`,
        mend: "Enter the lot in the stock list.",
        needs: [use.path],
      });
      continue;
    }
    if (stay) yield* promised(use, "sure", build.faces);
    else
      yield open(use, {
        says: "The build has no dates on site that can be read.",
        mend: "Write the days under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`.",
        needs: ["on-site"],
      });
    if (stay && use.isWanted) for (const check of promised(use, "all", build.faces)) yield { ...check, level: "note" };
  }
}

export default rule({
  id: "stock.promised-twice",
  states: "Nothing that is owned is promised twice for the same day.",
  level: "shall",
  why: "Two builds that each fit the stock do not fit it together, and it comes out on the morning the second van is loaded.",
  judged:
    "Over all documents of the repository that are not drafts and say when they are on site, and this one: the most that is away on any of its days, against what the holdings have. Every lot of panels, and every part the holdings list under `items`, by length where they are listed by length, and by serial number where a document names one; what is faulty is promised to nobody. The days `out` and `back` of the holdings count besides those on site. What a build takes is what its design needs and the spares it names: where a face lists fewer out of its lots than that, the rest counts against each of them. A processor that two builds of one venue name at one place is one. How it would be with drafts, and with builds without days on every day, is told at level `note`.",
  sources: ["arithmetic"],
  *checks({ build }) {
    yield* ofLots(build);
    yield* sharedChecks(
      build.shared("item"),
      ({ label }) => ({
        says: (_, measured, allowed) => `Of ${label} ${measured} are promised; there are ${allowed}.`,
        mend: "Buy or hire what is short (`takeoff … shortfall` lists it), or move one of the builds.",
      }),
      true,
    );
  },
});
