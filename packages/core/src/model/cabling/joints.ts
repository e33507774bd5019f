import { connectors, type Retention, retentions } from "@plumbmark/calc";
import type { Panel } from "../faces/panels.js";
import { type Cable, type End, endOf } from "./cable.js";
import type { CablingDesign } from "./cabling-design.js";

/** Two connectors that are plugged together at a panel. */
export interface Joint {
  /** Its place in the document. */
  readonly path: string;
  /** What messages call it. */
  readonly label: string;
  /** Connector of the cable and socket of the panel: "`iec-c13` at power-in". */
  readonly what: string;
  /** The panel it is at. */
  readonly panel: string;
  /** Whether it is overhead: what comes loose falls on someone. */
  readonly overhead: boolean;
  /** How the weaker side is held; undefined when a connector is not known. */
  readonly retention?: Retention;
  /** Why it is not known. */
  readonly unknown?: string;
}

function retentionOf(end: End): Retention | undefined {
  if (end.retained !== undefined) return (end.retained === "sleeve" ? "latch" : end.retained) as Retention;
  return connectors.get(end.id)?.retention;
}

function joint(
  cable: Cable,
  end: End | undefined,
  panel: Panel,
  socket: "power-in" | "power-out" | "data-in" | "data-out",
  label: string,
): Joint {
  const own = endOf((panel.part?.data.connectors as Record<string, never> | undefined)?.[socket]);
  const base = {
    path: cable.path,
    label,
    what: `${end?.id ?? "a connector"} at ${socket}`,
    panel: panel.name,
    overhead: panel.face.overhead,
  };
  const sides = [end, own].map((each) => (each ? retentionOf(each) : undefined));
  if (!end || !own)
    return {
      ...base,
      unknown: `the connector ${end ? `\`${socket}\` of the panel` : "of the cable"} at ${panel.name} is not written down`,
    };
  if (sides.some((each) => each === undefined))
    return {
      ...base,
      unknown: `the connector ${sides[0] === undefined ? end.id : own.id} at ${panel.name} is in no table`,
    };
  const retention = [...(sides as Retention[])].sort(
    (a, b) => retentions.indexOf(a) - retentions.indexOf(b),
  )[0] as Retention;
  return { ...base, retention };
}

/** Every joint at the panels of the build, power and data: the feed into the first panel, each jumper out and in, the return out of the last. */
export function jointsOf(build: CablingDesign): readonly Joint[] {
  return [
    ...build.runs.map((run) => ({ line: run, kind: "power" as const })),
    ...build.chains.map((chain) => ({ line: chain, kind: "data" as const })),
  ].flatMap(({ line, kind }) => {
    const panels = line.panels ?? [];
    const [, into] = line.feed.ends;
    const [from, to] = line.jumper.ends;
    const back = "closing" in line ? line.closing : undefined;
    const last = panels.at(-1);
    const closes = back && last ? [joint(back, back.ends[1], last, "data-out", line.label)] : [];
    const joints = panels.flatMap((panel, index) => {
      const arrives =
        index === 0
          ? joint(line.feed, into, panel, `${kind}-in`, line.label)
          : joint(line.jumper, to, panel, `${kind}-in`, line.label);
      return index < panels.length - 1
        ? [arrives, joint(line.jumper, from, panel, `${kind}-out`, line.label)]
        : [arrives];
    });
    return [...joints, ...closes];
  });
}
