import type { Value } from "@plumbmark/calc";
import type { Bar, Hang, Leg } from "@plumbmark/core";
import { type DrawingSubject, failureMark } from "../shared/drawing.js";
import type { DrawnCell } from "../shared/table.js";
import { resultText, writtenText } from "../shared/value-text.js";

/** What the hang is held against where its load is borne by the legs of a bridle. */
const own = (hang: Hang, value: Value, { system }: DrawingSubject): string =>
  hang.bridled && !value.known ? "see legs" : writtenText(value, system);

/** The case that governs, in words. */
export const caseWords = (when: string): string =>
  when === "" ? "as level" : when.trim().replace(/^(?:with|, and) /u, "");

/** A figure with what it is in the model, so that it can be compared with what is judged. */
const figure = (value: Value, name: string, { system }: DrawingSubject): DrawnCell => ({
  words: resultText(value, system),
  data: value.known ? { [name]: value.value } : {},
});

/** Figures of the table that are judged, level and at worst, as the hang or leg bears them and as the structure does. */
function loads(level: Value, worst: Value, on: (load: Value) => Value, subject: DrawingSubject): readonly DrawnCell[] {
  return [
    figure(level, "dataLevel", subject),
    figure(worst, "dataWorst", subject),
    figure(on(level), "dataStructureLevel", subject),
    figure(on(worst), "dataStructureWorst", subject),
  ];
}

const LOADS = ["Level", "At worst", "On structure", "at worst"];

/** A row with the rules that do not hold for it; the cell is left out where all of them hold. */
const withFailures = (
  cells: readonly DrawnCell[],
  { path }: Hang | Leg,
  subject: DrawingSubject,
): readonly DrawnCell[] => {
  const mark = failureMark(subject, path);
  return mark === undefined ? cells : [...cells, { words: mark, data: { dataFailure: path }, below: true }];
};

export const HANG_HEADER = ["Hang", "From left", ...LOADS, "At worst with", "Rated", "Weakest"];

const SEE_LEGS: readonly DrawnCell[] = [{ words: "see legs" }, { words: "see legs" }];

export function hangRows(bar: Bar, subject: DrawingSubject): readonly (readonly DrawnCell[])[] {
  return bar.hangs.map((hang) => {
    const { reaction, when } = hang.worst;
    const [level, worst, ...structure] = loads(hang.level, reaction, (load) => hang.onStructure(load), subject);
    return withFailures(
      [
        { words: hang.name, data: { dataRow: hang.path } },
        { words: writtenText(hang.at, subject.system) },
        level as DrawnCell,
        worst as DrawnCell,
        ...(hang.bridled ? SEE_LEGS : structure),
        { words: bar.hangs.length < 3 && when === "" ? "as level" : caseWords(when) },
        { words: own(hang, hang.structure, subject) },
        { words: own(hang, hang.weakest, subject) },
      ],
      hang,
      subject,
    );
  });
}

export const LEG_HEADER = ["Leg", "Rise", "Run", "From level", ...LOADS, "Rated", "Weakest"];

export function legRows(bar: Bar, subject: DrawingSubject): readonly (readonly DrawnCell[])[] {
  const { system } = subject;
  return bar.hangs.flatMap((hang) =>
    hang.legs.map((leg) =>
      withFailures(
        [
          { words: `${hang.name} ${leg.side}`, data: { dataRow: leg.path } },
          { words: writtenText(leg.rise, system) },
          { words: writtenText(leg.run, system) },
          { words: resultText(leg.angle, system) },
          ...loads(leg.tension(hang.level), leg.tension(hang.worst.reaction), (load) => leg.onStructure(load), subject),
          { words: writtenText(leg.structure, system) },
          { words: writtenText(leg.assembly.weakest, system) },
        ],
        leg,
        subject,
      ),
    ),
  );
}
