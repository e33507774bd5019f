import { type FixedRate, fixedRate, fixedRateMost, fixedRates, type Link, links } from "@plumbmark/calc";

/** Signals of one family, each carrying what those before it carry. */
const FAMILIES: readonly (readonly string[])[] = [
  ["dvi-single", "hdmi-1.2", "hdmi-1.4", "hdmi-2.0", "hdmi-2.1", ...fixedRates.map((rate) => `hdmi-2.1-${rate}`)],
  ["dvi-dual"],
  ["displayport-1.2", "displayport-1.4"],
  ["sdi-sd", "sdi-hd", "sdi-3g", "sdi-6g", "sdi-12g"],
];

/** Bounds of a signal; `most` where it may carry more than is certain, up to that. */
export interface Bounds {
  readonly link: Link;
  readonly most?: Link;
}

const fixed = (rate: FixedRate): readonly Bounds[] => [
  { link: links["hdmi-2.0"] },
  { link: fixedRate(rate), most: fixedRateMost(rate) },
];

const BOUNDS: Readonly<Record<string, readonly Bounds[]>> = {
  "dvi-single": [{ link: links.dvi }],
  "dvi-dual": [{ link: links["dvi-dual"] }],
  "hdmi-1.2": [{ link: links["hdmi-1.2"] }],
  "hdmi-1.4": [{ link: links["hdmi-1.4"] }],
  "hdmi-2.0": [{ link: links["hdmi-2.0"] }],
  // Which of its rates a device has is not said by the version.
  "hdmi-2.1": [{ link: links["hdmi-2.0"], most: fixedRateMost(48) }],
  ...Object.fromEntries(fixedRates.map((rate) => [`hdmi-2.1-${rate}`, fixed(rate)])),
  "displayport-1.2": [{ link: links["displayport-1.2"] }],
  "displayport-1.4": [{ link: links["displayport-1.4"] }],
  "sdi-sd": [{ link: links["sd-sdi"] }],
  "sdi-hd": [{ link: links["hd-sdi"] }],
  "sdi-3g": [{ link: links["3g-sdi"] }],
  "sdi-6g": [{ link: links["6g-sdi"] }],
  "sdi-12g": [{ link: links["12g-sdi"] }],
};

/** A dual-link DVI socket carries a single link, too. */
const withSingle = (signals: readonly string[]): readonly string[] =>
  signals.includes("dvi-dual") ? [...signals, "dvi-single"] : signals;

/** What both ends and every cable between them have in common: in each family the least of their best. */
export function inCommon(ends: readonly (readonly string[])[]): readonly Bounds[] {
  return FAMILIES.flatMap((family) => {
    const best = ends.map((signals) => Math.max(-1, ...withSingle(signals).map((signal) => family.indexOf(signal))));
    const least = best.length > 0 ? Math.min(...best) : -1;
    return BOUNDS[family[least] ?? ""] ?? [];
  });
}
