import type { Data } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";
import type { Chain } from "../data/chain.js";
import type { Run } from "../power/run.js";
import { partName } from "../reading/reader.js";
import { endOf } from "./cable.js";
import type { CablingDesign } from "./cabling-design.js";

/** Two connector families that meet at a joint; a side that is not written down is undefined. */
export interface Meeting {
  readonly path: string;
  readonly label: string;
  readonly where: string;
  readonly sides: readonly [string | undefined, string | undefined];
}

const idOf = (data: Data | undefined): string | undefined => endOf(data)?.id;
const inPart = (part: Part | undefined, path: "port-connector" | "connector"): string | undefined =>
  idOf(part?.data[path]);
const endsOf = (part: Part | undefined): readonly [string | undefined, string | undefined] => {
  const ends = part?.data.connectors as readonly Data[] | undefined;
  return [idOf(ends?.[0]), idOf(ends?.[1])];
};

/** Feed into the first panel, each jumper out of one panel and into the next. */
function along(line: Run | Chain, kind: "power" | "data"): readonly Meeting[] {
  const panels = line.panels ?? [];
  const [feed, jumper] = [line.feed, line.jumper].map(({ ends }) => ends.map((end) => end?.id));
  return panels.flatMap(({ part, name }, index) => {
    const sockets = part?.data.connectors as Record<string, Data> | undefined;
    const cable = index === 0 ? line.feed : line.jumper;
    const into: Meeting = {
      path: cable.path,
      label: cable.label,
      where: `${kind}-in of ${name}`,
      sides: [index === 0 ? feed?.[1] : jumper?.[1], idOf(sockets?.[`${kind}-in`])],
    };
    if (index === panels.length - 1) return [into];
    return [
      into,
      {
        path: line.jumper.path,
        label: line.jumper.label,
        where: `${kind}-out of ${name}`,
        sides: [jumper?.[0], idOf(sockets?.[`${kind}-out`])],
      },
    ];
  });
}

const atPort = (chain: Chain): Meeting => ({
  path: chain.feed.path,
  label: chain.feed.label,
  where: "the port of the processor",
  sides: [chain.feed.ends[0]?.id, inPart(chain.build.processor, "port-connector")],
});

/** What closes a loop: from the last panel to a port, its port end first, as a feed has it. */
function closing({ closing: cable, panels, build }: Chain): readonly Meeting[] {
  const last = panels?.at(-1);
  if (!cable || !last) return [];
  const [port, panel] = cable.ends.map((end) => end?.id);
  const sockets = last.part?.data.connectors as Record<string, Data> | undefined;
  const base = { path: cable.path, label: cable.label };
  return [
    { ...base, where: "the back-up port of the processor", sides: [port, inPart(build.processor, "port-connector")] },
    { ...base, where: `data-out of ${last.name}`, sides: [panel, idOf(sockets?.["data-out"])] },
  ];
}

/** Neighbours on the picture path. What a processor takes the picture in by is not part of its entry, so the path ends before it. */
function pictureMeetings(build: CablingDesign): readonly Meeting[] {
  const path = build.reader.data("picture.path");
  const parts = (Array.isArray(path) ? (path as readonly Data[]) : []).map((entry) =>
    build.reader.parts.get(partName(entry)),
  );
  return parts.slice(1).map((part, index) => {
    const before = parts[index];
    const out = before?.kind === "source" ? inPart(before, "connector") : endsOf(before)[1];
    return {
      path: `picture.path.${index + 2}`,
      label: "The picture path",
      where: `${part?.name ?? "an unknown part"} after ${before?.name ?? "an unknown part"}`,
      sides: [out, endsOf(part)[0]] as const,
    };
  });
}

/** Every joint of the build but the plugs in the venue's outlets. */
export const meetingsOf = (build: CablingDesign): readonly Meeting[] => [
  ...build.runs.flatMap((run) => along(run, "power")),
  ...build.chains.flatMap((chain) => [atPort(chain), ...along(chain, "data"), ...closing(chain)]),
  ...pictureMeetings(build),
];
