import type { Value } from "@plumbmark/calc";
import type { Bar, Hang } from "@plumbmark/core";
import type { DrawingSubject } from "../shared/drawing.js";
import type { DrawnCell } from "../shared/table.js";
import { resultText, writtenText } from "../shared/value-text.js";

/** What the hang is held against where its load is borne by the legs of a bridle. */
const own = (hang: Hang, value: Value, { system }: DrawingSubject): string =>
  hang.bridled && !value.known ? "see legs" : writtenText(value, system);

export const HANG_HEADER = ["Hang", "From audience's left", "Level", "At worst", "Then", "Structure", "Weakest part"];

export function hangRows(bar: Bar, subject: DrawingSubject): readonly (readonly DrawnCell[])[] {
  return bar.hangs.map((hang) => {
    const { reaction, when } = hang.worst;
    return [
      { words: hang.name },
      { words: writtenText(hang.at, subject.system) },
      {
        words: resultText(hang.reaction, subject.system),
        data: hang.reaction.known ? { dataLevel: hang.reaction.value } : {},
      },
      { words: resultText(reaction, subject.system), data: reaction.known ? { dataWorst: reaction.value } : {} },
      { words: when === "" ? "as level" : when.trim().replace(/^with /u, "") },
      { words: own(hang, hang.structure, subject) },
      { words: own(hang, hang.weakest, subject) },
    ];
  });
}

export const LEG_HEADER = ["Leg", "Rise", "Run", "From level", "Tension", "At worst", "Structure", "Weakest part"];

export function legRows(bar: Bar, { system }: DrawingSubject): readonly (readonly DrawnCell[])[] {
  return bar.hangs.flatMap((hang) =>
    hang.legs.map((leg) =>
      [
        `${hang.name} ${leg.side}`,
        writtenText(leg.rise, system),
        writtenText(leg.run, system),
        resultText(leg.angle, system),
        resultText(leg.tension(hang.reaction), system),
        resultText(leg.tension(hang.worst.reaction), system),
        writtenText(leg.structure, system),
        writtenText(leg.assembly.weakest, system),
      ].map((words) => ({ words })),
    ),
  );
}
