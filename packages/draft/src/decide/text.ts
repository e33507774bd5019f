import type { Brief } from "../brief.js";
import { grouped, type Mapping } from "../data.js";
import type { OnSide, Shape } from "../search/shapes.js";
import { lengthAsWritten } from "../write/length.js";
import { type Decision, decided, type Scheme } from "./decision.js";
import { begun, FACE, sizeIn } from "./size.js";
import { surroundings, withFace } from "./viewing.js";

/** Shares of the line pitch a capital may fill, the largest first: what is left is the space between lines. */
const CAP_HEIGHTS = ["70 %", "65 %", "60 %", "55 %", "50 %", "45 %", "40 %", "35 %", "30 %"] as const;
/** A face of more columns is no banner that anybody carries in. */
const MOST_COLUMNS = 400;
const ROOM = `viewing.${FACE}.characters`;

/** How a text goes onto a face: how large its capitals are, and what is in the way of them. */
interface Lettered {
  readonly matter: Mapping;
  /** Characters a line has room for; undefined where that cannot be told. */
  readonly room: number | undefined;
  /** What viewers do not read. */
  readonly unread: readonly string[];
}

/** Rows of a face, and how its panels are turned. */
type Turned = Omit<Shape, "columns">;

const turnedBy = (rotated: OnSide | undefined): Pick<Shape, "rotated"> => (rotated === undefined ? {} : { rotated });

/** The text of a wish on faces of one panel: which capitals the farthest viewer reads, and how many go onto a line. */
export class TextRoom {
  readonly #least = new Map<string, number | undefined>();
  readonly #read = new Map<string, string | undefined>();
  readonly lines: number | undefined;
  readonly characters: number | undefined;

  constructor(private readonly brief: Brief) {
    const { shows, text } = brief.wish;
    this.lines = shows === "text" ? text.lines : undefined;
    this.characters = this.lines === undefined ? undefined : text.characters;
  }

  #on(scheme: Scheme, share: string): Lettered {
    const { lines, characters } = this;
    const around = surroundings(this.brief);
    const text = (more: Mapping): Mapping => ({
      ...around,
      ...withFace(scheme, { text: { lines: lines as number, "cap-height": share, ...more } }),
    });
    const asked = this.brief.desk.ask({ ...scheme.matter, ...text({}) });
    const unread = asked.checks("viewing.text").filter(({ outcome }) => outcome === "fails");
    return {
      matter: text(grouped({ characters })),
      room: asked.known(ROOM),
      unread: unread.map(({ says }) => says),
    };
  }

  /** The largest capitals of which the whole line goes onto the face; else the smallest that are read. */
  lettered(scheme: Scheme): Lettered & { readonly fits: boolean } {
    const needed = this.characters ?? 0;
    let last: Lettered | undefined;
    for (const share of CAP_HEIGHTS) {
      const found = this.#on(scheme, share);
      // Smaller ones are read no better.
      if (found.unread.length > 0) return { ...(last ?? found), fits: false };
      last = found;
      if (found.room === undefined || found.room >= needed) return { ...found, fits: found.room !== undefined };
    }
    return { ...(last as Lettered), fits: false };
  }

  /** Fewest columns of so many rows that hold the text; undefined where no number does. */
  columns(panel: string, { rows, rotated }: Turned): number | undefined {
    const key = `${panel} ${rows} ${rotated ?? 0}`;
    if (!this.#least.has(key)) this.#least.set(key, this.#columns(panel, { rows, ...turnedBy(rotated) }));
    return this.#least.get(key);
  }

  #begun(panel: string, shape: Shape): Scheme {
    const offer = { panel, lot: undefined, free: Number.POSITIVE_INFINITY, owned: false };
    return begun(this.brief, { ...shape, offer, spares: 0 });
  }

  /** Characters of a line of a face in capitals that are read; undefined where none are, or that cannot be told. */
  roomOn(panel: string, shape: Shape): number | undefined {
    const { room, unread } = this.lettered(this.#begun(panel, shape));
    return unread.length > 0 ? undefined : room;
  }

  #columns(panel: string, turned: Turned): number | undefined {
    const holds = (columns: number): boolean => this.holds(panel, { columns, ...turned });
    if (!holds(MOST_COLUMNS)) return undefined;
    let [low, high] = [0, MOST_COLUMNS];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (holds(middle)) high = middle;
      else low = middle;
    }
    return high;
  }

  /** The smallest capitals that are read on so many rows, however wide they are; undefined where none are. */
  #smallestRead(panel: string, turned: Turned): string | undefined {
    const key = `${panel} ${turned.rows} ${turned.rotated ?? 0}`;
    if (this.#read.has(key)) return this.#read.get(key);
    const scheme = this.#begun(panel, { columns: 1, ...turned });
    let read: string | undefined;
    for (const share of CAP_HEIGHTS) {
      if (this.#on(scheme, share).unread.length > 0) break;
      read = share;
    }
    this.#read.set(key, read);
    return read;
  }

  /** Whether a face has room for every character at a height the farthest viewer reads. */
  holds(panel: string, { columns, rows, rotated }: Shape): boolean {
    if (this.characters === undefined) return true;
    const turned = { rows, ...turnedBy(rotated) };
    const least = this.#smallestRead(panel, turned);
    if (least === undefined) return false;
    return (this.#on(this.#begun(panel, { columns, ...turned }), least).room ?? 0) >= this.characters;
  }

  /** By how much a face is too narrow for the text, in a sentence. */
  shortOf(panel: string, { columns, rows, rotated }: Shape, room: number | undefined): string {
    const { system } = this.brief;
    const side = sizeIn(this.brief, { panel, rotated })?.width ?? 0;
    const least = this.columns(panel, { rows, ...turnedBy(rotated) });
    const has = `It has room for ${room ?? 0} of the ${this.characters} characters of a line in capitals the farthest viewer reads`;
    if (least === undefined) return `${has}, and no wider face of ${rows === 1 ? "one row" : `${rows} rows`} has more.`;
    const [needs, more] = [least * side, (least - columns) * side].map((each) => lengthAsWritten(each, system));
    return `${has}; all of them need ${least} columns, ${needs}: ${more} more.`;
  }
}

const READ = "The nearest viewer is far enough for the pitch, and the farthest reads it";

/** Lays out the text of a wish on a face; says how well it is read, and what does not go onto it. */
export function lettered(brief: Brief, scheme: Scheme, text: TextRoom): Scheme {
  const { matter, room, unread, fits } = text.lettered(scheme);
  const near = brief.desk
    .ask({ ...scheme.matter, ...matter })
    .checks("viewing.pitch")
    .filter(({ outcome }) => outcome === "fails");
  const short =
    text.characters === undefined || fits || unread.length > 0 || room === undefined
      ? []
      : [text.shortOf(scheme.panel, scheme, room)];
  const said = [...near.map(({ says }) => says), ...unread, ...short];
  const decision: Decision = {
    what: "viewing",
    why:
      said.length > 0
        ? said.join(" ")
        : text.characters === undefined
          ? `${READ}.`
          : `${READ}: the largest capitals of which ${text.characters} characters go onto a line.`,
    exact: true,
    figures: ["nearest-by-practice", "luminance", "cap-height", "angle", "characters"].map(
      (key) => `viewing.${FACE}.${key}`,
    ),
  };
  return decided(scheme, matter, decision);
}
