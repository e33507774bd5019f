import { missing, type Value } from "@plumbmark/calc";
import { Cable } from "../model/cabling/cable.js";
import { Jumpers } from "../model/cabling/jumpers.js";
import type { Chain } from "../model/data/chain.js";
import type { Design } from "../model/design.js";
import type { Run } from "../model/power/run.js";
import type { Part } from "../repository/parts.js";
import { labeller } from "./labels.js";
import { NOT_STATED } from "./table.js";
import { videoCables } from "./video-cables.js";

/** One end of a cable: where it is plugged in, and the connector of the cable there. */
export interface CableEnd {
  readonly place: string;
  readonly connector: string;
}

/** One cable of the build, as it is labelled and laid. */
export interface LaidCable {
  readonly label: string;
  readonly kind: "power feed" | "power jumper" | "data feed" | "data jumper" | "data return" | "video";
  readonly name: string;
  readonly part: Part | undefined;
  /** As it is written down. */
  readonly length: Value<"length">;
  /** Straight from connector to connector, where a jumper leads from panel to panel; slack not included. */
  readonly reach?: Value<"length">;
  readonly from: CableEnd;
  readonly to: CableEnd;
  /** Run, chain or path it belongs to. */
  readonly use: string;
}

/** A feed, jumper or return written for a run or chain. */
const laid = (
  cable: Cable,
  own: Pick<LaidCable, "label" | "kind" | "use" | "reach">,
  places: readonly [string, string],
): LaidCable => {
  const [from, to] = places.map((place, end) => ({ place, connector: cable.ends[end]?.id ?? NOT_STATED }));
  const name = cable.part?.name ?? cable.reader.text(`${cable.path}.part`) ?? NOT_STATED;
  return { ...own, name, part: cable.part, length: cable.length, from: from as CableEnd, to: to as CableEnd };
};

const portOf = ({ build }: Chain, port: number | undefined): string => {
  const stands = build.reader.text("data.processor.place");
  const name = build.reader.text("data.processor.part") ?? "processor";
  return `${name}${stands === undefined ? "" : ` (${stands})`} port ${port ?? NOT_STATED}`;
};

/** Cables of one run or chain in cable order; panels that are not written down leave one feed to an unstated end. */
function ofLine(
  line: Run | Chain,
  sort: "power" | "data",
  source: string,
  label: (cable: string) => string,
): LaidCable[] {
  const use = `${sort === "power" ? "run" : "chain"} ${line.name}`;
  const panels = line.panels ?? [];
  const into = (index: number): string => `${panels[index]?.name ?? NOT_STATED} ${sort}-in`;
  const feed = laid(line.feed, { label: label("F"), kind: `${sort} feed`, use }, [source, into(0)]);
  const reaches = new Jumpers(line, sort).reaches;
  const jumpers = panels.slice(1).map((panel, index) => {
    const reach = reaches[index] ?? missing("length");
    const own = { label: label(`J${index + 1}`), kind: `${sort} jumper`, use, reach } as const;
    return laid(line.jumper, own, [`${panels[index]?.name} ${sort}-out`, `${panel.name} ${sort}-in`]);
  });
  return [feed, ...jumpers];
}

/**
 * The cable that closes a loop, in the way the signal takes: out of the last panel, into the back-up port. It is written
 * from the port, so its first connector is the one at the processor. None where no loop is meant.
 */
function returnOf(chain: Chain, label: string): readonly LaidCable[] {
  if (!chain.closing && chain.backUpPort === undefined) return [];
  const what = `The return of chain ${chain.name}`;
  const cable = chain.closing ?? new Cable(chain.build.reader, `${chain.path}.return`, what, "data-cable");
  const own = { label, kind: "data return", use: `return of chain ${chain.name}` } as const;
  const last = `${chain.panels?.at(-1)?.name ?? NOT_STATED} data-out`;
  const { from, to, ...rest } = laid(cable, own, [portOf(chain, chain.backUpPort), last]);
  return [{ ...rest, from: to, to: from }];
}

/** Every cable of a build: power, data, picture, each once, in the order they are laid. */
export function cablesOf(build: Design): readonly LaidCable[] {
  const label = labeller(build);
  const power = build.runs.flatMap((run) => {
    const source = run.circuit ? `circuit ${run.circuit.name} outlet` : `circuit ${NOT_STATED}`;
    return ofLine(run, "power", source, (cable) => label(run, cable));
  });
  const data = build.chains.flatMap((chain) => [
    ...ofLine(chain, "data", portOf(chain, chain.port), (cable) => label(chain, cable)),
    ...returnOf(chain, label(chain, "R")),
  ]);
  return [...power, ...data, ...videoCables(build)];
}
