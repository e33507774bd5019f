import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { parse } from "yaml";
import { number, words } from "../read.js";
import { FOLDED } from "../repository.js";
import { tile } from "./by-hand.js";
import { boxOf, FINE, having, inside, only, sheet } from "./paper.js";

// A face in several pieces on the raster: each as many pixels as its columns or rows have, at the corner the document
// writes. Columns are numbered from 1, rows lettered from A.

interface Piece {
  readonly columns?: string;
  readonly rows?: string;
  readonly at: string;
}
interface Face {
  readonly panel: string;
  readonly columns: number;
  readonly rows: number;
}

const [, yaml = ""] = FOLDED.split("---\n");
const { faces, picture } = parse(yaml) as {
  readonly faces: Readonly<Record<string, Face>>;
  readonly picture: { readonly at: Readonly<Record<string, string | { readonly parts: readonly Piece[] }>> };
};

const LETTERS = "ABCDEFGHIJ";
const count = (text: string | undefined, all: number, place: (word: string) => number): number => {
  if (text === undefined) return all;
  const [first, last] = text.split("..").map(place) as [number, number?];
  return (last ?? first) - first + 1;
};

/** Every piece in the order it is written: face, corner, pixels. */
const pieces = Object.entries(faces).flatMap(([name, face]) => {
  const at = picture.at[name] as string | { readonly parts: readonly Piece[] };
  const [across, down] = tile(face.panel).pixels;
  const parts: readonly Piece[] = typeof at === "string" ? [{ at }] : at.parts;
  return parts.map(({ columns, rows, at: corner }) => {
    const [x, y] = corner.split(",").map(Number) as [number, number];
    const wide = count(columns, face.columns, Number) * across;
    const high = count(rows, face.rows, (letter) => LETTERS.indexOf(letter)) * down;
    return { name, x, y, wide, high };
  });
});

describe("a raster with folded faces", () => {
  const drawing = sheet("builds/folded.md", "raster");
  const whole = boxOf(having(drawing, "data-raster", "1920x1080"));
  const per = whole.width / 1920;
  const groups = drawing.having("data-face");

  it("has every part of every face at its place, with the pixels of its columns and rows", () => {
    expect(pieces).toHaveLength(10);
    expect(groups.map(([name]) => name)).toEqual(pieces.map(({ name }) => name));
    const off = pieces.flatMap(({ name, x, y, wide, high }, index) => {
      const group = groups[index]?.[1] as Element;
      const box = boxOf(only(inside(group, "rect")) as Element);
      const drawn = [
        box.x - whole.x - x * per,
        box.y - whole.y - y * per,
        box.width - wide * per,
        box.height - high * per,
      ];
      const said = ["data-x", "data-y", "data-width", "data-height"].map((each) => number(group, each));
      return drawn.every((each) => Math.abs(each) <= 2 * FINE) && said.join() === [x, y, wide, high].join()
        ? []
        : [`${name}: ${said.join()}, off by ${drawn.join()}`];
    });
    expect(off).toEqual([]);
  });

  it("says in its table where each part begins on the face", () => {
    const texts = drawing.all("text").map(words);
    // Nine columns of 160 pixels before the second part of the ribbon, seventeen before the third; four and eight rows.
    expect(texts).toEqual(expect.arrayContaining(["1440, 0", "2720, 0", "0, 640", "0, 1280"]));
    for (const part of ["ribbon, columns 10 to 17", "tower, rows I to J"]) expect(texts.join("\n")).toContain(part);
    expect(texts.join(" ").replaceAll(/\s+/gu, " ")).toContain(
      "Face ribbon is folded: its picture is cut into 3 parts",
    );
  });

  it("shows no part over another where one repeats the other", () => {
    expect(drawing.having("data-overlap")).toEqual([]);
  });

  it("leaves the column of places on the face out where no face is folded", () => {
    const plain = sheet("builds/side-strips.md", "raster").all("text").map(words);
    expect(plain).not.toContain("On the face");
    expect(drawing.all("text").map(words)).toContain("On the face");
  });
});
