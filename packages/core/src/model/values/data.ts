import { counted, shareOf } from "@plumbmark/calc";
import type { Chain } from "../data/chain.js";
import type { Design } from "../design.js";
import { under, type ValueEntry } from "./entries.js";
import { jumperValues } from "./jumpers.js";

const valuesOfChain = (chain: Chain): readonly ValueEntry[] => [
  ...under(chain.path, {
    panels: () => chain.panelCount,
    "panel-limit": () => chain.panelLimit,
    pixels: () => chain.pixels,
    capacity: () => chain.stated,
    "capacity-scaled-up": () => chain.scaledUp,
    "link-bound": () => chain.bound,
    share: () => shareOf(chain.pixels, chain.stated),
  }),
  ...under(`${chain.path}.feed`, { length: () => chain.feed.length }),
  ...under(`${chain.path}.return`, { length: () => chain.closing?.length }),
  ...((chain.panels?.length ?? 0) > 1 ? jumperValues(chain, "data") : []),
];

function valuesOfProcessor(build: Design): readonly ValueEntry[] {
  if (build.chains.length === 0) return [];
  const load = build.processorLoad;
  const used = load.uses;
  const highest = used && Math.max(...used.map(({ port }) => port));
  return under(load.path, {
    pixels: () => load.pixelsAsked,
    capacity: () => load.pixels,
    share: () => shareOf(load.pixelsAsked, load.pixels),
    ports: () => load.ports,
    "ports-used": () => used && counted(new Set(used.map(({ port }) => port)).size, "ports used"),
    "highest-port": () => (highest === undefined ? undefined : counted(highest, "highest port used")),
  });
}

export const dataValues = (build: Design): readonly ValueEntry[] => [
  ...build.chains.flatMap(valuesOfChain),
  ...valuesOfProcessor(build),
];
