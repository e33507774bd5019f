import { counted, lineMass, missing, type Value } from "@plumbmark/calc";
import type { Cable } from "../cabling/cable.js";
import type { Chain } from "../data/chain.js";
import type { Run } from "../power/run.js";
import type { Bar } from "./bar.js";
import type { CarriedFace } from "./bar-loads.js";

interface Share {
  readonly carried: CarriedFace;
  readonly column: number;
  /** Kilograms; 0 while the mass is not known. */
  readonly load: number;
}

/** A cable, or all jumpers of a run or chain, as far as it hangs on one bar. */
export interface HangingCable {
  readonly mass: Value<"mass">;
  /** Loads in the middle of a column: feeds and returns. */
  readonly points: readonly Share[];
  /** Loads spread over a column: jumpers. */
  readonly spread: readonly Share[];
}

type Line = Run | Chain;
type Panels = NonNullable<Line["panels"]>;

/** Finds who carries a column of a face; kept by face, for a face of thousands of panels is looked up for each. */
function holders(bar: Bar): (panel: Panels[number]) => CarriedFace | undefined {
  const found = new Map<string, CarriedFace>();
  for (const carried of bar.carries)
    for (const column of carried.columns) {
      const key = `${carried.face.name} ${column}`;
      if (!found.has(key)) found.set(key, carried);
    }
  return ({ face, cell }) => found.get(`${face.name} ${cell.column}`);
}

/** A feed or return: what is stated to hang, else its whole length, the safe side, in the column of its panel. */
function end(cable: Cable, panel: Panels[number], carried: CarriedFace): HangingCable {
  const hangs = cable.reader.optional(`${cable.path}.hangs`, "length", "length that hangs", cable.label);
  const mass = lineMass.of({ ρ: cable.massPerLength, L: hangs ?? cable.length, n: counted(1, "cable") });
  return { mass, points: [{ carried, column: panel.cell.column, load: mass.known ? mass.value : 0 }], spread: [] };
}

/** Half of every jumper belongs to each of its two panels; half jumpers on this bar, by column. */
function jumpers(cable: Cable, panels: Panels, holder: ReturnType<typeof holders>): readonly HangingCable[] {
  const halves = new Map<string, { readonly carried: CarriedFace; readonly column: number; count: number }>();
  for (const [index, panel] of panels.entries()) {
    const carried = holder(panel);
    if (!carried) continue;
    const key = `${carried.path} ${panel.cell.column}`;
    const here = halves.get(key) ?? { carried, column: panel.cell.column, count: 0 };
    here.count += (index > 0 ? 1 : 0) + (index < panels.length - 1 ? 1 : 0);
    halves.set(key, here);
  }
  const all = [...halves.values()];
  const count = all.reduce((total, each) => total + each.count, 0) / 2;
  if (count === 0) return [];
  const mass = lineMass.of({ ρ: cable.massPerLength, L: cable.length, n: counted(count, "jumpers") });
  const each = mass.known ? mass.value / count / 2 : 0;
  const spread = all.map(({ carried, column, count: own }) => ({ carried, column, load: own * each }));
  return [{ mass, points: [], spread }];
}

function ofLine(line: Line, holder: ReturnType<typeof holders>): readonly HangingCable[] {
  const { panels, feed, jumper, path, label } = line;
  // Where its panels cannot be told, whether it hangs here cannot either.
  if (!panels)
    return [
      {
        mass: missing("mass", { path: `${path}.panels`, what: "panels in cable order", of: label }),
        points: [],
        spread: [],
      },
    ];
  const [first, last] = [panels[0], panels.at(-1)];
  const [fed, left] = [first && holder(first), last && holder(last)];
  const back = "closing" in line ? line.closing : undefined;
  return [
    ...(first && fed ? [end(feed, first, fed)] : []),
    ...jumpers(jumper, panels, holder),
    ...(back && last && left ? [end(back, last, left)] : []),
  ];
}

/** Everything of the cables that hangs on a bar: feeds, jumpers, and the cables that close the loops. */
export function hangingCables(bar: Bar): readonly HangingCable[] {
  if (bar.carries.length === 0) return [];
  const holder = holders(bar);
  return [...bar.build.runs, ...bar.build.chains].flatMap((line) => ofLine(line, holder));
}
