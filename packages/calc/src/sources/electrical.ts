import { sourceTable } from "./source.js";

const nec = (clause: string, says: string, edition = "2023", basis: "published" | "memory" = "published") =>
  ({ document: "NFPA 70 (NEC)", edition, clause, says, basis }) as const;

/** Clause letters move between editions of the NEC: they live here and never in rule text. */
export const electricalSources = sourceTable({
  "electrical-definition": {
    document: "definition",
    says: "power = voltage × current × power factor; Ohm's law; balanced three phase carries √3",
    basis: "definition",
  },
  "nec-100-continuous": nec("Art. 100", "a continuous load runs for 3 hours or more"),
  "nec-210.20a": nec("210.20(A)", "overcurrent device at least 125 % of the continuous load plus 100 % of the rest"),
  "nec-210.19a": nec(
    "210.19(A)",
    "conductors sized for 125 % of the continuous load; 3 % branch, 5 % in all is advice",
  ),
  "nec-215.3": nec("215.3", "feeder overcurrent device at least 125 % of the continuous load plus 100 % of the rest"),
  "nec-210.21b": nec("210.21(B)", "rating of receptacles and the greatest cord-and-plug load on one"),
  "nec-210.23": nec(
    "210.23",
    "one cord-and-plug piece at most 80 %, fastened equipment at most 50 % of a shared circuit",
    "2020",
  ),
  "nec-210.23-2023": nec("210.23(B)", "the same limits under their 2023 letters", "2023", "memory"),
  "nec-240.4d": nec("240.4(D)", "greatest overcurrent device of small building wire"),
  "nec-240.5": nec("240.5", "protection of flexible cords; field-assembled cord on a 20 A circuit 16 AWG or larger"),
  "nec-240.6a": nec("240.6(A)", "standard ratings of overcurrent devices to 100 A and 175 A"),
  "nec-240.6a-memory": nec("240.6(A)", "standard ratings of overcurrent devices above 100 A", "2023", "memory"),
  "nec-310.16": nec(
    "Table 310.16",
    "ampacity of insulated copper conductors, 30 °C ambient, not more than three in a raceway",
  ),
  "nec-310.15b1": nec("Table 310.15(B)(1)", "ambient temperature correction on a base of 30 °C"),
  "nec-400.5a1": nec("Table 400.5(A)(1)", "ampacity of flexible cords of the S and SJ families, 30 °C ambient"),
  "nec-400.5a1-memory": nec(
    "Table 400.5(A)(1)",
    "ampacity of flexible cords of the S and SJ families, from memory",
    "2023",
    "memory",
  ),
  "nec-400.5a2": nec(
    "Table 400.5(A)(2)",
    "ampacity of portable power cable types SC, SCE, SCT, PPE, G and W, 30 °C ambient",
  ),
  "nec-400.5a3": nec("Table 400.5(A)(3)", "adjustment of cords with more than three current-carrying conductors"),
  "nec-ch9-t8": nec(
    "Chapter 9 Table 8",
    "direct-current resistance of conductors at 75 °C, correction α = 0.00323 /K for copper",
  ),
  "nec-k-method": nec(
    "Chapter 9 Table 8, handbook form",
    "voltage drop by K = 12.9 Ω·cmil/ft for copper, 21.2 for aluminium",
  ),
  "iec-60228": {
    document: "IEC 60228",
    edition: "2004",
    says: "greatest conductor resistance at 20 °C by class and cross-section",
    basis: "published",
  },
  "copper-alpha-20": {
    document: "IEC 60028",
    says: "temperature coefficient of annealed copper 0.00393 /K at 20 °C",
    basis: "memory",
  },
  "iec-60364-4-43": {
    document: "IEC 60364-4-43",
    clause: "433.1",
    says: "design current at most the rating of the protective device, at most the cable's current-carrying capacity",
    basis: "memory",
  },
  "iec-60364-5-52-g": {
    document: "IEC 60364-5-52",
    edition: "2009",
    clause: "Annex G",
    says: "voltage drop limits: lighting 3 %, other 5 % of nominal from a public supply, 6 % and 8 % from a private one",
    basis: "published",
  },
  "iec-60364-5-52-g-reactance": {
    document: "IEC 60364-5-52",
    edition: "2009",
    clause: "Annex G",
    says: "reactance 0.08 mΩ/m where no other figure is known",
    basis: "memory",
  },
  "iec-60364-5-53": {
    document: "IEC 60364-5-53",
    clause: "531.3.2",
    says: "standing leakage at most 30 % of the rated residual current",
    basis: "published",
  },
  "bs-7671-415.1.1": {
    document: "BS 7671",
    edition: "2018",
    clause: "415.1.1",
    says: "additional protection by a residual device of at most 30 mA",
    basis: "published",
  },
  "bs-7671-app4": {
    document: "BS 7671",
    edition: "2018+A2",
    clause: "Appendix 4",
    says: "voltage drop by mV per ampere and metre",
    basis: "published",
  },
  "bs-7671-4f3a": {
    document: "BS 7671",
    edition: "2018",
    clause: "Table 4F3A",
    says: "current-carrying capacity of flexible cords, 30 °C ambient",
    basis: "memory",
  },
  "rcd-half": {
    document: "IEC 61008-1",
    says: "a residual device does not trip below half its rating",
    basis: "published",
  },
  "ul-943": {
    document: "UL 943",
    says: "a Class A ground-fault circuit interrupter trips at 6 mA and does not below 4 mA",
    basis: "published",
  },
  "iec-60950-leakage": {
    document: "IEC/EN 60950-1",
    clause: "5.1",
    says: "cord-connected Class I equipment leaks at most 3.5 mA, unless by industrial plug or fixed connection",
    basis: "published",
  },
  "nist-sp811": {
    document: "NIST SP 811",
    edition: "2008",
    clause: "B.8",
    says: "1 Btu(IT)/h = 0.2930711 W; 1 ton of refrigeration = 12 000 Btu/h",
    basis: "published",
  },
  "iec-60320": {
    document: "IEC 60320",
    says: "appliance couplers: ratings and which plug fits which inlet",
    basis: "published",
  },
  "iec-60320-locking": {
    document: "IEC 60320-1",
    says: "circular locking appliance coupler, 16 A, may be opened under load; see the maker's data sheet",
    basis: "memory",
  },
  "iec-61984": {
    document: "IEC 61984",
    says: "connectors without breaking capacity: never opened under load; see the maker's data sheet",
    basis: "memory",
  },
  "nema-wd6": { document: "ANSI/NEMA WD 6", says: "wiring devices: ratings, poles and locking", basis: "published" },
  "iec-60309": {
    document: "IEC 60309-2",
    says: "industrial plugs: ratings, poles, colours; different ratings do not mate",
    basis: "published",
  },
  "iec-60309-memory": {
    document: "IEC 60309-2",
    says: "hinged-lid latch on 16 and 32 A, bayonet ring on 63 and 125 A",
    basis: "memory",
  },
  "bs-1363": { document: "BS 1363", says: "13 A fused plug, 250 V", basis: "memory" },
  "cee-7": { document: "CEE 7", says: "16 A domestic plug, 250 V", basis: "memory" },
  "iec-60603-7": { document: "IEC 60603-7", says: "8-way modular connector with a latch", basis: "memory" },
  "iec-61076-3": { document: "IEC 61076-3", says: "8-way modular connector in a locking shell", basis: "memory" },
  "hdmi-connector": {
    document: "HDMI Specification",
    edition: "1.4",
    says: "type A connector, held by friction",
    basis: "memory",
  },
  "displayport-connector": { document: "VESA DisplayPort", says: "full-size connector with a latch", basis: "memory" },
  "dvi-1.0-connector": { document: "DVI", edition: "1.0", says: "connector held by two jack screws", basis: "memory" },
  "iec-61169-8": { document: "IEC 61169-8", says: "BNC, bayonet coupling", basis: "memory" },
  "usb-connector": { document: "USB", says: "type A and C connectors, held by friction", basis: "memory" },
  "iec-61754": {
    document: "IEC 61754",
    says: "LC (part 20) held by a latch, SC (part 4) by push-pull latch",
    basis: "memory",
  },
  "iec-60603-11": { document: "IEC 60603-11", says: "jack plug held by friction", basis: "memory" },
  "iec-61076-2-103": {
    document: "IEC 61076-2-103",
    says: "3- and 5-pole XLR connectors with a latch",
    basis: "memory",
  },
});
