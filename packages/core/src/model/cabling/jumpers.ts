import {
  counted,
  gapsOf,
  jumperNeeded,
  type Known,
  missing,
  type Point,
  stepBetween,
  tabled,
  type Value,
} from "@plumbmark/calc";
import type { Panel } from "../faces/panels.js";
import { once } from "../reading/once.js";
import type { Cable } from "./cable.js";
import type { CablingDesign } from "./cabling-design.js";
import { type Socket, socketAt, turned } from "./sockets.js";

const CENTRE: Point = { x: 0, y: 0 };

/** Place of a connector from the panel's centre, seen by the audience; parts measure from the left as seen from the rear. */
function connectorAt({ face, part }: Panel, socket: Socket): Point {
  const at = socketAt(part, socket);
  const [width, height] = ["1", "2"].map((half) => part?.quantities.get(`size.${half}`)?.value);
  if (at === undefined || width === undefined || height === undefined) return CENTRE;
  return turned({ x: width / 2 - at.x, y: at.y - height / 2 }, Number(face.reader.data(`${face.path}.rotated`) ?? 0));
}

interface Hop {
  readonly from: Panel;
  readonly to: Panel;
  readonly dx: Known;
  readonly dy: Known;
}

/** The jumpers of one run or chain: one kind of cable for every step from panel to panel. */
export class Jumpers {
  constructor(
    readonly line: {
      readonly panels: readonly Panel[] | undefined;
      readonly jumper: Cable;
      readonly path: string;
      readonly label: string;
    },
    readonly kind: "power" | "data",
  ) {}

  get path(): string {
    return this.line.jumper.written ? this.line.jumper.path : this.line.path;
  }

  get label(): string {
    return this.line.jumper.label;
  }

  get length(): Value<"length"> {
    return this.line.jumper.length;
  }

  /** The shortest length its part comes in that is at least so many metres; undefined where none is, or none is listed. */
  stockedFrom(least: number): string | undefined {
    return this.line.jumper.stockedFrom(least);
  }

  /** Every step from panel to panel in cable order; undefined where a size is not known. */
  get hops(): readonly (Hop | undefined)[] {
    return once(this, "hops", () => {
      const panels = this.line.panels ?? [];
      return panels.slice(1).map((to, index) => this.#hop(panels[index] as Panel, to));
    });
  }

  /** The step that asks for the longest jumper; undefined when there is none or a size is not known. */
  get longest(): Hop | undefined {
    const hops = this.hops.filter((each) => each !== undefined);
    return hops.sort((a, b) => Math.hypot(b.dx.value, b.dy.value) - Math.hypot(a.dx.value, a.dy.value))[0];
  }

  /** Straight distance of every step, connector to connector, slack not included. */
  get reaches(): readonly Value<"length">[] {
    const none = tabled(0, "length", "house", "no slack");
    const [face] = this.line.panels?.map((panel) => panel.face) ?? [];
    return this.hops.map((hop) => {
      if (hop) return jumperNeeded.of({ dx: hop.dx, dy: hop.dy, s: none });
      const sizes = face ? [face.panelWidth, face.panelHeight] : [];
      return missing("length", ...gapsOf(sizes));
    });
  }

  /** Length the longest step asks for, with slack in metres. */
  needed(slack: number): Value<"length"> {
    const { panels, path, label } = this.line;
    if (!panels) return missing("length", { path: `${path}.panels`, what: "panels in cable order", of: label });
    const face = panels[0]?.face;
    const sizes = face ? [face.panelWidth, face.panelHeight] : [];
    const gaps = sizes.flatMap((size) => (size.known ? [] : size.gaps));
    const { longest } = this;
    if (gaps.length > 0 || !longest) return missing("length", ...gaps);
    return jumperNeeded.of({ dx: longest.dx, dy: longest.dy, s: tabled(slack, "length", "house", "slack") });
  }

  #hop(from: Panel, to: Panel): Hop | undefined {
    const { face } = from;
    const [width, height] = [face.panelWidth, face.panelHeight];
    if (!width.known || !height.known) return undefined;
    const size = { width: width.value, height: height.value };
    const step = stepBetween(
      from.cell,
      to.cell,
      size,
      connectorAt(from, `${this.kind}-out`),
      connectorAt(to, `${this.kind}-in`),
    );
    const apart = (value: number, what: string): Known => counted(value, what, "length");
    return {
      from,
      to,
      dx: apart(step.x, "sideways distance of the connectors"),
      dy: apart(step.y, "upright distance of the connectors"),
    };
  }
}

/** Jumpers of every run and chain that has more than one panel, or whose panels are not known. */
export const jumpersOf = (build: CablingDesign): readonly Jumpers[] =>
  [
    ...build.runs.map((run) => new Jumpers(run, "power")),
    ...build.chains.map((chain) => new Jumpers(chain, "data")),
  ].filter(({ line }) => line.panels === undefined || line.panels.length > 1);
