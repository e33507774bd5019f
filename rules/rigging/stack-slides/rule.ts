import { tabled } from "@plumbmark/calc";
import { atLeast, is, rule } from "@plumbmark/kit";
import { pushOf, pushSettings } from "../notional-push.js";

export default rule({
  id: "rigging.stack-slides",
  states: "A standing face is fixed, or friction holds it against the notional push.",
  level: "should",
  why: "On a polished or wet floor a wall of tiles slides before it tips: off the edge of the riser, or with its feet off their plates.",
  judged:
    "A base that is `fixed-to` something holds; what that bears is for whoever fixes it. Any other: γ = μ × m × g ÷ F, with everything that stands on the floor, m, the friction of its feet on this floor, μ, as somebody pulled it with a scale (`friction`), and the push F on the whole width of the face, as in rigging.stack-stability. Friction that is not written is open: it was measured from 0.1, bare steel on smooth concrete, to more than 1, and no table knows the floor.",
  sources: ["friction-temporary-works", "messe-stand-building", "ibc-1607.13"],
  settings: {
    ...pushSettings,
    factor: { us: 2, iec: 2, stricter: "more", describe: "least factor against sliding" },
  },
  *checks({ build, settings }) {
    const factor = Number(settings.factor);
    const source = factor === 2 ? "friction-temporary-works" : "house";
    for (const { stand, label } of build.faces) {
      if (!stand) continue;
      if (stand.fixedTo !== undefined) {
        yield is(stand, { holds: true, says: `${label} is fixed: ${stand.fixedTo}.` });
        continue;
      }
      const resists = stand.sliding(pushOf(settings));
      yield atLeast(stand, {
        measured: resists,
        allowed: tabled(factor, "factor", source, "factor against sliding"),
        sources: [source, "messe-stand-building", "ibc-1607.13"],
        says: ({ measured, allowed }) =>
          `${label} resists sliding ${measured} times the push; ${allowed} times is the least.`,
        ...(resists.known ? { turns: { path: `${stand.path}.ballast`, sense: "at least" as const } } : {}),
        mend: "Put rubber mats under its feet and pull it again with a scale, put on more ballast, or fix it to the structure and write to what under `fixed-to`.",
      });
    }
  },
});
