import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { STARTER } from "../../../documents/repository.js";
import { oldFormText } from "../../../old-form.js";

// What the documents say, read by a general YAML library and reckoned by simple arithmetic: nothing here comes from the
// model or the drawings, so that a drawing that is wrong cannot make its own test right.

type Data = Readonly<Record<string, unknown>>;

/** Metres of a unit: the foot and the inch by the international agreement of 1959 (NIST SP 811, B.6). */
const METRES: Readonly<Record<string, number>> = { ft: 0.3048, in: 0.0254, m: 1, cm: 0.01, mm: 0.001 };

/** `10 ft 6 in` → 3.2004; a text that is no length is a mistake of the test. */
export function metres(text: unknown): number {
  const pieces = [...String(text).matchAll(/([\d.]+) (ft|in|m|cm|mm)\b/gu)];
  if (pieces.length === 0) throw new Error(`${String(text)} is no length`);
  return pieces.reduce((sum, [, value, unit]) => sum + Number(value) * (METRES[unit as string] as number), 0);
}

const pair = (text: unknown): readonly [string, string] => String(text).split(" x ") as unknown as [string, string];

export interface Tile {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly pixels: readonly [across: number, down: number];
}

const parts = parse(readFileSync(`${STARTER}parts/panels.yaml`, "utf8")) as Readonly<Record<string, Data>>;

export function tile(name: unknown): Tile {
  const part = parts[String(name)];
  if (!part) throw new Error(`the catalogue has no ${String(name)}`);
  const [width, height] = pair(part.size).map(metres) as [number, number];
  const [across, down] = pair(part.pixels).map(Number) as [number, number];
  return { width, height, depth: metres(part.depth), pixels: [across, down] };
}

export interface Face extends Data {
  readonly name: string;
  readonly columns: number;
  readonly rows: number;
  readonly tile: Tile;
  /** Metres. */
  readonly width: number;
  readonly height: number;
  /** Lower edge over the floor, metres. */
  readonly edge: number;
}

export interface Written extends Data {
  readonly file: string;
  readonly faces: readonly Face[];
}

/** A document of the starter as it is written, its faces with their sizes. */
export function written(build: string): Written {
  const file = `builds/${build}.md`;
  const [, yaml = ""] = /^---\n([\s\S]*?)\n---\n/u.exec(oldFormText(file)) ?? [];
  const data = parse(yaml) as Data;
  const faces = Object.entries(data.faces as Readonly<Record<string, Data>>).map(([name, face]): Face => {
    const own = tile(face.panel);
    const [columns, rows] = [Number(face.columns), Number(face.rows)];
    const edge = metres(face.trim ?? face["height-above"]);
    return { ...face, name, columns, rows, tile: own, width: columns * own.width, height: rows * own.height, edge };
  });
  return { ...data, file, faces };
}

/** Documents whose faces, hangs and distances are all written down; the last one in metres, the others in feet. */
export const BUILDS = [
  ...["over-stage-banner", "side-strips", "small-screen", "riser-fascias", "gala-wall", "harbour-header"],
] as const;

export const documents = BUILDS.map(written);

/** A group of the document under a name; what is not there is a mistake of the test. */
export function under(data: unknown, ...path: readonly string[]): Data {
  return path.reduce<Data>((at, key) => {
    const next = at[key];
    if (typeof next !== "object" || next === null) throw new Error(`there is no ${path.join(".")}`);
    return next as Data;
  }, data as Data);
}

/** Panels of `A1..A4, B4..B3` in cable order. */
export function panelsOf(text: string): readonly string[] {
  return text
    .replace(/^\S+ (?=[A-Z]+\d)/u, "")
    .split(", ")
    .flatMap((piece) => {
      const [, row = "", from = "", last = row, to = from] = /^([A-Z]+)(\d+)(?:\.\.([A-Z]+)(\d+))?$/u.exec(piece) ?? [];
      if (row !== last) {
        const [first, end] = [row.charCodeAt(0), last.charCodeAt(0)];
        return Array.from({ length: end - first + 1 }, (_, index) => String.fromCharCode(first + index) + from);
      }
      const step = Number(to) >= Number(from) ? 1 : -1;
      return Array.from({ length: Math.abs(Number(to) - Number(from)) + 1 }, (_, k) => row + (Number(from) + k * step));
    });
}
