import { tabled } from "@plumbmark/calc";
import { atLeast, is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.design-factor",
  states:
    "Breaking strength is at least the design factor that is set times the load; over people the factor is higher.",
  level: "shall",
  why: "Wear, knocks, a crooked pull and a jerk of the hoist eat into the strength of hardware. Over people nothing of that may end in a fall.",
  judged:
    "The least breaking strength of every assembly, a rope's reduced by its termination, divided by what it carries, against the factor for a load with or without people below.",
  sources: ["wac-296-24-29401", "ec-2006-42-4.1.2.5", "dguv-215-313-2.1", "house"],
  settings: {
    static: { us: 5, iec: 5, stricter: "more", describe: "least design factor of a static load with nobody below" },
    "over-people": { us: 8, iec: 10, stricter: "more", describe: "least design factor over people" },
  },
  *checks({ build, settings }) {
    const over = build.reader.data("rigging.over-people");
    const hangs = build.bars.flatMap((bar) => bar.hangs);
    if (hangs.length > 0 && typeof over !== "boolean") {
      yield open(
        { path: "rigging", label: "The rigging" },
        {
          says: "Whether people are below is not written down, so the design factor is not known.",
          mend: "Write `over-people: true` or `over-people: false` under `rigging`.",
          needs: ["rigging.over-people"],
        },
      );
      return;
    }
    const required = tabled(
      Number(settings[over ? "over-people" : "static"]),
      "factor",
      "house",
      over ? "design factor over people" : "design factor of a static load",
    );
    for (const hang of hangs)
      for (const { assembly, load, path, label } of hang.strands) {
        const here = { path, label };
        const carried = load(hang.reaction);
        if (carried.known && carried.value === 0)
          yield is(here, { holds: true, says: `${label} carries nothing while the bar is level.` });
        else
          yield atLeast(here, {
            measured: assembly.designFactor(carried),
            allowed: required,
            says: (words) =>
              `${label} breaks at ${words.measured} times what it carries; ${words.allowed} times is the least${over ? " over people" : ""}.`,
            mend: "Add a hang, or take hardware of a higher breaking strength.",
          });
      }
  },
});
