import { Chalk, type ChalkInstance } from "chalk";
import type { Colour } from "../surroundings.js";
import type { Check } from "./form.js";

/** The Okabe–Ito palette: told apart by people with any form of colour vision. Words always say the same. */
export interface Palette {
  readonly level: (check: Check) => ChalkInstance;
  readonly ready: ChalkInstance;
  readonly notReady: ChalkInstance;
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
  return {
    level: ofCheck,
    ready: ink.hex("#009E73"),
    notReady: ink.hex("#D55E00").bold,
    strong: ink.bold,
    quiet: ink.gray,
  };
}
