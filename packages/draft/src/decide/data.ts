import type { Data, Part } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { grouped, keyOf, type Mapping, textOf, wholeAt } from "../data.js";
import { divide } from "../search/divide.js";
import type { GridCell } from "../search/grid.js";
import { cellsText } from "../write/cells.js";
import { wayToFace } from "./cables.js";
import { type Decided, decided, fallen, type Scheme } from "./decision.js";
import { placesOfDevices } from "./picture.js";
import { cablesBetween, cableTo, jumperFor, rigged } from "./power.js";
import { FACE } from "./size.js";

interface Cables {
  readonly feed: Mapping;
  readonly jumper: Mapping;
  readonly back: Mapping | undefined;
}

/** Chains as they are written: feed, jumper, and the way back where loops are closed. */
function chainsOf(
  pieces: readonly (readonly GridCell[])[],
  { feed, jumper, back }: Cables,
  loops: boolean,
  taken = 0,
): Mapping {
  return Object.fromEntries(
    pieces.map((piece, index) => [
      `D${index + 1}`,
      grouped({
        port: taken + index + 1,
        "back-up-port": loops && back ? taken + pieces.length + index + 1 : undefined,
        feed,
        jumper: piece.length > 1 ? jumper : undefined,
        return: loops ? back : undefined,
        panels: `${FACE} ${cellsText(piece)}`,
      }),
    ]),
  ) as Mapping;
}

/** Most panels a port takes: by the pixels it may send, and by what the makers let follow one another. */
function mostInChain(brief: Brief, scheme: Scheme, cables: Cables, count: number): number {
  const { desk } = brief;
  const fits = (panels: number): boolean => {
    const row = Array.from({ length: panels }, (_, column) => ({ row: 0, column }));
    const face = { ...(keyOf(scheme.matter.faces, FACE) as Mapping), columns: panels, rows: 1 };
    const data = { ...(scheme.matter.data as Mapping), chains: chainsOf([row], cables, false) };
    const asked = desk.ask({ faces: { [FACE]: face }, data, picture: scheme.matter.picture } as Mapping);
    return asked.fails("data.port-load", "data.chain-length").length === 0;
  };
  if (fits(count)) return count;
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fits(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Solid strands lie still and carry far, stranded ones bear being bent: the former to the face, the latter within it. */
const bySolid = (parts: readonly Part[], solid: boolean): readonly Part[] => {
  const suits = ({ data }: Part): number => ((data.strands === "solid") === solid ? 0 : 1);
  return [...parts].sort((a, b) => suits(a) - suits(b));
};

/** Chains of as few ports as can be, alike in length, each closed to a loop where the processor has ports for it. */
export function driven(brief: Brief, scheme: Scheme, cells: readonly GridCell[]): Decided {
  const { catalogue, desk } = brief;
  const name = textOf(keyOf(scheme.matter.data, "processor"), "part") ?? "";
  const processor = catalogue.parts.get(name);
  const port = processor?.data["port-connector"];
  const socket = typeof port === "string" ? port : textOf(port, "type");
  const { feeds, jumpers, returns } = cablesBetween(brief, scheme.panel, "data");
  const [feedPart] = bySolid(feeds(socket), true);
  const joined = jumperFor(brief, scheme, bySolid(jumpers, false), cells, "data");
  const jumper = "jumper" in joined ? joined.jumper : undefined;
  if (!feedPart || !jumper)
    return fallen(
      "connectors.mate",
      `The catalogue has no data cables from ${name} to ${scheme.panel} and between its panels.`,
    );
  const way = wayToFace(brief, placesOfDevices(brief).processor, 0);
  const [backPart] = bySolid(returns(socket), true);
  const lengthOf = (part: typeof feedPart): Mapping => cableTo(brief, scheme, part, way);
  const cables = { feed: lengthOf(feedPart), jumper, back: backPart ? lengthOf(backPart) : undefined };
  const most = mostInChain(brief, scheme, cables, cells.length);
  if (most < 1) return fallen("data.port-load", `One port of ${name} does not take one panel ${scheme.panel}.`);
  const pieces = divide(cells, most);
  const ports = wholeAt(processor?.data, "ports") ?? 0;
  if (pieces.length > ports)
    return fallen(
      "data.processor-load",
      `The face needs ${pieces.length} ports; ${name} has ${ports}.`,
      `${most * ports} panels are the most this processor drives.`,
    );
  const loops = processor?.data.loops === true && cables.back !== undefined && pieces.length * 2 <= ports;
  const withPorts = (taken: number) => {
    const data = { ...(scheme.matter.data as Mapping), chains: chainsOf(pieces, cables, loops, taken) } as Data;
    return { data, fails: desk.ask({ ...scheme.matter, rigging: rigged(brief), data }).fails("data.") };
  };
  // Of a processor somebody else uses those days, the ports that are left.
  const needed = pieces.length * (loops ? 2 : 1);
  const starts = Array.from({ length: Math.max(1, ports - needed + 1) }, (_, taken) => taken);
  let tried = withPorts(0);
  for (const taken of starts.slice(1)) {
    if (!tried.fails.some(({ rule }) => rule === "data.shared-processor")) break;
    tried = withPorts(taken);
  }
  const [first] = tried.fails;
  const matter = { data: tried.data };
  if (first) return fallen(first.rule, first.says);
  const chains =
    pieces.length === 1
      ? "One chain takes every panel"
      : `${pieces.length} chains, the fewest that do, are as even as can be`;
  return {
    ok: true,
    scheme: decided(scheme, matter, {
      what: "data",
      why: `${chains}${loops ? ", closed to a loop: a break in it leaves every panel lit" : ""}.`,
      exact: true,
      figures: pieces.map((_, index) => `data.chains.D${index + 1}.share`),
    }),
  };
}
