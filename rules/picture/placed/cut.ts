import { type Build, is, open, type RawCheck } from "@plumbmark/kit";

type Placement = Build["picture"]["placements"][number];

const many = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

/** Whether the parts of a folded face together are the face: every panel in one of them, and in no other. */
export function* judgeCut(placement: Placement): Generator<RawCheck> {
  const { path, label, face, parts, isFolded } = placement;
  if (!isFolded) return;
  const thing = { path, label };
  const { panelCount } = face;
  const unread = parts.filter((part) => part.isUnread).map((part) => part.path);
  if (!panelCount.known || unread.length > 0) {
    yield open(thing, {
      says: `Whether the parts of face ${face.name} together are the whole face cannot be told.`,
      mend: panelCount.known
        ? "Write of each part its `columns`, such as `1..12`, or its `rows`, such as `A..C`."
        : "Write how many columns and rows the face has.",
      needs: panelCount.known ? unread : panelCount.gaps.map((gap) => gap.path),
    });
    return;
  }
  const { leftOut, twice, beyond } = placement.coverage;
  yield is(thing, {
    holds: leftOut.count === 0,
    says:
      leftOut.count === 0
        ? `Every panel of face ${face.name} is in one of its parts.`
        : `No part has ${leftOut.words} of face ${face.name}.`,
    mend: "Add a part for what is left out, or widen one of those there are.",
  });
  yield is(thing, {
    holds: twice.count === 0,
    says:
      twice.count === 0
        ? `No panel of face ${face.name} is in two parts.`
        : `More than one part has ${twice.words} of face ${face.name}.`,
    mend: "Name every panel in one part only.",
  });
  if (beyond.length > 0)
    yield is(thing, {
      holds: false,
      says: `Parts of face ${face.name} name ${beyond.join(" and ")}; the face has ${many(face.columns, "column")} and ${many(face.rows, "row")}.`,
      mend: "Name only columns and rows the face has.",
    });
}
