import { notionalPush } from "@plumbmark/calc";
import type { RuleContext } from "@plumbmark/kit";

/** Settings of the rules that push a standing face. */
export const pushSettings = {
  push: {
    us: notionalPush.us.low,
    iec: notionalPush.iec.low,
    stricter: "more",
    describe:
      "notional push in pascals up to 4 m: 239.4 is the building code's 5 lb/ft², 125 the trade fairs' 0.125 kN/m²",
  },
  "push-above": {
    us: notionalPush.us.high,
    iec: notionalPush.iec.high,
    stricter: "more",
    describe: "the same above 4 m: the building code's 239.4 stays, the trade fairs' falls to 63",
  },
} as const;

/** The push that is set, in pascals. */
export const pushOf = (settings: RuleContext["settings"]): { readonly low: number; readonly high: number } => ({
  low: Number(settings.push),
  high: Number(settings["push-above"]),
});
