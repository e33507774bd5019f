import {
  counted,
  faceHeight,
  facePixelsAlong,
  faceWidth,
  type Kind,
  type Known,
  leastOf,
  missing,
  OVERHEAD,
  panelsMass,
  partsMass,
  pixelPitch,
  sum,
  tabled,
  times,
  type Value,
} from "@plumbmark/calc";
import type { Part } from "../../repository/parts.js";
import { once } from "../reading/once.js";
import { type Named, partValue, type Reader } from "../reading/reader.js";
import { Attachment } from "./attachment.js";
import { type Cell, cellName, readCells } from "./cells.js";
import { type KindOfPanel, kindsOf, othersOf, panelsMassOf } from "./face-kinds.js";
import { heldPerColumn, unheldOf } from "./gaps.js";
import { Stand } from "./stand.js";

/** A number for each cell of the largest face, for sets of cells. */
const cellNumber = ({ row, column }: Cell): number => row * 10_000 + column;

/** Another kind of panel and the cells it stands in, as written. */
export interface OtherPanel {
  readonly name: string;
  readonly path: string;
  readonly part: Part | undefined;
  readonly cells: string;
}

/** One continuous picture surface made of panels. */
export class Face {
  /** Its place in the document: `faces.banner`. */
  readonly path: string;
  /** What messages call it: `Face banner`. */
  readonly label: string;
  /** The part its panels are; undefined when none is named, or none of that name exists. */
  readonly panel: Part | undefined;
  /** Panels side by side; 0 when it is not written down. */
  readonly columns: number;
  /** Panels one above another; 0 when it is not written down. */
  readonly rows: number;
  /** How it is held: `flown`, `stacked`, `wall` or `deck`; undefined when it is not written down. */
  readonly support: string | undefined;
  /** Its cells, row by row from the top left, without those left out. */
  readonly cells: readonly Cell[];
  readonly #others: ReadonlyMap<string, Part | undefined>;

  constructor(
    /** The front matter it is written in. */
    readonly reader: Reader,
    /** Its name in the document. */
    readonly name: string,
  ) {
    this.path = `faces.${name}`;
    this.label = `Face ${name}`;
    this.panel = reader.part(`${this.path}.panel`, ["panel"]);
    this.columns = reader.count(`${this.path}.columns`, 1000);
    this.rows = reader.count(`${this.path}.rows`, 702);
    this.support = reader.text(`${this.path}.support`);
    this.cells = this.#cells();
    // Read now, while mistakes are gathered.
    this.#others = othersOf(this);
  }

