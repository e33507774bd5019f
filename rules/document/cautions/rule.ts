import { type Build, is, open, rule } from "@plumbmark/kit";

/** Whether the build lifts, as far as it is written. */
const lifts = ({ faces, bars }: Build): boolean => bars.length > 0 || faces.some((face) => face.support === "flown");

/** Whether it uses mains, as far as it is written. That it uses none is nowhere written. */
const usesMains = ({ faces, circuits, runs }: Build): boolean =>
  circuits.length > 0 ||
  runs.length > 0 ||
  faces.some((face) => face.panel?.data.supply !== undefined || face.panel?.data.power !== undefined);

export default rule({
  id: "document.cautions",
  states: "Somebody has gone over the cautions of a build that lifts or uses mains.",
  level: "shall",
  why: "Whoever opens the sheet on site may never have met this build. What can hurt them has to stand where they look first, and somebody has to have held it against this build and this house.",
  judged:
    "Flown faces and bars make a build that lifts; circuits, runs and panels with a supply make one that uses mains. The cautions for both are printed with every sheet, whatever the author writes, and no prose is graded: the rule asks that somebody has gone over them for this build, `cautions-confirmed: {by: …, on: …}`, no later than its first day on site.",
  sources: ["practice"],
  *checks({ build }) {
    const dangers = [lifts(build), usesMains(build)];
    const path = "cautions-confirmed";
    const { by, on } = build.confirmation(path);
    const thing = { path, label: build.label };
    const what = ["lifts", "uses mains"].filter((_, index) => dangers[index]).join(" and ");
    if (by === undefined || on === undefined) {
      const so = what === "" ? "Whether the build lifts or uses mains cannot be told" : `The build ${what}`;
      const says = by
        ? `${so}; on which day ${by.name} has gone over its cautions is not written down.`
        : `${so}, and nobody is written down who has gone over its cautions.`;
      yield open(thing, {
        says,
        mend: "Read the cautions printed with the sheet against this build and this house, and write `cautions-confirmed: {by: …, on: …}` with the name and the day.",
        needs: [...(by ? [] : [`${path}.by`]), ...(on ? [] : [`${path}.on`])],
      });
      return;
    }
    const first = build.stay?.from;
    const inTime = first === undefined || on <= first;
    yield is(thing, {
      holds: inTime,
      says: inTime
        ? `${by.name} has gone over the cautions on ${on}.`
        : `${by.name} has gone over the cautions on ${on}; the first day on site is ${first}.`,
      mend: "Go over the cautions before the first day on site.",
    });
  },
});
