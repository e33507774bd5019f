import { sum, times } from "@plumbmark/calc";
import { atMost, type Build, type Face, is, open, type RawCheck, rule } from "@plumbmark/kit";

const onBars = (build: Build, face: Face) =>
  build.bars.flatMap((bar) => bar.carries.filter((each) => each.face === face).map((each) => ({ bar, ...each })));

/** Columns of a face that hang from no bar, counted from 1. */
const uncovered = (build: Build, face: Face): readonly number[] => {
  const covered = new Set(onBars(build, face).flatMap(({ columns }) => columns));
  return [...new Set(face.cells.map(({ column }) => column))]
    .filter((column) => !covered.has(column))
    .map((column) => column + 1);
};

function* ofFace(build: Build, face: Face): Iterable<RawCheck> {
  const without = uncovered(build, face);
  yield is(face, {
    holds: without.length === 0,
    says:
      without.length === 0
        ? `Every column of face ${face.name} hangs from a bar.`
        : `${face.label}: ${without.length === 1 ? `column ${without[0]} hangs` : `columns ${without.join(", ")} hang`} from no bar.`,
    mend: "Carry every column on a bar, under `carries`.",
  });
  for (const { bar, from, columns } of onBars(build, face))
    yield atMost(bar, {
      measured: sum([from, times(face.panelWidth, columns.length)], "length", "right edge"),
      allowed: bar.length,
      says: ({ measured, allowed }) =>
        `${face.label} ends ${measured} from the left end of bar ${bar.name}, which is ${allowed} long.`,
      mend: "Take a longer bar, or move the face on it.",
    });
}

export default rule({
  id: "rigging.bar-covers",
  states: "Every top panel of a flown face is on a bar, and the bar is long enough.",
  level: "shall",
  why: "A top panel beside the bar hangs by its neighbour's side lock, which is made to align panels and not to carry them.",
  judged:
    "Columns carried by the bars against the columns of the face, and the right edge of what a bar carries against its length.",
  sources: ["practice"],
  *checks({ build }) {
    for (const face of build.faces.filter(({ support }) => support === "flown"))
      if (build.bars.length > 0) yield* ofFace(build, face);
      else
        yield open(face, {
          says: `${face.label} is flown and no bar is written down.`,
          mend: "Write the bar, what it carries and its hangs under `rigging.bars`.",
          needs: ["rigging.bars"],
        });
  },
});