  #cells(): readonly Cell[] {
    const omitted = new Set<number>();
    for (const [index, text] of this.reader.list(`${this.path}.omit`).entries()) {
      const read = readCells(typeof text === "string" ? text : "");
      if (read.ok) for (const cell of read.cells) omitted.add(cellNumber(cell));
      else this.reader.complain(`${this.path}.omit.${index + 1}`, read.says, read.mend);
    }
    const cells: Cell[] = [];
    for (let row = 0; row < this.rows; row += 1)
      for (let column = 0; column < this.columns; column += 1)
        if (!omitted.has(cellNumber({ row, column }))) cells.push({ row, column });
    return cells;
  }

  /** Names of its panels as they stand on runs and chains: `banner A1`. */
  get names(): readonly string[] {
    return this.cells.map((cell) => `${this.name} ${cellName(cell)}`);
  }

  /** Lots its panels come from; none when it is not written down. */
  get lots(): readonly string[] {
    const one = this.reader.text(`${this.path}.lot`);
    return one === undefined ? this.reader.keys(`${this.path}.lot`) : [one];
  }

  /** Other kinds of panel that stand in some of its cells. */
  get otherPanels(): readonly OtherPanel[] {
    const base = `${this.path}.other-panels`;
    return this.reader.entries(base).map(([name, cells]) => ({
      name,
      path: `${base}.${name}`,
      part: this.reader.parts.get(name),
      cells: typeof cells === "string" ? cells : "",
    }));
  }

  /** Its own kind of panel and the others, with the cells each stands in. */
  get kinds(): readonly KindOfPanel[] {
    return once(this, "kinds", () => kindsOf(this));
  }

  /** The panel that stands in a cell. */
  partAt(cell: Cell): Part | undefined {
    if (this.#others.size === 0) return this.panel;
    const name = cellName(cell);
    return this.#others.has(name) ? this.#others.get(name) : this.panel;
  }

  /**
   * A figure of the panels that has to be the same for all kinds in the face, such as their size; missing, with the
   * reason, where they differ: a row of unlike panels has no one width.
   */
  alike<const K extends Kind>(path: string, kind: K, what: string): Value<K> {
    const own = this.panelValue(path, kind, what);
    for (const { part } of this.#others.size === 0 ? [] : this.kinds) {
      const other = partValue(part, path, kind, what, this.named);
      if (!other.known) return other;
      if (own.known && Math.abs(own.value - other.value) > 1e-9)
        return missing(kind, {
          path: `${this.path}.other-panels`,
          what: `one ${what} of all panels`,
          because: `${this.label} mixes panels of unlike ${what}, so what follows from it cannot be told.`,
        });
    }
    return own;
  }

  /** Degrees its panels are turned by; 0 for upright ones. */
  get turn(): number {
    return Number(this.reader.data(`${this.path}.rotated`) ?? 0);
  }

  /** Panels lie on their side: what the part calls its width runs upright. */
  get onSide(): boolean {
    return this.turn % 180 !== 0;
  }

  /** Where a panel's part states its pixels along one way of the face: panels on their side have the other ones. */
  pixelsPath(way: "across" | "down"): "pixels.1" | "pixels.2" {
    return (way === "across") === this.onSide ? "pixels.2" : "pixels.1";
  }

  /** Width of a panel as it stands in the face. */
  get panelWidth(): Value<"length"> {
    return this.alike(this.onSide ? "size.2" : "size.1", "length", "size");
  }

  /** Height of its panels, in metres. */
  get panelHeight(): Value<"length"> {
    return this.alike(this.onSide ? "size.1" : "size.2", "length", "size");
  }

  /** Spare panels that come along; undefined when it is not written down. */
  get spares(): number | undefined {
    const spares = this.reader.data(`${this.path}.spares`);
    return typeof spares === "number" ? spares : undefined;
  }

  /** Whether there is a panel in a cell. */
  has(cell: Cell): boolean {
    const present = once(this, "present", () => new Set(this.cells.map(cellNumber)));
    return present.has(cellNumber(cell));
  }

  /** Hung, or high enough on a wall or base that people pass under it: what comes loose falls on someone. */
  get overhead(): boolean {
    if (this.support === "flown") return true;
    const above = this.reader.optional(`${this.path}.height-above`, "length", "height above the floor", this.label);
    // A height that cannot be read may be any: the safe side.
    return above !== undefined && (!above.known || above.value >= OVERHEAD);
  }

  /** The face, and where its panel is named. */
  get named(): Named {
    return { label: this.label, path: `${this.path}.panel` };
  }

  /** A quantity of its panel, by its path in the catalogue. */
  panelValue<const K extends Kind>(path: string, kind: K, what: string): Value<K> {
    return partValue(this.panel, path, kind, what, this.named);
  }

  /** What hangs its columns from the bar; undefined where it is not written down. */
  get hungBy(): Attachment | undefined {
    return !this.reader.has(`${this.path}.hung-by`) ? undefined : new Attachment(this);
  }

  /** Whether it is alike on both sides of its middle, so that its weight is in the middle. */
  get isEven(): boolean {
    return (
      this.otherPanels.length === 0 &&
      this.cells.every(({ row, column }) => this.has({ row, column: this.columns - 1 - column }))
    );
  }

  /** Height of its lower edge above where people walk, where it hangs; undefined where it is not written down. */
  get trim(): Value<"length"> | undefined {
    return this.reader.optional(`${this.path}.trim`, "length", "trim", this.label);
  }

  /** How far upstage it is from where the places of the venue are measured; undefined where it is not written. */
  get upstage(): Value<"length"> | undefined {
    return this.reader.optional(`${this.path}.upstage`, "length", "distance upstage", this.label);
  }

  /** How many panels it has. */
  get panelCount(): Value<"count"> {
    for (const [key, count] of [
      ["columns", this.columns],
      ["rows", this.rows],
    ] as const)
      if (count === 0)
        return missing("count", { path: `${this.path}.${key}`, what: `number of ${key}`, of: this.label });
    return counted(this.cells.length, `panels of ${this.name}`);
  }

  /** Panels in its fullest column, one above another; those beyond a gap count in the columns beside them, too. */
  get tallestColumn(): Known {
    return counted(Math.max(0, ...heldPerColumn(this)), `panels in the fullest column of ${this.name}`);
  }

  /** Panels with a gap between them and where the face hangs or stands. */
  get unheld(): readonly Cell[] {
    return unheldOf(this);
  }

  /** Who states what holds the panels beyond a gap; undefined when it is not written down. */
  get gapsHeldBy(): string | undefined {
    return this.reader.text(`${this.path}.gaps-held-by`);
  }

  /** A plain number the maker of the panel states, such as the most panels one under another. */
  makersLimit(key: string, what: string): Value<"count"> {
    const parts = this.#others.size === 0 ? [this.panel] : this.kinds.map(({ part }) => part);
    const limits = parts.map((part): Value<"count"> => {
      const stated = part?.data[key];
      return typeof stated === "number"
        ? tabled(stated, "count", "part", what)
        : partValue(part, key, "count", what, this.named);
    });
    return limits.length === 1 ? (limits[0] as Value<"count">) : leastOf(limits, "count", what);
  }

  /** Its base, where it stands on the floor or on a deck. */
  get stand(): Stand | undefined {
    return this.support === "stacked" || this.support === "deck" ? new Stand(this) : undefined;
  }

  /** Mass of one panel of its own kind; others have their own, see `kinds`. */
  get panelMass(): Value<"mass"> {
    return this.panelValue("mass", "mass", "mass");
  }

  /** Its width, in metres. */
  get width(): Value<"length"> {
    return faceWidth.of({ c: counted(this.columns, "columns"), w: this.panelWidth });
  }

  /** Its height, in metres. */
  get height(): Value<"length"> {
    return faceHeight.of({ r: counted(this.rows, "rows"), h: this.panelHeight });
  }

  /** Pixels from left to right. */
  get pixelsWide(): Value<"pixels"> {
    return facePixelsAlong.of({
      k: counted(this.columns, "columns"),
      p: this.alike(this.pixelsPath("across"), "pixels", "number of pixels"),
    });
  }

  /** Pixels from top to bottom. */
  get pixelsHigh(): Value<"pixels"> {
    return facePixelsAlong.of({
      k: counted(this.rows, "rows"),
      p: this.alike(this.pixelsPath("down"), "pixels", "number of pixels"),
    });
  }

  /** Distance from pixel to pixel, in metres: panel width over pixels, never the marketing pitch. */
  get pitch(): Value<"length"> {
    return pixelPitch.of({
      w: this.alike("size.1", "length", "size"),
      n: this.alike("pixels.1", "pixels", "number of pixels"),
    });
  }

  /** Panels of every kind and the parts the face carries; cables and bars are counted where they hang. */
  get mass(): Value<"mass"> {
    const { panelCount } = this;
    const panels =
      panelCount.known && this.otherPanels.length > 0
        ? panelsMassOf(this, [...Array(this.columns).keys()])
        : panelsMass.of({ n: panelCount, m: this.panelMass });
    return sum([panels, ...this.extras], "mass", "m");
  }

  /** Masses of the other parts it carries, in kilograms. */
  get extras(): readonly Value[] {
    const { hungBy } = this;
    return [...(hungBy ? [hungBy.mass] : []), ...this.#otherParts()];
  }

  #otherParts(): readonly Value[] {
    const path = `${this.path}.extras`;
    return this.reader.entries(path).map(([name, written]) => {
      const part = this.reader.parts.get(name);
      if (!part)
        return missing("mass", {
          path: `${path}.${name}`,
          what: "part",
          because: `The part ${name} is not in the catalogue, so its mass is not known.`,
        });
      const count = typeof written === "number" && Number.isSafeInteger(written) ? written : 0;
      if (count < 1) return missing("mass", { path: `${path}.${name}`, what: "number of them", of: this.label });
      return partsMass.of({ n: counted(count, name), p: partValue(part, "mass", "mass", "mass", this.label) });
    });
  }

  /** Power of all its panels at full white, in watts. */
  get powerMaximum(): Value<"power"> {
    const each = this.kinds.map(({ part, count }) =>
      times(partValue(part, "power.maximum", "power", "maximum power", this.named), count),
    );
    if (each.length === 0) return this.panelValue("power.maximum", "power", "maximum power");
    const [first] = each as [Value<"power">];
    if (each.length === 1) return first;
    // What is written in VA is more than the watts behind it: counted as watts it is the safe side.
    return sum(
      each.map((one) => ({ ...one, kind: "power" })),
      "power",
      "P",
    );
  }
}
