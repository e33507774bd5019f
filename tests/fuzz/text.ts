import fc from "fast-check";
import { oddText } from "./odd.js";

const BITS: readonly string[] = [
  "\n",
  "\r",
  "\r\n",
  "\n---\n",
  "---",
  "[",
  "]",
  "{",
  "}",
  ": ",
  ":",
  "- ",
  "#",
  " #",
  "|",
  ">",
  "\t",
  "&x ",
  "*x",
  "!x ",
  "? ",
  "<<: ",
  '"',
  "'",
  "\ufeff",
  "\u0000",
  "\u2028",
  "\ud800",
  "😀",
  "`",
  "> ",
  "  ",
  "| ",
  "<!--",
  "](",
  "%",
];

interface Edit {
  readonly at: number;
  readonly gone: number;
  readonly put: string;
  /** Takes the text of another place instead. */
  readonly copy?: number;
}

const edit: fc.Arbitrary<Edit> = fc.record(
  {
    at: fc.nat(7000),
    gone: fc.oneof(fc.nat(3), fc.nat(60)),
    put: fc.oneof(fc.constantFrom(...BITS), oddText, fc.constant("")),
    copy: fc.nat(7000),
  },
  { requiredKeys: ["at", "gone", "put"] },
);

const edited = (text: string, { at, gone, put, copy }: Edit): string => {
  const place = at % (text.length + 1);
  const from = copy === undefined ? 0 : copy % (text.length + 1);
  return text.slice(0, place) + (copy === undefined ? put : text.slice(from, from + 80)) + text.slice(place + gone);
};

/** Line ends as other systems write them. */
const ENDS = ["\n", "\n", "\n", "\r\n", "\r"] as const;

/** Texts made from one of these by a few edits. */
export const editedTexts = (from: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom(...from),
      fc.array(edit, { minLength: 1, maxLength: 5 }),
      fc.constantFrom(...ENDS),
      fc.boolean(),
    )
    .map(([text, edits, end, cut]) => {
      const made = edits.reduce(edited, text);
      const whole = cut ? made.slice(0, Math.max(20, (edits[0]?.at ?? 0) % made.length)) : made;
      return end === "\n" ? whole : whole.replaceAll("\n", end);
    });
