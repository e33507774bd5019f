import type { Value } from "@plumbmark/calc";
import type { Bar, Hang, WorstCase } from "@plumbmark/core";
import type { DrawingSubject } from "../shared/drawing.js";
import type { DrawnCell } from "../shared/table.js";
import { resultText, UNTOLD, writtenText } from "../shared/value-text.js";

/** The worst case of every hang with any one of the others slack; none when it cannot be told or does not differ. */
export function worstCases(bar: Bar): ReadonlyMap<string, WorstCase> {
  const cases = bar.slackCases;
  return new Map(cases?.known ? cases.worst.map((each) => [each.hang.name, each] as const) : []);
}

const worstWords = (bar: Bar, worst: WorstCase | undefined, { system }: DrawingSubject): readonly [string, string] => {
  if (bar.hangs.length < 3) return ["as level", "–"];
  if (!worst) return [UNTOLD, "–"];
  return [resultText(worst.reaction, system), worst.slackened ? worst.slackened.name : "none"];
};

/** What the hang is held against where its load is borne by the legs of a bridle. */
const own = (hang: Hang, value: Value, { system }: DrawingSubject): string =>
  hang.bridled && !value.known ? "see legs" : writtenText(value, system);

export const HANG_HEADER = [
  "Hang",
  "From audience's left",
  "Level",
  "At worst",
  "Slack then",
  "Structure",
  "Weakest part",
];

export function hangRows(bar: Bar, subject: DrawingSubject): readonly (readonly DrawnCell[])[] {
  const worst = worstCases(bar);
  return bar.hangs.map((hang) => {
    const [load, slack] = worstWords(bar, worst.get(hang.name), subject);
    const reaction = worst.get(hang.name)?.reaction;
    return [
      { words: hang.name },
      { words: writtenText(hang.at, subject.system) },
      {
        words: resultText(hang.reaction, subject.system),
        data: hang.reaction.known ? { dataLevel: hang.reaction.value } : {},
      },
      { words: load, data: reaction?.known ? { dataWorst: reaction.value } : {} },
      { words: slack },
      { words: own(hang, hang.structure, subject) },
      { words: own(hang, hang.weakest, subject) },
    ];
  });
}

export const LEG_HEADER = ["Leg", "Rise", "Run", "From level", "Tension", "At worst", "Structure", "Weakest part"];

export function legRows(bar: Bar, { system }: DrawingSubject): readonly (readonly DrawnCell[])[] {
  const worst = worstCases(bar);
  return bar.hangs.flatMap((hang) =>
    hang.legs.map((leg) => {
      const most = worst.get(hang.name)?.reaction;
      return [
        `${hang.name} ${leg.side}`,
        writtenText(leg.rise, system),
        writtenText(leg.run, system),
        resultText(leg.angle, system),
        resultText(leg.tension(hang.reaction), system),
        bar.hangs.length < 3 ? "as level" : most ? resultText(leg.tension(most), system) : UNTOLD,
        writtenText(leg.structure, system),
        writtenText(leg.assembly.weakest, system),
      ].map((words) => ({ words }));
    }),
  );
}
