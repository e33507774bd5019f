import { overlap } from "@plumbmark/calc";
import { atMost, type Build, is, open, rule } from "@plumbmark/kit";

type Placement = Build["picture"]["placements"][number];

/** Faces a placement lies over without saying that it copies them; each pair is told once, at the later face. */
const covered = (one: Placement, earlier: readonly Placement[]): readonly string[] =>
  earlier
    .filter(
      (other) =>
        one.rectangle &&
        other.rectangle &&
        one.copyOf !== other.face.name &&
        other.copyOf !== one.face.name &&
        !(one.copyOf && one.copyOf === other.copyOf) &&
        overlap(one.rectangle, other.rectangle),
    )
    .map((other) => other.face.name);

export default rule({
  id: "picture.placed",
  states: "Every face is placed on the raster, inside it, without overlap, one to one.",
  level: "shall",
  why: "A face that is placed nowhere shows the top-left corner of the picture, one that is scaled shows text with torn edges, and two that overlap show each other's picture.",
  judged:
    "The rectangle of every face, from its top-left pixel and its pixels, against the raster and against every other face that is no declared copy.",
  sources: ["practice", "arithmetic"],
  *checks({ build }) {
    const { placements, width, height } = build.picture;
    for (const [index, one] of placements.entries()) {
      if (!one.corner) {
        yield open(one.face, {
          says: `${one.label} has no place on the raster written down.`,
          mend: `Write its top-left pixel under \`${one.path}\`, such as \`0,0\`.`,
          needs: [one.path],
        });
        continue;
      }
      const mend = "Move the face on the raster, or send a larger raster.";
      yield atMost(one, {
        measured: one.right,
        allowed: width,
        says: ({ measured, allowed }) => `${one.label} reaches ${measured} across; the raster has ${allowed}.`,
        mend,
      });
      yield atMost(one, {
        measured: one.bottom,
        allowed: height,
        says: ({ measured, allowed }) => `${one.label} reaches ${measured} down; the raster has ${allowed}.`,
        mend,
      });
      const over = covered(one, placements.slice(0, index));
      if (one.rectangle)
        yield is(one, {
          holds: over.length === 0,
          says:
            over.length === 0
              ? `${one.label} covers no other face.`
              : `${one.label} covers a part of ${over.join(" and ")}.`,
          mend: "Move one of them, or write `copy-of` if it is meant to repeat the other.",
        });
      const { copyOf, scaled, face } = one;
      if (copyOf !== undefined) {
        const known = copyOf !== face.name && build.faces.some((each) => each.name === copyOf);
        yield is(one, {
          holds: known,
          says: known
            ? `${one.label} repeats face ${copyOf}.`
            : `${one.label} repeats ${copyOf}, which is no other face.`,
          mend: "Name the face it repeats.",
        });
      }
      if (scaled?.width.known && scaled.height.known && face.pixelsWide.known && face.pixelsHigh.known) {
        const [width, height] = [scaled.width.value, scaled.height.value];
        const same = width === face.pixelsWide.value && height === face.pixelsHigh.value;
        yield is(one, {
          holds: same,
          says: `${one.label} has ${face.pixelsWide.value} × ${face.pixelsHigh.value} pixels and is given ${width} × ${height} of the raster.`,
          mend: "Give it as many pixels of the raster as it has.",
        });
      }
    }
  },
});
