import { missing, type PictureSignal as Signal, timingClock, timingsOf, type Value } from "@plumbmark/calc";
import type { Design } from "../design.js";
import type { Hop } from "../picture/picture-path.js";
import type { PlacedPart, Placement } from "../picture/placement.js";
import { numbered, under, type ValueEntry } from "./entries.js";

/** Clock of the timing the link uses; of a link without a clock that of the timing a source would send. */
function linkClock(hop: Hop, signal: Signal): Value<"frequency"> {
  const timing = hop.carries(signal)?.timing ?? timingsOf(signal.width, signal.height, signal.rate)[0];
  if (!timing) {
    const because = `No timing is known for ${signal.width} × ${signal.height} at ${signal.rate} Hz.`;
    return missing("frequency", { path: "picture.raster", what: "timing", because });
  }
  return timingClock(timing);
}

/** A link at its first cable; each of its cables with its own reach. */
function valuesOfHop(hop: Hop, signal: Signal): readonly ValueEntry[] {
  const clock = {
    "pixel-clock": () => linkClock(hop, signal),
    needed: () => hop.carries(signal)?.measured,
    bound: () => hop.carries(signal)?.allowed,
  };
  const cables = hop.cables.flatMap((cable) =>
    under(cable.path, { "link-length": () => hop.length, "length-limit": () => hop.limit(cable, signal) }),
  );
  return [...under(hop.path, clock), ...cables];
}

/** How far something reaches on the raster. */
const edges = (placed: Placement | PlacedPart) => ({ right: () => placed.right, bottom: () => placed.bottom });

export function pictureValues({ picture }: Design): readonly ValueEntry[] {
  const { signal, width, height, rate, depth } = picture;
  return [
    ...under("picture", { width: () => width, height: () => height, rate: () => rate, depth: () => depth }),
    ...(signal ? picture.hops.flatMap((hop) => valuesOfHop(hop, signal)) : []),
    ...picture.placements.flatMap((placement) => [
      ...under(placement.path, edges(placement)),
      ...numbered(`${placement.path}.parts`, placement.isFolded ? placement.parts : [], edges),
    ]),
  ];
}
