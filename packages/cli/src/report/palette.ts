import type { Verdict } from "@plumbmark/core";
import { Chalk, type ChalkInstance } from "chalk";
import type { Colour } from "../terminal/context.js";
import type { Check } from "./form.js";

/** The Okabe–Ito palette: told apart by people with any form of colour vision. Words always say the same. */
export interface Palette {
  readonly level: (check: Check) => ChalkInstance;
  readonly ready: ChalkInstance;
  readonly notReady: ChalkInstance;
  /** A draft is told as loudly as what is not ready: nobody builds from it. */
  readonly verdict: (verdict: Verdict) => ChalkInstance;
  readonly strong: ChalkInstance;
  readonly quiet: ChalkInstance;
}

const LEVELS = { shall: "#D55E00", should: "#E69F00", note: "#0072B2" } as const;

export function palette(colour: Colour): Palette {
  const ink = new Chalk({ level: colour });
  const ofCheck = ({ outcome, level }: Check): ChalkInstance => {
    if (outcome === "holds") return ink.hex("#009E73");
    if (outcome === "waived") return ink.hex("#CC79A7");
    return outcome === "open" ? ink.gray.bold : ink.hex(LEVELS[level]).bold;
  };
  const [ready, notReady] = [ink.hex("#009E73"), ink.hex("#D55E00").bold];
  return {
    level: ofCheck,
    ready,
    notReady,
    verdict: (verdict) => (verdict === "ready" ? ready : notReady),
    strong: ink.bold,
    quiet: ink.gray,
  };
}
