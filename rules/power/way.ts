import type { Build, Turns } from "@plumbmark/kit";

type Run = Build["runs"][number];

/** What of the way to a run's panels can be another: the wiring where its length is not known yet, else the feed. */
export function wayOf({ build, circuit, path }: Run): Turns {
  const wiring = circuit && `${circuit.path}.wiring.length`;
  const isUnwritten = wiring !== undefined && !build.reader.has(wiring);
  return { path: isUnwritten ? wiring : `${path}.feed.length`, sense: "at most" };
}
