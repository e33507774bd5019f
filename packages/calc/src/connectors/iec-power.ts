import type { Connector, Contacts } from "./connector.js";

/** Two contacts and earth; the second takes a neutral, or another line where the supply has none. */
const TWO_POLES: Contacts = { lines: 1, neutral: "either", earth: true };

const coupler = (
  pair: string,
  side: "connector" | "inlet",
  us: number,
  iec: number,
  mates: readonly string[],
  note?: string,
): Connector => ({
  id: `iec-${pair.toLowerCase()}`,
  title: `IEC ${pair} ${side}`,
  standard: "IEC 60320",
  carries: "power",
  rated: { us: { amperes: us, volts: 250 }, iec: { amperes: iec, volts: 250 } },
  poles: "2P+PE",
  contacts: TWO_POLES,
  retention: "none",
  mates: mates.map((each) => `iec-${each}`),
  source: "iec-60320",
  ...(note ? { note } : {}),
});

const byCertificate = "the higher us rating holds by certificate of the cord set; some stay at the IEC rating";

const industrial = (amperes: 16 | 32 | 63 | 125, wires: 3 | 4 | 5): Connector => {
  const id = `iec-60309-${amperes}-${wires}`;
  return {
    id,
    title: `IEC 60309, ${amperes} A, ${wires} wires`,
    standard: "IEC 60309-2",
    carries: "power",
    rated: { iec: { amperes, volts: wires === 3 ? 250 : 415 } },
    poles: { 3: "2P+PE", 4: "3P+PE", 5: "3P+N+PE" }[wires],
    contacts: {
      3: TWO_POLES,
      4: { lines: 3, neutral: "no", earth: true } as const,
      5: { lines: 3, neutral: "yes", earth: true } as const,
    }[wires],
    // Blue is 200 to 250 V, red 380 to 480 V.
    leastVolts: wires === 3 ? 200 : 380,
    retention: amperes >= 63 ? "bayonet" : "latch",
    mates: [id],
    source: "iec-60309",
    retentionSource: "iec-60309-memory",
    note: "retention from memory: hinged-lid latch on 16 and 32 A, bayonet ring on 63 and 125 A; the blue or red version is meant",
  };
};

const locking = (id: string, title: string, us: number, iec: number, underLoad: boolean): Connector => ({
  id,
  title,
  standard: underLoad ? "IEC 60320-1" : "IEC 61984",
  carries: "power",
  rated: { us: { amperes: us, volts: 250 }, iec: { amperes: iec, volts: 250 } },
  poles: "1P+N+PE",
  contacts: TWO_POLES,
  retention: "twist",
  mates: [id],
  underLoad,
  source: underLoad ? "iec-60320-locking" : "iec-61984",
  note: "from memory: ratings, and whether it may be opened under load, come from the maker's data sheet",
});

/** C15 fits a C14 inlet; C13 does not fit C16. A cord with a retention sleeve is a property of the part, not of the family. */
export const iecPowerConnectors: readonly Connector[] = [
  coupler("C13", "connector", 15, 10, ["c14"], byCertificate),
  coupler("C14", "inlet", 15, 10, ["c13", "c15"], byCertificate),
  coupler("C15", "connector", 15, 10, ["c16", "c14"]),
  coupler("C16", "inlet", 15, 10, ["c15"]),
  coupler("C19", "connector", 20, 16, ["c20"], byCertificate),
  coupler("C20", "inlet", 20, 16, ["c19"], byCertificate),
  ...([16, 32, 63, 125] as const).flatMap((amperes) => ([3, 4, 5] as const).map((wires) => industrial(amperes, wires))),
  locking("ac-locking-16", "16 A circular locking appliance coupler, with breaking capacity", 20, 16, true),
  locking("ac-locking-20", "20 A circular locking connector, without breaking capacity", 20, 20, false),
  {
    id: "bs-1363",
    title: "BS 1363, 13 A",
    standard: "BS 1363",
    carries: "power",
    rated: { iec: { amperes: 13, volts: 250 } },
    poles: "2P+PE",
    contacts: { lines: 1, neutral: "yes", earth: true },
    leastVolts: 200,
    retention: "none",
    mates: ["bs-1363"],
    source: "bs-1363",
  },
  {
    id: "cee-7",
    title: "CEE 7/3 to 7/7, 16 A",
    standard: "CEE 7",
    carries: "power",
    rated: { iec: { amperes: 16, volts: 250 } },
    poles: "2P+PE",
    contacts: TWO_POLES,
    leastVolts: 200,
    retention: "none",
    mates: ["cee-7"],
    source: "cee-7",
  },
  {
    id: "screw-terminal",
    title: "Screw terminals inside an enclosure",
    standard: "the part's own data sheet",
    carries: "power",
    retention: "screw",
    mates: ["screw-terminal", "bare-wire"],
    underLoad: false,
    source: "practice",
    note: "no rating of its own: the maker's figure counts",
  },
  {
    id: "bare-wire",
    title: "Bare or ferruled wire ends",
    standard: "the part's own data sheet",
    carries: "power",
    retention: "screw",
    mates: ["screw-terminal"],
    underLoad: false,
    source: "practice",
    note: "no rating of its own: the conductor and the terminal count",
  },
];
