import { atLeast, type Build, type Hang, is, open, type RawCheck, rule } from "@plumbmark/kit";
import { askedCheck } from "../asked.js";

const LETTER = { path: "rigging.letter", label: "The letter on the structure" };

/** Points the letter has to name: every hang, and of a bridle the ends of both legs. */
const pointsOf = (hang: Hang): readonly { readonly side: "" | ".left" | ".right"; readonly name: string }[] =>
  hang.bridled
    ? (["left", "right"] as const).map((side) => ({ side: `.${side}` as const, name: `${hang.name}.${side}` }))
    : [{ side: "", name: hang.name }];

function* ofHang(hang: Hang): Iterable<RawCheck> {
  const { letter } = hang.bar;
  for (const { side, name } of pointsOf(hang)) {
    const point = letter.point(hang, side);
    const here = { path: hang.path, label: hang.label };
    if (!point?.structure) {
      yield open(here, {
        says: `${LETTER.label} does not say what point ${name} of bar ${hang.bar.name} carries.`,
        mend: `Write what it says under \`rigging.letter.points.${name}.structure\`.`,
        needs: [`rigging.letter.points.${name}.structure`],
      });
      continue;
    }
    const written = letter.writtenAt(hang, side);
    if (written)
      yield atLeast(here, {
        measured: point.structure,
        allowed: written,
        says: ({ measured, allowed }) =>
          `${LETTER.label} says ${measured} of point ${name} of bar ${hang.bar.name}; the document has ${allowed}.`,
        mend: "Write what the letter says, or leave the rating out at the hang: the letter's counts.",
      });
  }
}

/** Points that may be loaded one at a time only tell nothing of the bar that hangs from all of them. */
function* together(build: Build): Iterable<RawCheck> {
  if (build.reader.data("rigging.letter.counted") !== "one-at-a-time") return;
  for (const bar of build.bars)
    if (bar.hangs.length > 1 && build.reader.data(`${bar.path}.structure`) === undefined)
      yield open(bar, {
        says: `${bar.label} hangs from ${bar.hangs.length} points at once, and the letter lets them be loaded one at a time only.`,
        mend: `Have the letter say what the structure carries in all, and write it under \`${bar.path}.structure\`.`,
        needs: [`${bar.path}.structure`],
      });
}

export default rule({
  id: "rigging.letter",
  states: "What the structure carries is stated for every point in a letter that is signed, on file and in force.",
  level: "shall",
  why: "What a ceiling or a beam may carry cannot be seen. A rating that nobody signed is a guess over people's heads.",
  judged:
    "`letter` under `rigging`: who states it, a person by name; their licence; its day, not after the first day on site; its file, which is among the papers of the house standard; until when it is good, not before the last day on site, or `no-end`. It names every hang, and both ends of a bridle, with what the structure carries there; a rating that is also written at the hang is not above it. It says whether the points carry that together, or one at a time, and counts in what else hangs there. A placeholder is nothing written. A name alone, as `structure-by` in older documents, is open.",
  sources: ["practice"],
  *checks({ build }) {
    const [bar] = build.bars;
    if (!bar) return;
    const { letter } = bar;
    if (!letter.exists) {
      yield open(LETTER, {
        says: "No letter on what the structure carries is written down.",
        mend: "Have a licensed engineer state it, and write who, licence, day, file and points under `rigging.letter`.",
        needs: ["rigging.letter"],
      });
      return;
    }
    yield is(LETTER, { holds: true, says: "There is a letter on what the structure carries." });
    for (const each of [...letter.asked(true), ...letter.counting]) yield askedCheck(each);
    for (const hang of build.bars.flatMap(({ hangs }) => hangs)) yield* ofHang(hang);
    yield* together(build);
  },
});
