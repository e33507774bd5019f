import type { Data } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { grouped, keyOf, type Mapping, mappingOf } from "../data.js";
import { type Decision, decided, type Scheme } from "./decision.js";
import { FACE } from "./size.js";

/** Shares of the line pitch a capital may fill, the largest first: what is left is the space between lines. */
const CAP_HEIGHTS = ["70 %", "65 %", "60 %", "55 %", "50 %"] as const;

/** The face of a scheme with more keys. */
export const withFace = (scheme: Scheme, more: Mapping): Mapping => ({
  faces: { [FACE]: { ...mappingOf(keyOf(scheme.matter.faces, FACE)), ...more } },
});

/** Light and audience as the wish and the venue have them. */
export function surroundings({ wish, facts, surveyed }: Brief): Mapping {
  // What a survey states is not written again.
  const venue = surveyed === undefined ? facts.survey?.placed.data : undefined;
  const light = { ...mappingOf(keyOf(venue, "light")), ...wish.light };
  return grouped({
    audience: keyOf(venue, "audience"),
    light: Object.keys(light).length === 0 ? undefined : (light as Data),
  });
}

/** Puts in who looks at it, and lays out its text; says how well it is seen. */
export function seen(brief: Brief, scheme: Scheme): Scheme {
  const { wish, desk } = brief;
  const around = surroundings(brief);
  const told = (matter: Mapping) => desk.ask({ ...scheme.matter, ...around, ...matter });
  const figures = ["nearest-by-practice", "luminance"].map((key) => `viewing.${FACE}.${key}`);
  if (wish.shows !== "text" || wish.text.lines === undefined) {
    const failing = told({})
      .checks("viewing.pitch")
      .filter(({ outcome }) => outcome === "fails");
    return decided(scheme, around, {
      what: "viewing",
      why: whyOf(failing.map(({ says }) => says)),
      exact: true,
      figures,
    });
  }
  const lines = wish.text.lines;
  const tries = CAP_HEIGHTS.map((share) => withFace(scheme, { text: { lines, "cap-height": share } }));
  const [largest] = tries as [Mapping, ...Mapping[]];
  const asked = told(largest);
  const failing = asked.checks("viewing.text", "viewing.pitch").filter(({ outcome }) => outcome === "fails");
  const decision: Decision = {
    what: "viewing",
    why: whyOf(failing.map(({ says }) => says)),
    exact: true,
    figures: [...figures, `viewing.${FACE}.cap-height`, `viewing.${FACE}.angle`],
  };
  return decided(scheme, { ...around, ...largest }, decision);
}

const whyOf = (failing: readonly string[]): string =>
  failing.length === 0
    ? "The nearest viewer is far enough for the pitch, and the farthest reads it."
    : failing.join(" ");
