import { guessesIn, type Known, marked, printQuantity, readQuantity } from "@plumbmark/calc";
import { type Build, is, type Mend, open, rule } from "@plumbmark/kit";
import { figureAgrees, upToDate } from "./figure.js";

/** The computed value in the unit the text uses. */
function inUnitOf(text: string, value: Known): string {
  const reading = readQuantity(text.replaceAll(",", ""), [value.kind]);
  return printQuantity(value.value, value.kind, "metric", reading.ok ? reading.quantity.unit : undefined);
}

/** The quoted figure as it should be; an answer only where its form is kept. */
function mendsOf({ figure }: Build["quotes"][number], text: string, value: Known, guess: boolean): readonly Mend[] {
  if (!figure) return [];
  const mark = guess ? " ?" : "";
  const becomes = upToDate(text, value);
  if (becomes !== undefined) return [{ at: figure, becomes: `${becomes}${mark}`, sure: true }];
  return [{ at: figure, becomes: `${printQuantity(value.value, value.kind, "metric")}${mark}`, sure: false }];
}

function meant(build: Build, path: string): string {
  const near = build.nearestValue(path);
  return near === undefined ? "" : `Did you mean \`${near}\`? `;
}

export default rule({
  id: "document.quoted-values",
  states: "A figure quoted in the text agrees with the computed one.",
  level: "shall",
  why: "The crew reads the prose. A weight that was right two revisions ago is wrong on the ladder.",
  judged:
    "Every link to `calc:` is compared with the computed value to the precision written; a link to `calc:drawings.` has to name a drawing of the build.",
  sources: ["house"],
  *checks({ build }) {
    for (const { of, place, known, mend } of build.drawingLinks)
      yield is(
        { path: of, label: "The text", place },
        {
          holds: known,
          says: known ? `The text shows the drawing \`${of}\`.` : `There is no drawing \`${of}\`.`,
          mend,
        },
      );
    for (const quote of build.quotes.filter(
      (each) => !each.of.startsWith("schedules.") && !each.of.startsWith("drawings."),
    )) {
      const where = { path: quote.of, label: "The text", place: quote.place };
      const value = build.valueAt(quote.of);
      if (!value && build.reader.isUnread) {
        yield open(where, {
          says: `The front matter cannot be read, so the figure ${quote.text} cannot be checked.`,
          mend: "Put the front matter right first.",
        });
        continue;
      }
      if (!value) {
        yield is(where, {
          holds: false,
          says: `There is no computed value \`${quote.of}\`.`,
          mend: `${meant(build, quote.of)}List the values with \`plumbmark workings FILE\`.`,
        });
        continue;
      }
      if (!value.known) {
        yield open(where, {
          says: `\`${quote.of}\` cannot be computed, so the figure ${quote.text} cannot be checked.`,
          mend: "Write down what is missing for it.",
          needs: value.gaps.map((gap) => gap.path || gap.what),
        });
        continue;
      }
      const guess = guessesIn(value).size > 0;
      const { text, sure } = marked(quote.text);
      if (guess !== (sure === "guess")) {
        yield is(where, {
          holds: false,
          says: guess
            ? `\`${quote.of}\` rests on a guess, and the text says ${quote.text} as if it were known.`
            : `The text says ${quote.text}, and \`${quote.of}\` rests on no guess.`,
          mend: guess ? `Write \`${text} ?\` in the link.` : `Write \`${text}\` in the link.`,
          mends: mendsOf(quote, text, value, guess),
        });
        continue;
      }
      const good = figureAgrees(text, value);
      const says =
        good === undefined
          ? `\`${quote.text}\` cannot be read as the unit of ${quote.of}.`
          : `The text says ${quote.text} for ${quote.of}${good ? "" : `; computed it is ${inUnitOf(text, value)}`}.`;
      yield is(where, {
        holds: good === true,
        says,
        mend: "Correct the figure in the text.",
        mends: good ? [] : mendsOf(quote, text, value, guess),
      });
    }
  },
});
