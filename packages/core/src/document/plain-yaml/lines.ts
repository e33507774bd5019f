/** Thrown where YAML is more than the plain reader knows; whoever asked then has it read by the library. */
export const NOT_PLAIN = Symbol("not plain");

export const leave: () => never = () => {
  throw NOT_PLAIN;
};

const [TAB, LF, CR, SPACE, HASH] = [9, 10, 13, 32, 35];

/** A point of the file: lines and columns from 1. */
export interface Point {
  readonly line: number;
  readonly column: number;
}

/**
 * Goes through the lines of YAML that hold something, one after another. A comment that stands further in than the line
 * below it belongs to what is above, and that is left to the library.
 */
export class Lines {
  /** Line in the file, from 1. */
  line: number;
  /** Where it begins, where its line end begins, and where the next one begins. */
  start: number;
  end = 0;
  next = 0;
  /** Column its content stands in, from 0; −1 behind the last line. */
  indent = 0;

  constructor(
    readonly text: string,
    from: number,
    readonly to: number,
  ) {
    this.line = 1;
    for (let at = 0; at < from; at += 1) {
      if (text.charCodeAt(at) === LF) this.line += 1;
      else if (text.charCodeAt(at) === CR && text.charCodeAt(at + 1) !== LF) leave();
    }
    this.start = from;
    this.#measure();
    this.#skip();
  }

  /** To the next line that holds something. */
  advance(): void {
    this.#onward();
    this.#skip();
  }

  /** A place in this line. */
  point(offset: number): Point {
    return { line: this.line, column: offset - this.start + 1 };
  }

  /** Just behind this line and its end. */
  behind(): Point {
    return this.next > this.end ? { line: this.line + 1, column: 1 } : this.point(this.end);
  }

  /** Refuses anything but blanks and a comment from `at` to the end of the line. */
  nothingFrom(at: number): void {
    const { text, end } = this;
    let found = at;
    while (found < end && text.charCodeAt(found) === SPACE) found += 1;
    if (found === end) return;
    if (text.charCodeAt(found) !== HASH || found === at) leave();
    const behind = text.charCodeAt(found + 1);
    // `12 #8 screws` was meant to be read: the library's reading tells of it.
    if (found + 1 < end && behind !== SPACE && behind !== HASH) leave();
    for (let index = found; index < end; index += 1) if (text.charCodeAt(index) < SPACE) leave();
  }

  #onward(): void {
    if (this.next > this.end) this.line += 1;
    this.start = this.next;
    this.#measure();
  }

  #measure(): void {
    const { text, to, start } = this;
    const found = text.indexOf("\n", start);
    const feed = found < 0 || found >= to ? to : found;
    const returned = feed > start && feed < to && text.charCodeAt(feed - 1) === CR;
    this.end = returned ? feed - 1 : feed;
    this.next = feed < to ? feed + 1 : to;
  }

  /** Passes lines with nothing in them, and comments. */
  #skip(): void {
    const { text, to } = this;
    let furthest = 0;
    for (; this.start < to; this.#onward()) {
      let at = this.start;
      while (at < this.end && text.charCodeAt(at) === SPACE) at += 1;
      if (at === this.end) {
        if (at > this.start) leave();
        continue;
      }
      this.indent = at - this.start;
      if (text.charCodeAt(at) !== HASH) {
        if (furthest > this.indent || text.charCodeAt(at) === TAB) leave();
        return;
      }
      furthest = Math.max(furthest, this.indent);
      for (let index = at; index < this.end; index += 1) if (text.charCodeAt(index) < SPACE) leave();
    }
    if (furthest > 0) leave();
    this.indent = -1;
  }
}
