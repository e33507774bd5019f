type Place = readonly [line: number, column: number];

/** What can be the matter with the bytes of a file, whatever kind of file it is. */
export interface Fault {
  readonly name: string;
  /** The bytes that stand in place of the good ones. */
  readonly of: (good: string) => Uint8Array;
  /** Whether the file is read as if nothing were wrong. */
  readonly fine?: true;
  /** Where it has to be told. */
  readonly at?: (good: string) => Place;
}

const bytes = (text: string): Uint8Array => Buffer.from(text, "utf8");
const little = (text: string): Uint8Array => Buffer.from(text, "utf16le");
const big = (text: string): Uint8Array => Buffer.from(text, "utf16le").swap16();

/** Behind the last line end. */
const end = (good: string): Place => [good.split("\n").length, 1];

/** The Unicode Standard, 2.6 and 23.8: the order of bytes, and the mark that tells it. RFC 3629, 3 and 4: what is UTF-8. */
export const ENCODINGS: readonly Fault[] = [
  { name: "UTF-16 LE with its mark", of: (good) => little(`\uFEFF${good}`) },
  { name: "UTF-16 LE without it", of: little },
  { name: "UTF-16 BE with its mark", of: (good) => big(`\uFEFF${good}`) },
  { name: "UTF-16 BE without it", of: big },
  { name: "a NUL byte", of: (good) => bytes(`${good}\0 `), at: end },
  { name: "a character cut off", of: (good) => Buffer.concat([bytes(good), Buffer.of(0xe2, 0x82)]), at: end },
  { name: "Latin-1", of: (good) => Buffer.from(`${good}# \u00e9t\u00e9\n`, "latin1"), at: (good) => [end(good)[0], 3] },
  { name: "UTF-8 with a byte order mark", of: (good) => bytes(`\uFEFF${good}`), fine: true },
  { name: "lines that end with CR LF", of: (good) => bytes(good.replaceAll("\n", "\r\n")), fine: true },
  { name: "lines that end with CR", of: (good) => bytes(good.replaceAll("\n", "\r")), fine: true },
  { name: "nothing in it", of: () => bytes("") },
  { name: "blank lines alone", of: () => bytes("\n  \n\n") },
];

export interface Data {
  readonly name: string;
  readonly yaml: string;
  /** What is told; nothing where it is told what the whole file has to be. */
  readonly says?: RegExp;
  readonly at?: Place;
}

const LAUGHS = Array.from({ length: 12 }, (_, depth) => `a${depth}: &a${depth} [${`*a${depth - 1},`.repeat(9)}]`);
const DEEP = 10_000;
const NESTED = /nested more than 40 deep/u;
const ALIAS = /An alias \(`\*name`\) stands here\. Write the value out/u;

/** What stands in place of the data of a file: YAML 1.2.2, and RFC 8259 for what is no JSON. */
export const DATA: readonly Data[] = [
  { name: "a list", yaml: "- a\n- b\n", at: [1, 1] },
  { name: "a scalar", yaml: "only a sentence\n", at: [1, 1] },
  { name: "null", yaml: "null\n" },
  { name: "a comment alone", yaml: "# nothing yet\n" },
  { name: "a list that is not closed", yaml: "a: [1, 2\nb: 3\n", says: /bracket `\[` is not closed/su },
  {
    name: "aliases that explode",
    yaml: ["a0: &a0 [x, x]", ...LAUGHS.slice(1), ""].join("\n"),
    says: ALIAS,
    at: [2, 10],
  },
  { name: "lists 10,000 deep", yaml: `a: ${"[".repeat(DEEP)}${"]".repeat(DEEP)}\n`, says: NESTED },
  { name: "lists 10,000 deep in a line", yaml: `a:\n  ${"- ".repeat(DEEP)}x\n`, says: NESTED },
  { name: "groups 10,000 deep", yaml: `a: ${"{a: ".repeat(DEEP)}1${"}".repeat(DEEP)}\n`, says: NESTED },
  {
    name: "groups by indentation",
    yaml: Array.from({ length: 1000 }, (_, depth) => `${" ".repeat(depth)}a:\n`).join(""),
    says: NESTED,
  },
  { name: "a key twice", yaml: "a: 1\na: 2\n", says: /stands twice/u, at: [2, 1] },
  {
    name: "a merge key",
    yaml: "a: &a {b: 1}\nc: {<<: *a}\n",
    says: /`<<: \*a` copies the keys of another group/u,
    at: [2, 5],
  },
  { name: "a program as a tag", yaml: 'a: !!js/function "() => {}"\n', says: /js\/function/u, at: [1, 4] },
  { name: "bytes as a tag", yaml: "a: !!binary aGk=\n", says: /The tag `!!binary` stands here.*without a tag/u },
  { name: "a set as a tag", yaml: "a: !!set {b}\n", says: /The tag `!!set` stands here/u },
  { name: "two documents", yaml: "a: 1\n---\nb: 2\n", says: /A second part begins here/u, at: [2, 1] },
  {
    name: "a directive nobody knows",
    yaml: "%SECRET x\n---\na: 1\n",
    says: /A line begins with `%` here/u,
    at: [1, 1],
  },
  { name: "JSON with comments", yaml: '{"a": 1, // one\n"b": 2}\n', says: /./u },
];

/** ECMA-262, 20.1.3: what every object has without being given it. */
export const INHERITED = ["__proto__", "constructor", "toString", "prototype", "hasOwnProperty"] as const;
