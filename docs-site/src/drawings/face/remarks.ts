import { cellName, type Face } from "@plumbmark/core";
import { type DrawingSubject, failureNotes } from "../shared/drawing.js";
import { gapNotes, UNWRITTEN } from "../shared/value-text.js";
import { kindNotes, turnNotes } from "./kinds.js";
import { countOf, type Layer, timesOn } from "./strand.js";

const some = (names: readonly string[]): string =>
  names.length > 8 ? `${names.slice(0, 8).join(", ")} and ${names.length - 8} more` : names.join(", ");

/** What the crew has to know that the lines alone do not say. */
export function remarks(face: Face, layer: Layer, rear: boolean, subject: DrawingSubject): readonly string[] {
  const times = timesOn(face, layer.strands);
  const off = face.cells.filter((cell) => countOf(times, cell) === 0).map(cellName);
  const twice = face.cells.filter((cell) => countOf(times, cell) > 1).map(cellName);
  const unlisted = layer.strands.filter(({ cells }) => !cells).map(({ name }) => name);
  const left = face.rows * face.columns - face.cells.length;
  const { sort } = layer.strands[0] ?? {};
  const strands = sort === "run" ? subject.build.runs : sort === "chain" ? subject.build.chains : [];
  const drawn = strands.filter((each) => layer.strands.some(({ name }) => name === each.name));
  return [
    ...failureNotes(subject, [face, ...drawn]),
    ...(off.length > 0 ? [`On no ${layer.on}, framed in dashes: ${some(off)}.`] : []),
    ...(twice.length > 0 ? [`On more than one ${layer.on}, framed in dashes: ${some(twice)}.`] : []),
    ...unlisted.map((name) => `The ${layer.on} ${name}: panels in cable order ${UNWRITTEN}.`),
    ...(layer.strands.length === 0 ? [`No ${layer.on} of this face is ${UNWRITTEN.replace("not ", "")}.`] : []),
    ...(left > 0 ? [`Cells crossed out are left out: ${left} of ${face.rows * face.columns}.`] : []),
    ...turnNotes(face, rear, subject),
    ...kindNotes(face, some),
    ...gapNotes([face.width, face.height]).map((each) => `Not to scale. ${each}`),
  ];
}
