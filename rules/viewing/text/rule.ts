import { CHARACTER_ADVANCE, CHARACTER_ANGLE, tabled } from "@plumbmark/calc";
import { atLeast, rule } from "@plumbmark/kit";

export default rule({
  id: "viewing.text",
  states: "Text is large enough for the farthest viewer, has enough pixels, and goes onto its line.",
  level: "should",
  why: "A line of text that reads well at the desk is a grey stripe from the last row, or a row of dots from anywhere.",
  judged:
    "The angle a capital fills at the eye of the farthest viewer against the least angle, and the pixels of a capital against the least number; 20 to 22 arc-minutes are preferred to the 16 asked for. Where `characters` of the longest line are written, they are held against the pixels across ÷ (advance × pixels of a capital): an estimate for usual letters, 0.842 of their height on average for bold capitals of a sans serif with the spaces of English words; a definite text is measured.",
  sources: ["iso-9241-303", "nureg-0700", "core-font-metrics", "practice"],
  settings: {
    angle: {
      us: CHARACTER_ANGLE.least,
      iec: CHARACTER_ANGLE.least,
      kind: "angle",
      stricter: "more",
      describe: "least angle of a capital at the eye (ISO 9241-303: 16 arc-minutes)",
    },
    pixels: { us: 9, iec: 9, stricter: "more", describe: "least pixels of a capital, common practice, no source" },
    advance: {
      us: CHARACTER_ADVANCE,
      iec: CHARACTER_ADVANCE,
      stricter: "more",
      describe: "width of a character in heights of a capital, space beside it included",
    },
  },
  *checks({ build, settings }) {
    const source = settings.angle === CHARACTER_ANGLE.least ? "iso-9241-303" : "house";
    for (const text of build.lettering) {
      yield atLeast(text, {
        measured: text.angle,
        allowed: tabled(settings.angle as number, "angle", source, "least angle of a capital"),
        sources: [source],
        says: ({ measured, allowed }) =>
          `${text.label} has capitals of ${measured} at the farthest viewer; ${allowed} is the least.`,
        turns: { path: "audience.farthest", sense: "at most" },
        mend: "Show fewer lines, larger capitals, or a higher face.",
      });
      yield atLeast(text, {
        measured: text.capPixels,
        allowed: tabled(settings.pixels as number, "pixels", "house", "least pixels of a capital"),
        says: ({ measured, allowed }) => `${text.label} has capitals of ${measured}; ${allowed} are the least.`,
        mend: "Show fewer lines, larger capitals, or a panel of finer pitch.",
      });
      const { characters } = text;
      if (characters)
        yield atLeast(text, {
          measured: text.room(settings.advance as number),
          allowed: characters,
          says: ({ measured, allowed }) =>
            `${text.label} has room for ${measured} characters on a line; ${allowed} are to stand there.`,
          mend: "Write fewer characters on a line, smaller capitals, or take a wider face.",
        });
    }
  },
});
