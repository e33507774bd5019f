import { counted, facePixelsAlong, greatestOf, missing, type Rectangle, sum, type Value } from "@plumbmark/calc";
import type { Cell } from "../faces/cells.js";
import type { Face } from "../faces/face.js";
import {
  ALONG,
  type Along,
  type FaceStretch,
  isInStretch,
  lengthOfStretch,
  readStretch,
  stretchAsWritten,
  stretchInWords,
} from "../faces/stretch.js";
import type { Reader } from "../reading/reader.js";
import { type Coverage, coverageOf } from "./coverage.js";

/** The schema has refused more by then. */
const MOST_PARTS = 100;

/** A pixel of the raster, across and down. */
interface Corner {
  readonly x: number;
  readonly y: number;
}

const cornerIn = (text: string | undefined): Corner | undefined => {
  const match = /^\s*(\d+)\s*,\s*(\d+)\s*$/u.exec(text ?? "");
  return match ? { x: Number(match[1]), y: Number(match[2]) } : undefined;
};

/** Which of a face's panels a part has: those of some columns, of some rows, or of both; none where it cannot be read. */
type Cut = { readonly [each in Along]?: FaceStretch };

/** What lies on the raster in one piece: a whole face, or some columns or rows of one that is folded. */
export class PlacedPart {
  /** Its name within the picture: `banner`, or `banner, columns 1 to 12`. */
  readonly name: string;
  /** What messages call it: `Face banner`, or `Part 1 of face banner (columns 1 to 12)`. */
  readonly label: string;

  /** @param cut what of the face it is; the whole face where it is left out. Ends may lie beyond the face. */
  constructor(
    /** Its place in the document: `picture.at.banner`, or `picture.at.banner.parts.1`. */
    readonly path: string,
    readonly placement: Placement,
    readonly cut?: Cut,
  ) {
    const { name, label } = placement.face;
    const words = this.words;
    const part = `Part ${path.slice(path.lastIndexOf(".") + 1)}`;
    this.name = words === undefined ? name : `${name}, ${words}`;
    this.label = words === undefined ? label : `${part} of face ${name}${this.isUnread ? "" : ` (${words})`}`;
  }

  /** What of the face it is, in words: `columns 1 to 12`; undefined for the whole face. */
  get words(): string | undefined {
    const { cut, path } = this;
    if (!cut) return undefined;
    const stretches = ALONG.flatMap((along) => (cut[along] ? [stretchInWords(cut[along], along)] : []));
    return stretches.length > 0 ? stretches.join(", ") : `part ${path.slice(path.lastIndexOf(".") + 1)}`;
  }

  /** Whether what of the face it is cannot be read. */
  get isUnread(): boolean {
    return this.cut !== undefined && !this.cut.columns && !this.cut.rows;
  }

  /** Whether a cell of the face is in it. */
  holds({ row, column }: Cell): boolean {
    const { columns, rows } = this.cut ?? {};
    return !this.isUnread && (!columns || isInStretch(column, columns)) && (!rows || isInStretch(row, rows));
  }

  /** Its top-left pixel; undefined where it is not written down. */
  get corner(): Corner | undefined {
    const { reader } = this.placement.face;
    return cornerIn(reader.text(this.path) ?? reader.text(`${this.path}.at`));
  }

  /** Where it begins on the raster, across. */
  get x(): Value<"pixels"> {
    return this.#start("x");
  }

  /** Where it begins on the raster, down. */
  get y(): Value<"pixels"> {
    return this.#start("y");
  }

  get width(): Value<"pixels"> {
    const { face, scaled } = this.placement;
    return scaled?.width ?? this.#size("columns", face.pixelsWide);
  }

  get height(): Value<"pixels"> {
    const { face, scaled } = this.placement;
    return scaled?.height ?? this.#size("rows", face.pixelsHigh);
  }

  get right(): Value<"pixels"> {
    return sum([this.x, this.width], "pixels", "right edge");
  }

  get bottom(): Value<"pixels"> {
    return sum([this.y, this.height], "pixels", "lower edge");
  }

  /** Undefined when corner or size cannot be told. */
  get rectangle(): Rectangle | undefined {
    const { corner, right, bottom } = this;
    return corner && right.known && bottom.known
      ? { ...corner, width: right.value - corner.x, height: bottom.value - corner.y }
      : undefined;
  }

  /** First pixel of it within the face, across. */
  get left(): Value<"pixels"> {
    return this.#before("columns");
  }

  /** First pixel of it within the face, down. */
  get top(): Value<"pixels"> {
    return this.#before("rows");
  }

