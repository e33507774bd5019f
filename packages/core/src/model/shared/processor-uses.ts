import { counted, missing, type Value } from "@plumbmark/calc";
import { placeName } from "../../document/place-name.js";
import type { Design } from "../design.js";
import type { OwnUse } from "./use.js";

/** What tells one piece from another of its kind: its serial number, else where it stands. */
export function pieceNamed(build: Design, path: string, venue: string | undefined): string | undefined {
  const { reader } = build;
  const [serial, place] = [reader.text(`${path}.serial`), reader.text(`${path}.place`)];
  if (serial !== undefined) return `serial ${serial}`;
  return place === undefined || venue === undefined ? undefined : placeName(place);
}

function signalOf({ reader }: Design): string | undefined {
  const [raster, rate, depth] = ["raster", "rate", "depth"].map((key) => reader.data(`picture.${key}`));
  return raster === undefined ? undefined : [raster, rate, depth].filter((each) => each !== undefined).join(", ");
}

/** Its processor, with the pixels and the ports it asks of it; none where nothing tells it from another of its kind. */
export function processorUses(build: Design, venue: string | undefined): readonly OwnUse[] {
  const path = "data.processor";
  const part = build.reader.text(`${path}.part`);
  const serial = build.reader.text(`${path}.serial`);
  const which = pieceNamed(build, path, venue);
  if (part === undefined || which === undefined || build.chains.length === 0) return [];
  const { uses, pixelsAsked, pixels, ports } = build.processorLoad;
  const taken: Value<"count"> = uses
    ? counted(new Set(uses.map(({ port }) => port)).size, "ports taken")
    : missing("count", { path: "data.chains", what: "port of every chain", of: "The build" });
  const about = { name: part, path, label: `Processor ${part}`, which: serial ?? which };
  const signal = signalOf(build);
  const at = {
    ...about,
    ...(serial === undefined && venue !== undefined ? { venue } : {}),
    of: "processor" as const,
  };
  return [
    {
      ...at,
      ...{ unit: "{pixel}", amounts: { N: pixelsAsked }, allowed: pixels },
      ...(uses ? { ports: uses.map(({ port }) => port) } : {}),
      ...(signal === undefined ? {} : { signal }),
    },
    { ...at, name: `ports of ${part}`, unit: "{count}", amounts: { n: taken }, allowed: ports },
  ];
}
