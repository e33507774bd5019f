import { overlap, type Rectangle } from "@plumbmark/calc";
import { atMost, type Build, is, open, type RawCheck, rule } from "@plumbmark/kit";
import { judgeCut } from "./cut.js";

type Placement = Build["picture"]["placements"][number];
type Part = Placement["parts"][number];

/** A part with where it lies. */
interface Lying {
  readonly part: Part;
  readonly box: Rectangle;
}

/** What a part lies over without its face saying that it copies that; each pair is told once, at the later one. */
const covered = ({ part, box }: Lying, earlier: readonly Lying[]): readonly Part[] =>
  earlier
    .filter((other) => !part.placement.isRepeat(other.part.placement) && overlap(box, other.box))
    .map((other) => other.part);

const MEND = "on the raster, or send a larger raster.";

function* judgePart(one: Part, earlier: Lying[], { width, height }: Build["picture"]): Generator<RawCheck> {
  const mend = one.placement.isFolded ? `Move the part ${MEND}` : `Move the face ${MEND}`;
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
  const { rectangle } = one;
  if (!rectangle) return;
  const over = covered({ part: one, box: rectangle }, earlier);
  earlier.push({ part: one, box: rectangle });
  const nothing = one.placement.isFolded ? "no other face and no other part" : "no other face";
  yield is(one, {
    holds: over.length === 0,
    says:
      over.length === 0
        ? `${one.label} covers ${nothing}.`
        : `${one.label} covers a part of ${over.map(({ name }) => name).join(" and ")}.`,
    mend: over.some(({ placement }) => placement !== one.placement)
      ? "Move one of them, or write `copy-of` if it is meant to repeat the other."
      : "Move one of them.",
  });
}

function* judgeCopy({ path, label, copyOf, face }: Placement, faces: Build["faces"]): Generator<RawCheck> {
  if (copyOf === undefined) return;
  const known = copyOf !== face.name && faces.some((each) => each.name === copyOf);
  yield is(
    { path, label },
    {
      holds: known,
      says: known ? `${label} repeats face ${copyOf}.` : `${label} repeats ${copyOf}, which is no other face.`,
      mend: "Name the face it repeats.",
    },
  );
}

function* judgeScale({ path, label, scaled, face }: Placement): Generator<RawCheck> {
  if (!scaled?.width.known || !scaled.height.known || !face.pixelsWide.known || !face.pixelsHigh.known) return;
  const [width, height] = [scaled.width.value, scaled.height.value];
  yield is(
    { path, label },
    {
      holds: width === face.pixelsWide.value && height === face.pixelsHigh.value,
      says: `${label} has ${face.pixelsWide.value} × ${face.pixelsHigh.value} pixels and is given ${width} × ${height} of the raster.`,
      mend: "Give it as many pixels of the raster as it has.",
    },
  );
}

export default rule({
  id: "picture.placed",
  states:
    "Every face is placed on the raster, whole or folded into parts that together are the face, inside it, without overlap, one to one.",
  level: "shall",
  why: "A face that is placed nowhere shows the top-left corner of the picture, one that is scaled shows text with torn edges, and two that overlap show each other's picture. Of a folded face, panels in no part have no picture of their own, and a part in the wrong place shows another piece of it.",
  judged:
    "The rectangle of every face, from its top-left pixel and its pixels, against the raster and against every other face that is no declared copy. Of a face that is folded into `parts`: every panel is in exactly one part, no part names columns or rows the face has not, and the rectangle of each part, from the pixels of its columns and rows, is judged as that of a face, also against the other parts of the same face.",
  sources: ["practice", "arithmetic"],
  *checks({ build }) {
    const { placements } = build.picture;
    const earlier: Lying[] = [];
    for (const one of placements) {
      const [first] = one.parts;
      if (!one.isFolded && !first?.corner) {
        yield open(one.face, {
          says: `${one.label} has no place on the raster written down.`,
          mend: `Write its top-left pixel under \`${one.path}\`, such as \`0,0\`.`,
          needs: [one.path],
        });
        continue;
      }
      yield* judgeCut(one);
      for (const part of one.parts) yield* judgePart(part, earlier, build.picture);
      yield* judgeCopy(one, build.faces);
      yield* judgeScale(one);
    }
  },
});
