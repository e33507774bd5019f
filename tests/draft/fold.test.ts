import type { RepositoryFiles } from "@plumbmark/core";
import { workedValues } from "@plumbmark/core";
import { fold } from "@plumbmark/draft";
import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { parse } from "yaml";
import { deep } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { type Laid, laidOut, laidOutFirst, opened, PATH, starterFiles } from "./drafting.js";

vi.setConfig({ testTimeout: 180_000 });

/** Every way to cut a line of so many panels into pieces, by their sizes. */
function* cuts(count: number): Generator<readonly number[]> {
  if (count === 0) yield [];
  for (let first = 1; first <= count; first += 1) for (const rest of cuts(count - first)) yield [first, ...rest];
}

/** Whether pieces of these widths go into so many lines of a width, each tried in each line that has other room than those before. */
function packs(sizes: readonly number[], lines: readonly number[]): boolean {
  const [size, ...rest] = sizes;
  if (size === undefined) return true;
  return lines.some(
    (room, index) => room >= size && lines.indexOf(room) === index && packs(rest, lines.with(index, room - size)),
  );
}

/** Fewest pieces of any cut that goes on the raster, strips as high as the face or as wide; undefined where none does. */
function fewest(count: number, side: number, across: number, width: number, height: number): number | undefined {
  const lines = Array.from({ length: Math.floor(height / across) }, () => width);
  const found = [...cuts(count)].filter((sizes) =>
    packs(
      sizes.map((size) => size * side),
      lines,
    ),
  );
  return found.length === 0 ? undefined : Math.min(...found.map((sizes) => sizes.length));
}

const side = fc.integer({ min: 1, max: 9 });
const cases = fc.record({
  columns: fc.integer({ min: 1, max: 8 }),
  rows: fc.integer({ min: 1, max: 8 }),
  panel: fc.record({ wide: side, high: side }),
  raster: fc.record({ width: fc.integer({ min: 4, max: 60 }), height: fc.integer({ min: 4, max: 60 }) }),
});

describe("a fold", () => {
  test("has the fewest parts of any cut there is, and is told wherever there is one", () => {
    let folded = 0;
    fc.assert(
      fc.property(cases, ({ columns, rows, panel, raster: { width, height } }) => {
        const [wide, high] = [columns * panel.wide, rows * panel.high];
        const found = fold({ columns, rows, panel }, { width, height });
        if (wide <= width && high <= height) {
          expect(found).toBe(undefined);
          return;
        }
        // Of a face cut along its columns every part is as high as the face, of one cut along its rows as wide.
        const all = [fewest(columns, panel.wide, high, width, height), fewest(rows, panel.high, wide, height, width)];
        const known = all.filter((each) => each !== undefined);
        expect(found?.pieces.length).toBe(known.length === 0 ? undefined : Math.min(...known));
        folded += found ? 1 : 0;
      }),
      { numRuns: 200 },
    );
    expect(folded).toBeGreaterThan(20);
  });

  test("has every column or row once, in parts as equal as can be, inside the raster and none over another", () => {
    fc.assert(
      fc.property(cases, ({ columns, rows, panel, raster }) => {
        const found = fold({ columns, rows, panel }, raster);
        if (!found) return;
        const isAcross = found.along === "columns";
        const places = found.pieces.flatMap(({ first, last }) =>
          Array.from({ length: last - first + 1 }, (_, n) => first + n),
        );
        expect(places).toEqual(Array.from({ length: isAcross ? columns : rows }, (_, place) => place));
        const sizes = found.pieces.map(({ first, last }) => last - first + 1);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
        const taken = new Set<string>();
        let pixels = 0;
        for (const { first, last, x, y } of notEmpty(found.pieces)) {
          const wide = isAcross ? (last - first + 1) * panel.wide : columns * panel.wide;
          const high = isAcross ? rows * panel.high : (last - first + 1) * panel.high;
          expect([x + wide <= raster.width, y + high <= raster.height]).toEqual([true, true]);
          for (let at = 0; at < wide * high; at += 1) taken.add(`${x + (at % wide)},${y + Math.floor(at / wide)}`);
          pixels += wide * high;
        }
        expect(taken.size).toBe(pixels);
      }),
      { numRuns: 300 },
    );
  });
});

const CIRCUITS = ["w-2", "w-3", "w-4", "w-5", "w-6", "w-7"];

