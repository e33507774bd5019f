import { type Cable, type Chain, type Face, labeller, type Run } from "@plumbmark/core";
import { cellRanges } from "../shared/cell-ranges.js";
import type { DrawingSubject } from "../shared/drawing.js";
import { UNWRITTEN, writtenText } from "../shared/value-text.js";
import type { Layer, Strand } from "./strand.js";

/** A cable in a few words: its part and its length. */
export function cableWords(cable: Cable, { system, build }: DrawingSubject): string {
  if (!cable.written) return UNWRITTEN;
  const part = cable.part?.name ?? build.reader.text(`${cable.path}.part`) ?? `part ${UNWRITTEN}`;
  return `${part}, ${cable.length.known ? writtenText(cable.length, system) : `length ${UNWRITTEN}`}`;
}

/** `P1-J1 to P1-J5: `; nothing where it is not known how many panels there are. */
export function jumperLabels(
  line: Run | Chain,
  panels: number | undefined,
  label: ReturnType<typeof labeller>,
): string {
  if (panels === undefined) return "";
  const first = label(line, "J1");
  return panels > 2 ? `${first} to ${label(line, `J${panels - 1}`)}: ` : `${first}: `;
}

const circuitName = (run: Run): string => run.build.reader.text(`${run.path}.from`) ?? UNWRITTEN;

function strand(run: Run, number: number, subject: DrawingSubject, label: ReturnType<typeof labeller>): Strand {
  const { build } = subject;
  const circuit = run.circuit ? build.circuits.indexOf(run.circuit) : -1;
  const cells = run.panels?.map(({ cell }) => cell);
  const legs = run.legs === undefined ? "" : `, legs ${run.legs}`;
  return {
    sort: "run",
    name: run.name,
    cells,
    group: circuit < 0 ? undefined : circuit,
    number,
    enters: [label(run, "F"), `from ${circuitName(run)}`],
    legend: [
      run.name,
      `${circuitName(run)}${legs}`,
      cells ? String(cells.length) : UNWRITTEN,
      cells ? cellRanges(cells) : UNWRITTEN,
      `${label(run, "F")}: ${cableWords(run.feed, subject)}`,
      cells && cells.length < 2
        ? "none"
        : `${jumperLabels(run, cells?.length, label)}${cableWords(run.jumper, subject)}`,
    ].map((words) => ({ words })),
  };
}

/** The runs of a face; those that name no panels are drawn on none and listed on every face. */
export const powerLayer = (face: Face, subject: DrawingSubject, label = labeller(subject.build)): Layer => ({
  name: "power",
  what: "Power",
  on: "run",
  header: ["Run", "Circuit", "Panels", "In cable order", "Feed", "Jumpers"],
  strands: subject.build.runs
    .map((run, number) => ({ run, strand: strand(run, number, subject, label) }))
    .filter(({ run }) => run.panels?.some((panel) => panel.face === face) ?? true)
    .map((each) => each.strand),
});
