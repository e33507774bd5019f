import { atLeast, type Bar, type Build, type Hang, is, open, type RawCheck, rule } from "@plumbmark/kit";
import { askedCheck } from "../asked.js";

/** Points the letter has to name: every hang, and of a bridle the ends of both legs. */
const pointsOf = (hang: Hang): readonly { readonly side: "" | ".left" | ".right"; readonly name: string }[] =>
  hang.bridled
    ? (["left", "right"] as const).map((side) => ({ side: `.${side}` as const, name: `${hang.name}.${side}` }))
    : [{ side: "", name: hang.name }];

type Letter = Bar["letter"];

const barsOf = (build: Build, { path }: Letter): readonly Bar[] =>
  build.bars.filter(({ letter }) => letter.path === path);

/** Each letter there is once: that of the build, and those of structures of the venue. */
const lettersOf = (build: Build): readonly Letter[] => [
  ...new Map(build.bars.map(({ letter }) => [letter.path, letter])).values(),
];

function* ofHang(hang: Hang): Iterable<RawCheck> {
  const { letter } = hang.bar;
  for (const { side, name } of pointsOf(hang)) {
    const point = letter.point(hang, side);
    const here = { path: hang.path, label: hang.label };
    if (!point?.structure) {
      yield open(here, {
        says: `${letter.label} does not say what point ${name} of bar ${hang.bar.name} carries.`,
        mend: `Write what it says under \`${letter.path}.points.${name}.structure\`.`,
        needs: [`${letter.path}.points.${name}.structure`],
      });
      continue;
    }
    const written = letter.writtenAt(hang, side);
    if (written)
      yield atLeast(here, {
        measured: point.structure,
        allowed: written,
        says: ({ measured, allowed }) =>
          `${letter.label} says ${measured} of point ${name} of bar ${hang.bar.name}; the document has ${allowed}.`,
        mend: "Write what the letter says, or leave the rating out at the hang: the letter's counts.",
      });
  }
}

/** Points that may be loaded one at a time only tell nothing of the bar that hangs from all of them. */
function* together(build: Build, letter: Letter): Iterable<RawCheck> {
  if (build.reader.data(`${letter.path}.counted`) !== "one-at-a-time") return;
  for (const bar of barsOf(build, letter))
    if (bar.hangs.length > 1 && !build.reader.has(`${bar.path}.structure`))
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
    "`letter` under `rigging`, or of a bar its own, which the survey of the venue may state for its structure: who states it, a person by name; their licence; its day, not after the first day on site; its file, which is among the papers of the house standard; until when it is good, not before the last day on site, or `no-end`. It names every hang, and both ends of a bridle, with what the structure carries there; a rating that is also written at the hang is not above it. It says whether the points carry that together, or one at a time, and counts in what else hangs there. A placeholder is nothing written. A name alone, as `structure-by` in older documents, is open.",
  sources: ["practice"],
  *checks({ build }) {
    for (const letter of lettersOf(build)) {
      if (!letter.exists) {
        yield open(letter, {
          says: "No letter on what the structure carries is written down.",
          mend: `Have a licensed engineer state it, and write who, licence, day, file and points under \`${letter.path}\`.`,
          needs: [letter.path],
        });
        continue;
      }
      yield is(letter, { holds: true, says: "There is a letter on what the structure carries." });
      for (const each of [...letter.asked(true), ...letter.counting]) yield askedCheck(each);
      for (const hang of barsOf(build, letter).flatMap(({ hangs }) => hangs)) yield* ofHang(hang);
      yield* together(build, letter);
    }
  },
});