/** A face on a wall beside which the circuits are; sizes in metres, of panels half a metre wide and high. */
const wall = (width: number, height: number): string => `
wish: long-ribbon
title: Long ribbon
practice: iec
on-site: 2027-10-14 to 2027-10-16
size: {width: exactly ${width} m, height: exactly ${height} m}
support: wall
over: {trim: exactly 3 m}
over-people: true
out-of: catalogue
panel: tile-500-p3.1
feed-from: {power: [w-1, ${CIRCUITS.join(", ")}], data: rack}
venue:
  exposure: indoors
  on-stage: false
  places: {rack: {right: 0 m, upstage: 0 m, up: 0 m}}
  circuits:
    w-1: {at: rack, supply: 230 V, breaker: 16 A, rides-through: 160 A, outlet: iec-60309-16-3, outlets: 2, wiring: {conductor: 2.5 mm2, length: 20 m, feeder-drop: 1 %}, control: constant, other-load: none, residual: 30 mA, residual-type: A}
${CIRCUITS.map((name) => `    ${name}: {like: w-1}`).join("\n")}
  audience: {nearest: 5 m, farthest: 20 m}
`;

let laid: Laid | undefined;
/** Twenty-six tiles in a row, laid out once. */
const ribbon = (): Laid => {
  laid ??= laidOut(wall(13, 0.5));
  return laid;
};

interface Part {
  readonly columns?: string;
  readonly rows?: string;
  readonly at: string;
}
interface Matter {
  readonly picture: {
    readonly raster: string;
    readonly at: { readonly display: string | { readonly parts: readonly Part[] } };
  };
  readonly data: { readonly processor: { readonly part: string } };
}
const matterOf = (document: string): Matter => parse(/^---\n([\s\S]*?)\n---/u.exec(document)?.[1] ?? "") as Matter;
const partsOf = (document: string): readonly Part[] => {
  const { display } = matterOf(document).picture.at;
  return typeof display === "string" ? [] : display.parts;
};

/** Requirements that fail, and figures that are not those of the workings, of a document as it is written. */
function wrongWith(files: RepositoryFiles, { document, figures }: ReturnType<typeof laidOut>["options"][number]) {
  const repository = opened(files);
  repository.replace(PATH, document, "document");
  const inspected = repository.one(PATH);
  const values = workedValues(inspected);
  return [
    ...inspected.entry.checks
      .filter(({ outcome, level }) => outcome === "fails" && level === "shall")
      .map(({ rule, says }) => `${rule}: ${says}`),
    ...[...figures].filter(([path, { text }]) => values.get(path)?.text !== text).map(([path]) => `${path} is another`),
  ];
}

/** The starter's parts, with more of them in front. */
const having = (text: string): RepositoryFiles => {
  const files = starterFiles();
  return { ...files, parts: [{ path: "parts/0-more.yaml", text }, ...files.parts] };
};

