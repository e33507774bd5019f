import { is, type RawCheck, rule, type SharedThing } from "@plumbmark/kit";
import { type SharedWords, sharedChecks } from "../../shared-use.js";

const wordsFor = ({ unit }: SharedThing): SharedWords => ({
  says: ({ label, which }, measured, allowed) =>
    unit === "{pixel}"
      ? `${label} (${which}) is asked for ${measured} by all builds that use it; it drives ${allowed}.`
      : `${label} (${which}) is asked for ${measured} ports by all builds that use it; it has ${allowed}.`,
  mend: "Take another processor for one of the builds, and write where it stands or its `serial`.",
});

/** Ports that are taken twice, and pictures that are not the same: a processor shows one. */
function* clashes(thing: SharedThing): Iterable<RawCheck> {
  const [own] = thing.own;
  for (const { file, path, ports = [], signal } of thing.counted) {
    const twice = (own.ports ?? []).filter((port) => ports.includes(port)).sort((one, other) => one - other);
    yield is(thing, {
      holds: twice.length === 0,
      says:
        twice.length === 0
          ? `${thing.label} (${thing.which}) has no port that ${file} (${path}) uses as well.`
          : `Port ${twice.join(" and port ")} of ${thing.label} (${thing.which}) ${twice.length === 1 ? "is" : "are"} also used by ${file} (${path}).`,
      mend: "Give every chain of both builds a port of its own, or take another processor for one of them.",
    });
    if (own.signal === undefined || signal === undefined) continue;
    yield is(thing, {
      holds: own.signal === signal,
      says:
        own.signal === signal
          ? `${thing.label} (${thing.which}) is fed with one raster: ${signal}.`
          : `${thing.label} (${thing.which}) is fed with ${own.signal} here and with ${signal} in ${file} (${path}).`,
      mend: "Put both builds on one raster, or take another processor for one of them.",
    });
  }
}

export default rule({
  id: "data.shared-processor",
  states: "A processor that several builds use at once has the ports and the pixels for all, and one picture.",
  level: "shall",
  why: "Each drawing has four ports of the one processor in the rack. On the evening both are up there are eight chains for them.",
  judged:
    "Over all documents of the repository that use the same processor on any of this build's days on site: one of the same part with the same `serial`, else one at the same venue and place. The pixels of all are added up against what it drives, the ports against those it has; no port is taken twice, and raster, rate and depth are the same. Drafts and builds without days are left out; how it would be with them is told at level `note`.",
  sources: ["part", "arithmetic"],
  *checks({ build }) {
    const things = build.shared("processor");
    yield* sharedChecks(things, wordsFor);
    // Without days it is open for itself, and nobody else's ports are taken.
    for (const thing of things) if (thing.unit === "{pixel}" && thing.stay !== undefined) yield* clashes(thing);
  },
});
