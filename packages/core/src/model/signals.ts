import { type Link, links } from "@plumbmark/calc";

/** Signals of one family, each carrying what those before it carry. */
const FAMILIES: readonly (readonly string[])[] = [
  ["dvi-single", "hdmi-1.2", "hdmi-1.4", "hdmi-2.0", "hdmi-2.1"],
  ["dvi-dual"],
  ["displayport-1.2", "displayport-1.4"],
  ["sdi-sd", "sdi-hd", "sdi-3g", "sdi-6g", "sdi-12g"],
];

/** Bounds of a signal. `more` when it carries more than that, and how much more is not known here. */
export interface Bounds {
  readonly link: Link;
  readonly more: boolean;
}

const BOUNDS: Readonly<Record<string, Bounds>> = {
  "dvi-single": { link: links.dvi, more: false },
  "dvi-dual": { link: links.dvi, more: true },
  "hdmi-1.2": { link: links["hdmi-1.2"], more: false },
  "hdmi-1.4": { link: links["hdmi-1.4"], more: false },
  "hdmi-2.0": { link: links["hdmi-2.0"], more: false },
  "hdmi-2.1": { link: links["hdmi-2.0"], more: true },
  "displayport-1.2": { link: links["displayport-1.2"], more: false },
  "displayport-1.4": { link: links["displayport-1.4"], more: false },
  "sdi-sd": { link: links["sd-sdi"], more: false },
  "sdi-hd": { link: links["hd-sdi"], more: false },
  "sdi-3g": { link: links["3g-sdi"], more: false },
  "sdi-6g": { link: links["6g-sdi"], more: false },
  "sdi-12g": { link: links["12g-sdi"], more: false },
};

/** What both ends and every cable between them have in common: in each family the least of their best. */
export function inCommon(ends: readonly (readonly string[])[]): readonly Bounds[] {
  return FAMILIES.flatMap((family) => {
    const best = ends.map((signals) => Math.max(-1, ...signals.map((signal) => family.indexOf(signal))));
    const least = best.length > 0 ? Math.min(...best) : -1;
    const bounds = BOUNDS[family[least] ?? ""];
    return bounds ? [bounds] : [];
  });
}
