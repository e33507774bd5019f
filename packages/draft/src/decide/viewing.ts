import type { Data } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { grouped, keyOf, type Mapping, mappingOf } from "../data.js";
import { decided, type Scheme } from "./decision.js";
import { FACE } from "./size.js";

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

/** Puts in who looks at it, and says how well it is seen. */
export function seen(brief: Brief, scheme: Scheme): Scheme {
  const around = surroundings(brief);
  const failing = brief.desk
    .ask({ ...scheme.matter, ...around })
    .checks("viewing.pitch")
    .filter(({ outcome }) => outcome === "fails");
  return decided(scheme, around, {
    what: "viewing",
    why:
      failing.length === 0
        ? "The nearest viewer is far enough for the pitch."
        : failing.map(({ says }) => says).join(" "),
    exact: true,
    figures: ["nearest-by-practice", "luminance"].map((key) => `viewing.${FACE}.${key}`),
  });
}
