import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

// What the settings of the rules are when no house says otherwise, by hand, each with where it comes from; practice: the
// taste of the trade, no source. A list of two is us and iec practice. Lengths in metres: 1 in is 0.0254 m, 1 ft 0.3048 m.
const SETTINGS: Readonly<Record<string, readonly [us: number, iec: number]>> = {
  "data.feed-reach share": [0.05, 0.05], // practice
  "data.feed-reach ends": [1, 1], // 1 m for both ends; practice
  "data.jumper-reach slack": [0.1016, 0.1], // 4 in, 100 mm; practice
  "document.waivers longest": [400, 400], // a year and a month; practice
  "panels.spares share": [0.05, 0.05], // practice
  "panels.spares least": [1, 1], // practice
  "power.circuit-load share": [0.8, 1], // NEC 210.20(A): 100 ÷ 125; IEC 60364-4-43: In
  "power.feed-reach share": [0.05, 0.05], // practice
  "power.feed-reach ends": [1, 1], // practice
  "power.generator clear": [6.096, 6], // 20 ft: health departments on carbon monoxide
  "power.heat most": [10_500, 10_500], // three tons of refrigeration, 3 × 3,517 W; practice
  "power.inrush multiple": [0, 0], // none
  "power.leakage share": [0.3, 0.3], // IEC 60364-5-53 531.3.2
  "power.leg-balance share": [0.2, 0.2], // practice
  "power.surplus most": [7.62, 8], // 25 ft; practice
  "power.voltage-drop branch": [0.03, 0.05], // NEC 210.19(A), note; IEC 60364-5-52 Annex G
  "power.voltage-drop total": [0.05, 0.05], // the same
  "rigging.attachment static": [5, 5], // 2006/42/EC Annex I 4.1.2.5
  "rigging.attachment over-people": [8, 10], // practice; 2 × 5
  "rigging.bar-deflection ratio": [240, 240], // practice
  "rigging.bridle-angle least": [30, 30], // ASME B30.9, degrees
  "rigging.deck-load push": [239.4, 125], // IBC 1607: 5 lb/ft² × 47.88 Pa; trade fairs: 0.125 kN/m²
  "rigging.deck-load push-above": [239.4, 63], // trade fairs: 0.063 kN/m² above 4 m
  "rigging.design-factor static": [5, 5], // 2006/42/EC Annex I 4.1.2.5
  "rigging.design-factor over-people": [8, 10], // practice; 2 × 5
  "rigging.head-room least": [2.032, 2.1], // ADA 307.4: 80 in; practice
  "rigging.lift people": [0, 0], // as it is written
  "rigging.reach within": [0.0254, 0.025], // 1 in; practice
  "rigging.secondary slack": [0.00635, 0.006], // 1/4 in, 6 mm; practice
  "rigging.stack-slides push": [239.4, 125],
  "rigging.stack-slides push-above": [239.4, 63],
  "rigging.stack-slides factor": [2, 2], // temporary works
  "rigging.stack-stability push": [239.4, 125],
  "rigging.stack-stability push-above": [239.4, 63],
  "rigging.stack-stability factor": [1.5, 1.5], // trade fairs
  "stock.inspected months": [12, 6], // ASME B30.26; LOLER reg. 9(3)(a)
  "venue.agrees aside": [0.3048, 0.3], // 1 ft, 300 mm
  "venue.agrees place": [0.0254, 0.025], // 1 in, 25 mm
  "venue.survey-age days": [730, 730], // two years; practice
  "viewing.camera refreshes": [8, 8], // practice
  "viewing.dimming share": [0.5, 0.5], // practice
  "viewing.glare most": [1000, 1000], // practice
  "viewing.pitch metres-per-mm": [1, 1], // practice
  "viewing.text angle": [16 / 60, 16 / 60], // ISO 9241-303: 16 arc-minutes
  "viewing.text pixels": [9, 9], // ISO 9241-3: 7 × 9 for reading
  "viewing.text advance": [0.85, 0.85], // capitals of a common typeface: 0.833 (Adobe core metrics), rounded up
};

const found = new Map<string, readonly [us: unknown, iec: unknown]>(
  rules.flatMap(({ id, settings }) =>
    Object.entries(settings ?? {}).flatMap(([name, each]) =>
      typeof each.us === "number" ? [[`${id} ${name}`, [each.us, each.iec] as const] as const] : [],
    ),
  ),
);

describe("what the settings of the rules are by default", () => {
  test.each(notEmpty(Object.entries(SETTINGS)))("%s", (name, by) => {
    const [us, iec] = found.get(name) ?? [];
    expect([us, iec]).toEqual([expect.closeTo(by[0], 9), expect.closeTo(by[1], 9)]);
  });
  test("none is left out", () =>
    expect([...found.keys()].filter((each) => !Object.hasOwn(SETTINGS, each))).toEqual([]));
});
