import type { Chain, Face } from "@plumbmark/core";
import { cellRanges } from "../shared/cell-ranges.js";
import type { Subject } from "../shared/drawing.js";
import { shown, UNWRITTEN } from "../shared/shown.js";
import { cableWords } from "./power.js";
import type { Layer, Strand } from "./strand.js";

/** The cable back to the processor, where the loop is closed. */
function returnWords(chain: Chain, { build, system }: Subject): string {
  const base = `${chain.path}.return`;
  if (chain.backUpPort === undefined) return "none";
  const part = build.reader.text(`${base}.part`);
  if (part === undefined) return UNWRITTEN;
  const length = build.reader.value(`${base}.length`, "length", "length", chain.label);
  return `${part}, ${length.known ? shown(length, system) : `length ${UNWRITTEN}`}`;
}

function strand(chain: Chain, number: number, subject: Subject): Strand {
  const cells = chain.panels?.map(({ cell }) => cell);
  const port = chain.port === undefined ? `port ${UNWRITTEN}` : `port ${chain.port}`;
  const back = chain.backUpPort === undefined ? undefined : `port ${chain.backUpPort}`;
  return {
    sort: "chain",
    name: chain.name,
    cells,
    group: number,
    number,
    enters: [chain.name, `from ${port}`],
    ...(back ? { returns: [chain.name, `back to ${back}`] } : {}),
    legend: [
      chain.name,
      port,
      back ?? "none",
      cells ? String(cells.length) : UNWRITTEN,
      cells ? cellRanges(cells) : UNWRITTEN,
      cableWords(chain.feed, subject),
      cells && cells.length < 2 ? "none" : cableWords(chain.jumper, subject),
      returnWords(chain, subject),
    ].map((words) => ({ words })),
  };
}

export const dataLayer = (face: Face, subject: Subject): Layer => ({
  name: "data",
  what: "Data",
  on: "chain",
  header: ["Chain", "From", "Back-up", "Panels", "In cable order", "Feed", "Jumpers", "Return"],
  strands: subject.build.chains
    .map((chain, number) => ({ chain, strand: strand(chain, number, subject) }))
    .filter(({ chain }) => chain.panels?.some((panel) => panel.face === face) ?? true)
    .map((each) => each.strand),
});
