import type { Data } from "../document/yaml/yaml.js";
import { endOf } from "../model/cabling/cable.js";
import type { Design } from "../model/design.js";
import type { LaidCable } from "./cables.js";
import { stationsOf } from "./stations.js";
import { NOT_STATED } from "./table.js";

/** Cables of the picture path, `V1` next to the source. A cable behind a cable is joined to it. */
export function videoCables(build: Design): readonly LaidCable[] {
  const stations = stationsOf(build);
  const stands = build.reader.text("data.processor.place");
  const processor = `${build.processor?.name ?? "processor"}${stands === undefined ? "" : ` (${stands})`}`;
  const labels = new Map<string, string>();
  for (const { path, kind } of stations) if (kind === "video-cable") labels.set(path, `V${labels.size + 1}`);
  const placeOf = (index: number): string => {
    const station = stations[index];
    if (!station) return index < 0 ? NOT_STATED : `${processor} input`;
    const label = labels.get(station.path);
    if (label !== undefined) return `cable ${label}`;
    return `${station.name}${station.place === undefined ? "" : ` (${station.place})`}`;
  };
  return stations.flatMap(({ path, name, part, length, kind }, index): LaidCable[] => {
    if (kind !== "video-cable") return [];
    const ends = part?.data.connectors as readonly Data[] | undefined;
    const end = (which: 0 | 1, place: string) => ({ place, connector: endOf(ends?.[which])?.id ?? NOT_STATED });
    const [from, to] = [end(0, placeOf(index - 1)), end(1, placeOf(index + 1))];
    return [{ label: labels.get(path) ?? "", kind: "video", name, part, length, from, to, use: "picture path" }];
  });
}
