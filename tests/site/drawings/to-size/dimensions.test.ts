import { readQuantity } from "@plumbmark/calc";
import { describe, expect, it } from "vitest";
import { documents, metres, under, type Written } from "./by-hand.js";
import { apart, FINE, measures, sheet } from "./paper.js";

// Every dimension a drawing has, by the documents' own figures: how many there are, how long each is on the paper, and
// that its line, its arrow heads and the lines to the thing belong together (ISO 129-1).

interface Case {
  readonly file: string;
  readonly name: string;
  /** Metres, from the document. */
  readonly expected: readonly number[];
}

const text = (data: unknown, key: string): unknown => (data as Readonly<Record<string, unknown>>)[key];

const ofFaces = ({ file, faces }: Written): readonly Case[] =>
  faces.flatMap(({ name, width, height }) =>
    ["power", "data"].flatMap((layer) =>
      ["audience", "rear"].map((side) => ({ file, name: `face-${name}-${layer}-${side}`, expected: [width, height] })),
    ),
  );

const ofBars = (document: Written): readonly Case[] =>
  Object.entries((text(document.rigging, "bars") ?? {}) as object).map(([bar, own]) => {
    const face = document.faces.find(({ name }) => name === under(own, "carries").face);
    if (!face) throw new Error(`${bar} carries no face`);
    const from = metres(under(own, "carries").from);
    return {
      file: document.file,
      name: `hang-plot-${bar}`,
      expected: [face.width, from, metres(text(own, "length")), face.edge],
    };
  });

const ofSections = ({ file, faces, audience }: Written): readonly Case[] =>
  faces.map(({ name, edge }) => ({
    file,
    name: `sightlines-${name}`,
    expected: [edge, metres(text(audience, "nearest")), metres(text(audience, "farthest"))],
  }));

const ofStands = ({ file, faces }: Written): readonly Case[] =>
  faces.flatMap(({ name, height, base }) =>
    base === undefined
      ? []
      : [
          {
            file,
            name: `stand-${name}`,
            expected: [height, ...["toe", "ballast-arm", "depth"].map((key) => metres(text(base, key)))],
          },
        ],
  );

const cases = documents.flatMap((each) => [...ofFaces(each), ...ofBars(each), ...ofSections(each), ...ofStands(each)]);

it("thirty-two views of eight faces, five bars, eight sections and three stands have dimensions", () => {
  const kinds = ["face", "hang", "sightlines", "stand"];
  expect(kinds.map((kind) => cases.filter(({ name }) => name.startsWith(kind)).length)).toEqual([32, 5, 8, 3]);
});

describe.each(cases)("$file $name", ({ file, name, expected }) => {
  const drawing = sheet(file, name);
  const found = measures(drawing);
  const scaled = found.filter(({ broken }) => !broken);

  it("has the dimensions the document writes, and no others", () => {
    const sorted = (list: readonly number[]): readonly string[] => list.map((each) => each.toFixed(4)).toSorted();
    expect(sorted(found.map((each) => each.metres))).toEqual(sorted(expected));
    // A figure is printed with four digits, or stands as its author wrote it.
    const figures = found.map((each) => {
      const read = readQuantity(each.words.replace(/^bar /u, ""), ["length"]);
      return read.ok && Math.abs(read.quantity.value / each.metres - 1) < 0.0005 ? [] : [each.words];
    });
    expect(figures.flat()).toEqual([]);
  });

  it("has arrow heads as far apart as the thing is long, and the line between them", () => {
    const wrong = scaled.flatMap(({ metres: long, tips, line }) => {
      const paper = long * drawing.perMetre;
      // Where there is no room between them the heads point inwards, and the line reaches 3 mm past each.
      const whole = paper < 5 ? paper + 6 : paper;
      const off = [apart(...tips) - paper, apart(line.from, line.to) - whole];
      return off.some((each) => Math.abs(each) > FINE) ? [{ long, paper, off }] : [];
    });
    expect(wrong).toEqual([]);
    expect(scaled.length).toBeGreaterThan(0);
  });

  it("has a line to the thing at an arrow head, or none", () => {
    const wrong = found.flatMap(({ tips, extensions, line }) => {
      const level = Math.abs(line.from[1] - line.to[1]) < FINE;
      const along = level ? 0 : 1;
      return extensions.filter(
        ({ from, to }) =>
          Math.abs(from[along] - to[along]) > FINE || !tips.some((tip) => Math.abs(tip[along] - from[along]) < FINE),
      );
    });
    expect(wrong).toEqual([]);
    expect(found.reduce((sum, { extensions }) => sum + extensions.length, 0)).toBeGreaterThan(0);
  });
});
