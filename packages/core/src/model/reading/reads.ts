/** What a rule, or a value, looked at of its document and of what its document is given. */
export const LOOKED_AT = {
  /** The body; where it stands counts. */
  body: "body",
  /** The text of the file as it is written. */
  text: "text",
  /** The front matter as a whole, with its places. */
  whole: "whole",
  /** Parts it names, and where it first does so. */
  parts: "parts",
  /** What the survey of its venue states of it. */
  venue: "venue",
  /** What is written and not plausible. */
  implausible: "implausible",
  /** The author's mistakes. */
  mistakes: "mistakes",
  /** Documents that give their build the same name. */
  names: "names",
  /** What documents promise out of the stock. */
  promises: "promises",
  /** What may be another each time: findings of other rules, builds of other documents. */
  passing: "passing",
} as const;

/** Kinds of looks at a path of the front matter, or at where a name stands in it: each has its own set of them. */
export const LOOK = { data: 0, there: 1, keys: 2, quantity: 3, place: 4, naming: 5 } as const;

export type Look = (typeof LOOK)[keyof typeof LOOK];

const NOTHING: ReadonlySet<never> = new Set();
const NONE: readonly never[] = [];

/**
 * What was looked at while something was worked out. Most of what is worked out looks at one or two things, and there is
 * much of it: a set is made once something goes into it.
 */
export class Reads {
  #looks: (Set<string> | undefined)[] | undefined = undefined;
  #others: Set<string> | undefined = undefined;
  #inner: Set<Reads> | undefined = undefined;

  /** Paths and names that were looked at, by the kind of the look. */
  get looks(): readonly (ReadonlySet<string> | undefined)[] {
    return this.#looks ?? NONE;
  }

  /** Whatever else, of `LOOKED_AT`. */
  get others(): ReadonlySet<string> {
    return this.#others ?? NOTHING;
  }

  /** What was worked out for it, or before it, and looked at. */
  get inner(): ReadonlySet<Reads> {
    return this.#inner ?? NOTHING;
  }

  /** Most looks are at one and the same few paths: that no text is put together for one is felt at every keystroke. */
  addLook(look: Look, path: string): void {
    this.#looks ??= [];
    const known = this.#looks[look];
    if (known) known.add(path);
    else this.#looks[look] = new Set([path]);
  }

  addOther(what: string): void {
    this.#others ??= new Set();
    this.#others.add(what);
  }

  addInner(reads: Reads): void {
    this.#inner ??= new Set();
    this.#inner.add(reads);
  }

  /** Something was worked out while nobody noted what it rests on. */
  unknown = false;
}

let current: Reads | undefined;

/** Whether somebody notes what is looked at. */
export const isNoting = (): boolean => current !== undefined;

export function note(what: string): void {
  current?.addOther(what);
}

export function noteAt(look: Look, path: string): void {
  current?.addLook(look, path);
}

/** What was worked out earlier is looked at; `reads` is undefined where nobody noted what that rests on. */
export function noteInner(reads: Reads | undefined): void {
  if (!current) return;
  if (reads) current.addInner(reads);
  else current.unknown = true;
}

/** Notes what is looked at by a work, and in nobody else's notes. */
export function noting<T>(reads: Reads, work: () => T): T {
  const outer = current;
  current = reads;
  try {
    return work();
  } finally {
    current = outer;
  }
}

/** The same where somebody notes, of what is no part of what they look at: that of another document. */
export const aside = <T>(work: () => T): T => (current ? noting(new Reads(), work) : work());