  #panel(along: Along): Value<"pixels"> {
    const { face } = this.placement;
    return face.alike(face.pixelsPath(along === "columns" ? "across" : "down"), "pixels", "number of pixels");
  }

  #size(along: Along, whole: Value<"pixels">): Value<"pixels"> {
    const stretch = this.cut?.[along];
    if (this.isUnread) return missing("pixels", { path: this.path, what: "columns or rows", of: this.label });
    return stretch ? facePixelsAlong.of({ k: counted(lengthOfStretch(stretch), along), p: this.#panel(along) }) : whole;
  }

  #before(along: Along): Value<"pixels"> {
    const first = this.cut?.[along]?.first ?? 0;
    if (this.isUnread) return missing("pixels", { path: this.path, what: "columns or rows", of: this.label });
    return first === 0
      ? counted(0, "first pixel", "pixels")
      : facePixelsAlong.of({ k: counted(first, along), p: this.#panel(along) });
  }

  #start(side: "x" | "y"): Value<"pixels"> {
    const start = this.corner?.[side];
    return start === undefined
      ? missing("pixels", { path: this.path, what: "place on the raster", of: this.label })
      : counted(start, "top-left pixel", "pixels");
  }
}

/** A stretch as it is written; one that runs backwards is told as a mistake, and read as it was most likely meant. */
function stretchAt(reader: Reader, path: string, along: Along): FaceStretch | undefined {
  const written = reader.data(`${path}.${along}`);
  const stretch = readStretch(written, along);
  if (!stretch || stretch.first <= stretch.last) return stretch;
  const forward = { first: stretch.last, last: stretch.first };
  const better = stretchAsWritten(forward, along);
  reader.complain(
    `${path}.${along}`,
    `The ${along} \`${String(written)}\` run backwards, and a part of a picture is not turned round.`,
    `Write \`${better}\`.`,
    { edit: better },
  );
  return forward;
}

/** What a part is said to be of; nothing where some of it cannot be read, so that nothing is taken to be in it. */
function cutAt(reader: Reader, path: string): Cut {
  const stretches = ALONG.map((along) => ({ along, stretch: stretchAt(reader, path, along) }));
  if (stretches.some(({ along, stretch }) => !stretch && reader.has(`${path}.${along}`))) return {};
  return Object.fromEntries(stretches.flatMap(({ along, stretch }) => (stretch ? [[along, stretch]] : [])));
}

/** Where a face stands on the raster: whole, or folded into parts. */
export class Placement {
  /** Its place in the document: `picture.at.banner`. */
  readonly path: string;
  readonly label: string;
  /** What it lies there in: one that is the whole face, or those it is folded into. */
  readonly parts: readonly PlacedPart[];

  constructor(
    readonly reader: Reader,
    readonly face: Face,
  ) {
    this.path = `picture.at.${face.name}`;
    this.label = face.label;
    this.parts = this.#parts();
  }

  #parts(): readonly PlacedPart[] {
    if (!this.isFolded) return [new PlacedPart(this.path, this)];
    const written = this.reader.list(`${this.path}.parts`).slice(0, MOST_PARTS);
    return written.map((_, index) => {
      const path = `${this.path}.parts.${index + 1}`;
      return new PlacedPart(path, this, cutAt(this.reader, path));
    });
  }

  /** Whether it is cut into parts that are placed one by one. */
  get isFolded(): boolean {
    return this.reader.list(`${this.path}.parts`).length > 0;
  }

  /** Whether the place of all of it is written down. */
  get isPlaced(): boolean {
    return this.parts.every(({ corner }) => corner !== undefined);
  }

  /** How far it reaches across the raster: the farthest of its parts. */
  get right(): Value<"pixels"> {
    return this.#farthest(
      this.parts.map(({ right }) => right),
      "right edge",
    );
  }

  /** How far it reaches down the raster. */
  get bottom(): Value<"pixels"> {
    return this.#farthest(
      this.parts.map(({ bottom }) => bottom),
      "lower edge",
    );
  }

  #farthest(edges: readonly Value<"pixels">[], what: string): Value<"pixels"> {
    const [first] = edges;
    return first && edges.length === 1 ? first : greatestOf(edges, "pixels", what);
  }

  /** Name of the face whose picture it shows on purpose. */
  get copyOf(): string | undefined {
    return this.reader.text(`${this.path}.copy-of`);
  }

  /** Whether it is said of one of the two that it shows what the other shows, or of both that they show the same. */
  isRepeat(other: Placement): boolean {
    if (this === other) return false;
    const [own, others] = [this.copyOf, other.copyOf];
    return own === other.face.name || others === this.face.name || (own !== undefined && own === others);
  }

  /** Size it is given on the raster when that is not its own. */
  get scaled(): { readonly width: Value<"pixels">; readonly height: Value<"pixels"> } | undefined {
    // The pieces of a folded face have a place and no size; that it is written all the same is told as a mistake.
    if (this.isFolded) return undefined;
    const [width, height] = ([1, 2] as const).map((half) =>
      this.reader.optional(`${this.path}.scaled.${half}`, "pixels", "size on the raster", this.label),
    );
    return width && height && { width, height };
  }

  /** Whether its parts together are the face. */
  get coverage(): Coverage {
    return coverageOf(this);
  }

  /** The part a cell lies on the raster in; undefined where it is in none. */
  partOf(cell: Cell): PlacedPart | undefined {
    return this.parts.find((part) => part.holds(cell));
  }
}
