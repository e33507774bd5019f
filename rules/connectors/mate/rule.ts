import { mates } from "@plumbmark/calc";
import { type Build, is, open, rule } from "@plumbmark/kit";

type Meeting = Build["meetings"][number];

export default rule({
  id: "connectors.mate",
  states: "Both ends of every joint are of types that mate.",
  level: "shall",
  why: "A plug that does not fit is found out on the ladder, an hour before doors.",
  judged:
    "Connector families of both sides of every joint, looked up in the table from the standards: at the panels, at the ports of the processor, and along the picture path. Plugs in the venue's outlets are judged elsewhere.",
  sources: ["iec-60320", "iec-60309", "nema-wd6", "practice"],
  *checks({ build }) {
    for (const meetings of alike(build.meetings)) {
      const { path, label, where, sides } = meetings[0] as Meeting;
      const thing = { path, label };
      const [one, other] = sides;
      const places = meetings.length === 1 ? where : `${where} and ${meetings.length - 1} more`;
      const fit = one !== undefined && other !== undefined ? mates(one, other) : undefined;
      if (fit === undefined) {
        const says =
          one === undefined || other === undefined
            ? `${label}: a connector at ${places} is not written down.`
            : `${label}: whether ${one} and ${other} mate at ${places} is in no table.`;
        yield open(thing, { says, mend: "State the connectors of the parts in the catalogue.", needs: [path] });
      } else
        yield is(thing, {
          holds: fit,
          says: `${label}: ${one} ${fit ? "mates" : "does not mate"} with ${other} at ${places}.`,
          mend: "Take a cable with connectors that fit both sides.",
        });
    }
  },
});

/** Joints of one cable between the same families make one check, so that a wrong plug is told once. */
function alike(all: readonly Meeting[]): readonly (readonly Meeting[])[] {
  const groups = new Map<string, Meeting[]>();
  for (const meeting of all) {
    const key = [meeting.path, ...meeting.sides].join(" ");
    groups.set(key, [...(groups.get(key) ?? []), meeting]);
  }
  return [...groups.values()];
}
