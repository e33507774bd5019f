import { about, atLeast, counted, open, repositoryRule } from "plumbmark/kit";

const DAY = 86_400_000;

/** Whole days between the last day of one stay and the first of the next. */
const clearDays = (to, from) => (Date.parse(from) - Date.parse(to)) / DAY - 1;

/** What each build takes out of each lot; a draft promises nothing yet. */
const usesOf = (build) => {
  const { file, promises } = build.context;
  const own = promises.filter((promise) => promise.file === file && !promise.draft);
  return [...new Set(own.map(({ lot }) => lot))].map((lot) => {
    const faces = own.filter((promise) => promise.lot === lot);
    const known = faces.every(({ count }) => count !== undefined);
    const count = known ? faces.reduce((sum, each) => sum + each.count, 0) : undefined;
    return { build, lot, count, stay: faces[0].stay, thing: { path: `faces.${faces[0].face}.lot`, label: `Lot ${lot}` } };
  });
};

/** The next build that cannot be served while the panels of this one are still on their way home. */
const nextFor = (use, uses, panels) =>
  uses.find(({ build, stay, count }) => build !== use.build && stay.from > use.stay.to && use.count + count > panels);

export default repositoryRule({
  id: "house.turnaround",
  states: "Between two builds that share panels there are clear days to bring them home, look them over and load them again.",
  level: "should",
  why: "Panels that come off one stage at midnight and go up on the next in the morning go up unchecked and dirty, and a late truck stops two shows.",
  judged:
    "For every lot, each build and the next one that needs some of the same panels: the whole days between the last day of the one and the first of the other. Builds that the lot can serve at once share nothing, and stays that overlap are for stock.promised-twice.",
  sources: ["house"],
  settings: {
    days: { us: 2, iec: 2, stricter: "more", describe: "least clear days between two builds that share panels" },
  },
  *checks({ repository, limits }) {
    const all = repository.builds.flatMap(usesOf).filter(({ lot }) => repository.lots.has(lot));
    for (const { build, lot, thing } of all.filter(({ count, stay }) => count === undefined || !stay))
      yield about(
        build,
        open(thing, {
          says: `How many panels of ${lot} the build takes, or when it is on site, is not written down.`,
          mend: "Write the spares of its faces, and its first and last day under `on-site`.",
          needs: ["on-site"],
        }),
      );
    const told = all.filter(({ count, stay }) => count !== undefined && stay);
    const uses = told.toSorted((one, other) => (one.stay.from < other.stay.from ? -1 : 1));
    for (const use of uses.filter(({ stay }) => stay.to)) {
      const same = uses.filter(({ lot }) => lot === use.lot);
      const next = nextFor(use, same, repository.lots.get(use.lot).count);
      if (!next) continue;
      const name = next.build.reader.text("title") ?? next.build.context.file;
      yield about(
        use.build,
        atLeast(use.thing, {
          measured: counted(clearDays(use.stay.to, next.stay.from), "clear days"),
          allowed: limits.days,
          says: ({ measured, allowed }) =>
            `Panels of ${use.lot} go on to “${name}” on ${next.stay.from}; clear days between: ${measured}, least: ${allowed}.`,
          mend: "Take panels of another lot, move one of the builds, or hire some in.",
        }),
      );
    }
  },
});
