import { type Chain, type Face, labeller } from "@plumbmark/core";
import { cellRanges } from "../shared/cell-ranges.js";
import type { DrawingSubject } from "../shared/drawing.js";
import { UNWRITTEN, writtenText } from "../shared/value-text.js";
import { cableWords, jumperLabels } from "./power.js";
import type { Layer, Strand } from "./strand.js";

/** The cable back to the processor, where the loop is closed. */
function returnWords(chain: Chain, { build, system }: DrawingSubject): string {
  const base = `${chain.path}.return`;
  const part = build.reader.text(`${base}.part`);
  if (part === undefined) return UNWRITTEN;
  const length = build.reader.value(`${base}.length`, "length", "length", chain.label);
  return `${part}, ${length.known ? writtenText(length, system) : `length ${UNWRITTEN}`}`;
}

function strand(chain: Chain, number: number, subject: DrawingSubject, label: ReturnType<typeof labeller>): Strand {
  const cells = chain.panels?.map(({ cell }) => cell);
  const port = chain.port === undefined ? `port ${UNWRITTEN}` : `port ${chain.port}`;
  const back = chain.backUpPort === undefined ? undefined : `port ${chain.backUpPort}`;
  return {
    sort: "chain",
    name: chain.name,
    cells,
    group: number,
    number,
    enters: [label(chain, "F"), `from ${port}`],
    ...(back ? { returns: [label(chain, "R"), `to ${back}`] } : {}),
    legend: [
      chain.name,
      port,
      back ?? "none",
      cells ? String(cells.length) : UNWRITTEN,
      cells ? cellRanges(cells) : UNWRITTEN,
      `${label(chain, "F")}: ${cableWords(chain.feed, subject)}`,
      cells && cells.length < 2
        ? "none"
        : `${jumperLabels(chain, cells?.length, label)}${cableWords(chain.jumper, subject)}`,
      chain.backUpPort === undefined ? "none" : `${label(chain, "R")}: ${returnWords(chain, subject)}`,
    ].map((words) => ({ words })),
  };
}

export const dataLayer = (face: Face, subject: DrawingSubject, label = labeller(subject.build)): Layer => ({
  name: "data",
  what: "Data",
  on: "chain",
  header: ["Chain", "From", "Back-up", "Panels", "In cable order", "Feed", "Jumpers", "Return"],
  strands: subject.build.chains
    .map((chain, number) => ({ chain, strand: strand(chain, number, subject, label) }))
    .filter(({ chain }) => chain.panels?.some((panel) => panel.face === face) ?? true)
    .map((each) => each.strand),
});
