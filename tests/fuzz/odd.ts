import fc from "fast-check";

/** Names that mean something to JavaScript, to YAML or to a path. */
export const NAMES: readonly string[] = [
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "valueOf",
  "length",
  "then",
  "size",
  "get",
  "a.b",
  "__proto__.polluted",
  "constructor.prototype",
  "",
  " ",
  ".",
  "..",
  "../../etc/passwd",
  "/etc/passwd",
  "a/b",
  "*",
  "1",
  "01",
  "é",
  "😀",
  "\u202e",
  "null",
  "~",
  "<<",
  "-",
  "A1",
  "header",
  "c1",
  "P1",
  "D1",
  "b1",
  "H1",
  "lot-2431",
];

const UNITS = [
  "m",
  "ft",
  "in",
  "mm",
  "kg",
  "lb",
  "A",
  "mA",
  "V",
  "W",
  "VA",
  "Hz",
  "bit",
  "cd/m2",
  "nit",
  "%",
  "deg",
  "AWG",
  "mm2",
  "kg/m",
  "lb/ft2",
  "Gb/s",
  "t",
  "kN",
  "K",
  "C",
  "px",
  "s",
];
const NUMBERS = [
  "0",
  "-0",
  "-1",
  "1",
  "1e308",
  "1e-320",
  "-1e308",
  "1e309",
  "9007199254740993",
  "99999999999999999999",
  "0.1",
  "NaN",
  "Infinity",
  ".inf",
  "1/0",
  "0/0",
  "1/3",
  "1-1/2",
  "0x10",
  "1_000",
  "1,5",
  "٣",
  "½",
];

/** Numbers at the limits, with and without units. */
const quantity = fc.oneof(
  fc.tuple(fc.constantFrom(...NUMBERS), fc.constantFrom(...UNITS)).map(([number, unit]) => `${number} ${unit}`),
  fc.tuple(fc.double({ noNaN: true }), fc.constantFrom(...UNITS)).map(([number, unit]) => `${number} ${unit}`),
  fc
    .tuple(fc.constantFrom(...NUMBERS), fc.constantFrom(...UNITS), fc.constantFrom(...NUMBERS))
    .map(([one, unit, two]) => `${one} ${unit} x ${two} ${unit}`),
  fc.constantFrom(
    "10 ft 6 in",
    "14' 6\"",
    "-1 ft 6 in",
    "1 ft 1e308 in",
    "0 AWG",
    "4/0 AWG",
    "41 AWG",
    "-3 AWG",
    "1 x 1",
    "0 x 0",
    "1920 x",
    "2027-03-05",
    "2027-02-30",
    "2027-03-08 to 2027-03-05",
    "from 9999-99-99",
    "0000-00-00",
  ),
);

const cells = fc
  .array(
    fc.tuple(
      fc.constantFrom("A", "B", "Z", "AA", "ZZ", "a"),
      fc.constantFrom("1", "4", "9", "0", "9999", "10000"),
      fc.constantFrom("", "..A1", "..B9", "..A9999", "..", "..A1..A2"),
    ),
    { maxLength: 3 },
  )
  .map((all) => `header ${all.map((each) => each.join("")).join(", ")}`);

const NUMBER: readonly number[] = [
  0,
  -0,
  1,
  -1,
  2,
  26,
  27,
  702,
  703,
  1000,
  1001,
  1e9,
  2 ** 53,
  -(2 ** 53),
  1e308,
  -1e308,
  5e-324,
  0.5,
  1.5,
  90,
  4096,
];

const TEXTS = [
  "\ud800",
  "\udfff\ud800",
  "\u0000",
  "\u0085",
  "\u2028",
  "\r",
  "\r\n",
  "\n",
  "\t",
  "x".repeat(300),
  "=1+1",
  "<script>",
  "](x)",
  "calc:",
  "| a |",
  "--- ",
  "#8",
  "*a",
  "&a",
  "!!str",
  "flown",
  "stacked",
  "deck",
  "wall",
  "draft",
  "tile-500-p3.1",
  "nobody",
  "three-phase",
  "AB",
];

/** Any letter of Unicode but half of a pair: a string of these makes a table of all of them, which takes seconds. */
const letter = fc
  .integer({ min: 0, max: 0x10ffff - 0x800 })
  .map((at) => String.fromCodePoint(at < 0xd800 ? at : at + 0x800));

export const oddText: fc.Arbitrary<string> = fc.oneof(
  quantity,
  quantity,
  cells,
  fc.constantFrom(...TEXTS),
  fc.constantFrom(...NAMES),
  fc.string({ maxLength: 12 }),
  fc.array(letter, { maxLength: 8 }).map((letters) => letters.join("")),
);

/** A value that belongs hardly anywhere. */
export const oddValue: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 5, arbitrary: oddText },
  { weight: 3, arbitrary: fc.constantFrom(...NUMBER) },
  { weight: 1, arbitrary: fc.constantFrom(null, true, false) },
  { weight: 1, arbitrary: fc.array(oddText, { maxLength: 3 }) },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.constantFrom(...NAMES), oddText).map(([key, value]) => fromEntries([[key, value]])),
  },
);

/** An object with its keys as they are, `__proto__` included. */
export function fromEntries(entries: readonly (readonly [string, unknown])[]): Readonly<Record<string, unknown>> {
  const made = Object.create(null) as Record<string, unknown>;
  for (const [key, value] of entries) made[key] = value;
  return made;
}