describe("a wish for a face that no raster carries whole", () => {
  // The processors of the starter take 2048 × 1080 and 1280 × 720 at most; a tile has 160 × 160 pixels.
  const RASTERS = [
    [1280, 720],
    [1920, 1080],
  ] as const;
  const least = (along: number, across: number, way: 0 | 1): number =>
    Math.min(
      ...RASTERS.flatMap((raster) => {
        const parts = Math.ceil(along / Math.floor(raster[way] / 160));
        return parts * across * 160 <= raster[1 - way]! ? [parts] : [];
      }),
    );

  // A draft is dear where others work on the machine, too: a deep run tries more of them.
  const sizes = [
    [26, 1],
    [36, 2],
    ...(deep
      ? ([
          [13, 1],
          [40, 1],
          [25, 2],
        ] as const)
      : []),
  ] as const;
  test.each(sizes)(
    "%i × %i tiles: the fewest parts any raster allows, and it fails no requirement as it is written",
    (columns, rows) => {
      // A quick run looks at the first option of the larger face, a deep one at all.
      const asked = wall(columns / 2, rows / 2);
      const { options, fellOut } = columns === 26 ? ribbon() : deep ? laidOut(asked) : laidOutFirst(asked);
      expect(options.length, JSON.stringify(fellOut)).toBeGreaterThan(0);
      for (const option of options) {
        expect(wrongWith(starterFiles(), option)).toEqual([]);
        expect(partsOf(option.document)).toHaveLength(least(columns, rows, 0));
      }
    },
  );

  test("a tall strip is cut into rows that stand side by side", () => {
    // Fifteen rows are 2,400 pixels; six go into 1,080 lines, so there are three parts, of five each.
    const [option] = laidOutFirst(wall(1, 7.5)).options;
    expect(partsOf(option?.document ?? "")).toEqual([
      { rows: "A..E", at: "0,0" },
      { rows: "F..J", at: "320,0" },
      { rows: "K..O", at: "640,0" },
    ]);
    expect(option && wrongWith(starterFiles(), option)).toEqual([]);
  });

  test("says that it is folded, in how many parts, and asks for a source that cuts the picture", () => {
    const [option] = ribbon().options;
    const why = option?.decisions.find(({ what }) => what === "raster")?.why;
    expect(why).toContain("folded into 3 parts of 9, 9 and 8 columns, one under another on 1920 x 1080");
    expect(why).toContain("The source has to send the picture cut so");
    const asked = { what: "source that sends the picture cut into 3 parts", by: "whoever plans the build" };
    expect(option?.toFindOut).toContainEqual(asked);
    expect(option?.document).toContain(`- [ ] ${asked.what}: ${asked.by}`);
    expect(option?.document).toContain("](calc:schedules.cut)");
  });

  test("is not folded where a raster takes it whole, and asks for nothing", () => {
    // Twelve tiles are 1,920 pixels.
    const [option] = laidOutFirst(wall(6, 0.5)).options;
    expect(matterOf(option?.document ?? "").picture).toMatchObject({ raster: "1920 x 1080", at: { display: "0,0" } });
    expect(option?.document).not.toMatch(/folded|schedules\.cut|cut into/u);
  });

  test("has fewer parts where a larger raster goes all the way", () => {
    // HDMI 2.0 carries 3840 × 2160 at 50 Hz (HDMI 2.0, 600 MHz); 3,840 pixels are 24 tiles, so 26 are two parts.
    const files = having(`
wide-server: {kind: source, outputs: [hdmi-2.0], custom-rasters: false, connector: hdmi-a, power: {maximum: 180 VA, inrush: 34 A, leakage: 0.3 mA}, mass: 8 kg}
wide-cable: {kind: video-cable, carries: [hdmi-2.0], longest: 3 m, medium: copper, mass: 0.09 kg/m, connectors: [hdmi-a, hdmi-a]}
wide-processor: {kind: processor, ports: 6, port-rate: 1 Gb/s, port-pixels: 512000, pixels: 2600000, panels-per-chain: 24, inputs: [hdmi-2.0], largest-raster: 4096 x 2160, connector: hdmi-a, port-connector: rj45-locking, power-in: iec-c14, power: {maximum: 60 VA, inrush: 20 A, leakage: 0.5 mA}, mass: 4 kg, loops: true}
`);
    const [option] = laidOutFirst(wall(13, 0.5), { files }).options;
    expect(matterOf(option?.document ?? "")).toMatchObject({
      data: { processor: { part: "wide-processor" } },
      picture: { raster: "3840 x 2160" },
    });
    expect(partsOf(option?.document ?? "").map(({ columns }) => columns)).toEqual(["1..13", "14..26"]);
    expect(option && wrongWith(files, option)).toEqual([]);
  });

  test("takes a processor that has pixels and ports for all of it", () => {
    // 26 × 25,600 pixels are 665,600: more than one of these drives, and more than the two ports of the other do.
    const more =
      "port-rate: 1 Gb/s, inputs: [hdmi-1.4], largest-raster: 2048 x 1080, port-connector: rj45-locking, mass: 3 kg";
    const files = having(`
few-pixels: {kind: processor, ports: 6, port-pixels: 512000, pixels: 600000, ${more}}
few-ports: {kind: processor, ports: 2, port-pixels: 300000, pixels: 2000000, ${more}}
`);
    const { options, fellOut } = laidOutFirst(wall(13, 0.5), { files });
    const [option] = options;
    expect(matterOf(option?.document ?? "").data.processor.part, JSON.stringify(fellOut)).toBe("processor-6");
    const figure = (path: string): number => option?.figures.get(path)?.value ?? Number.NaN;
    expect(figure("data.processor.pixels")).toBe(665_600);
    const chains = ["D1", "D2"].map((name) => figure(`data.chains.${name}.pixels`));
    expect(chains).toEqual([332_800, 332_800]);
    expect(Math.max(...chains)).toBeLessThanOrEqual(512_000);
  });

  test("that is too high as well is told to lie on no raster, folded or not", () => {
    // Eight rows are 1,280 lines, more than any of the rasters has, and so has every part.
    const { options, fellOut } = laidOut(wall(13, 4));
    expect(options).toEqual([]);
    expect(fellOut[0]).toMatchObject({ rule: "picture.carried" });
    expect(fellOut[0]?.says).toMatch(/Folded in whole panels it lies on no standard raster\.$/u);
  });
});
