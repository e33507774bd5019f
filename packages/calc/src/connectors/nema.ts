import type { Connector, Contacts } from "./connector.js";

/** Contacts by the figure before the dash (WD 6), and the least voltage of its class: 100 V of 125, 200 V of 250. */
const CONFIGURATIONS: Readonly<Record<string, { readonly contacts: Contacts; readonly leastVolts: number }>> = {
  "5": { contacts: { lines: 1, neutral: "yes", earth: true }, leastVolts: 100 },
  "6": { contacts: { lines: 2, neutral: "no", earth: true }, leastVolts: 200 },
  "14": { contacts: { lines: 2, neutral: "yes", earth: true }, leastVolts: 200 },
  "21": { contacts: { lines: 3, neutral: "yes", earth: true }, leastVolts: 200 },
};

const nema = (name: string, amperes: number, volts: number, poles: string): Connector => {
  const locking = name.startsWith("L");
  const id = `nema-${name.toLowerCase()}`;
  return {
    id,
    title: `NEMA ${name}`,
    standard: "ANSI/NEMA WD 6",
    carries: "power",
    rated: { us: { amperes, volts } },
    poles,
    ...CONFIGURATIONS[name.replace(/^L|-.*$/gu, "")],
    retention: locking ? "twist" : "none",
    mates: [id],
    source: "nema-wd6",
  };
};

/** A 5-20 receptacle has a T-slot: a 5-15 plug fits it. The reverse does not, see `plugFits`. */
export const nemaConnectors: readonly Connector[] = [
  nema("5-15", 15, 125, "2P+PE"),
  nema("5-20", 20, 125, "2P+PE"),
  nema("L5-20", 20, 125, "2P+PE"),
  nema("L5-30", 30, 125, "2P+PE"),
  nema("L6-20", 20, 250, "2P+PE, no neutral"),
  nema("L6-30", 30, 250, "2P+PE, no neutral"),
  { ...nema("L21-30", 30, 208, "4P+PE"), note: "120/208 V three phase, wye" },
  { ...nema("14-50", 50, 250, "3P+PE"), note: "125/250 V" },
];
