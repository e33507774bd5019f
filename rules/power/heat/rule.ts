import { BTU_PER_TON, heat, tabled, type Value, wattsToBtu } from "@plumbmark/calc";
import { atMost, type Build, rule } from "@plumbmark/kit";

/** Volt-amperes are never below the watts behind them: counted as watts they are the safe side. */
const asPower = (value: Value): Value => ({ ...value, kind: "power" });

const heatOf = ({ faces }: Build): Value => heat.of({ P: faces.map((face) => asPower(face.powerMaximum)) });

const tons = (value: Value): string =>
  value.known ? ` (${(wattsToBtu(value.value) / BTU_PER_TON).toFixed(2)} tons of refrigeration)` : "";

export default rule({
  id: "power.heat",
  states: "Heat put into the room stays under what a room takes without cooling planned for it.",
  level: "note",
  why: "Everything a display draws ends as heat in the room, and a small room is too warm for its audience before the interval.",
  judged:
    "The maximum power of every panel, added up. The setting is common practice, about three tons of refrigeration; what a room takes is for whoever runs its cooling to say.",
  sources: ["nist-sp811"],
  settings: {
    most: { us: 10_500, iec: 10_500, stricter: "less", describe: "heat in watts above which cooling is planned for" },
  },
  *checks({ build, settings }) {
    const measured = heatOf(build);
    yield atMost(build, {
      measured,
      allowed: tabled(settings.most as number, "heat-rate", "house", "heat above which cooling is planned for"),
      says: (words) =>
        `The panels put up to ${words.measured} into the room${tons(measured)}; above ${words.allowed} cooling is planned for.`,
      mend: "Tell whoever runs the room's cooling, or turn the brightness down.",
    });
  },
});
