import { times } from "@plumbmark/calc";
import { atMost, type Bar, rule } from "@plumbmark/kit";
import { otherLoadTurns } from "../other-load.js";

/** A bar that cannot be solved has no spans; the check says what is not written down. */
const spansOf = (bar: Bar) =>
  bar.spans.length > 0 ? bar.spans : [{ label: "on its hangs", length: bar.length, sag: bar.moment }];

export default rule({
  id: "rigging.bar-deflection",
  states: "Deflection of the bar stays under its span divided by the setting.",
  level: "should",
  why: "Panels hang as the bar does: a bar that sags opens the seams below and shuts them above, and the locks bind.",
  judged:
    "How far the bar sinks between its hangs and beyond the outer ones, from its second moment and modulus, against the span; an overhang counts as a span of twice its length. All hangs are taken as taut: a bar that sags since a hang is slack is levelled before panels are locked, and its strength is judged apart.",
  sources: ["practice", "statics"],
  settings: { ratio: { us: 240, iec: 240, stricter: "more", describe: "span divided by the largest deflection" } },
  *checks({ build, settings }) {
    const ratio = Number(settings.ratio);
    for (const bar of build.bars)
      for (const { label, length, sag } of spansOf(bar))
        yield atMost(bar, {
          measured: sag,
          allowed: times(length, 1 / ratio, `1 ÷ ${ratio}`),
          says: ({ measured, allowed }) => `${bar.label} sinks ${measured} ${label}; ${allowed} is the most.`,
          turns: otherLoadTurns(bar),
          mend: "Add a hang, bring the hangs closer together, or take a stiffer section.",
        });
  },
});
