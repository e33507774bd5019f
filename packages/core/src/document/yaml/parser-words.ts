/** More groups in each other than this nobody writes. */
export const DEEPEST = 40;
export const TOO_DEEP = `The data is nested more than ${DEEPEST} deep.`;

/** What the parser tells, for authors: what was found and what to write. */
const SAID: Readonly<Record<string, readonly [says: string, mend: string]>> = {
  RESOURCE_EXHAUSTION: [TOO_DEEP, "Write it flatter."],
  MULTIPLE_DOCS: ["A second part begins here behind a line `---`, and one is read.", "Take the line `---` out."],
  BAD_ALIAS: ["A text begins with `*` here, which has another meaning.", "Put the text in quotes."],
  ALIAS_PROPS: ["A text begins with `*` here, which has another meaning.", "Put the text in quotes."],
  BAD_DIRECTIVE: ["A line begins with `%` here, which has another meaning.", "Put the text in quotes."],
  BAD_DQ_ESCAPE: [
    "A backslash stands in double quotes, where it has another meaning.",
    "Write two backslashes, or single quotes round the text.",
  ],
  BAD_SCALAR_START: ["A text begins with a sign that has another meaning here.", "Put the text in quotes."],
  BLOCK_IN_FLOW: [
    "A line of a list or group stands inside braces or brackets here.",
    "Close the brace or bracket first.",
  ],
  DUPLICATE_KEY: ["A key stands twice in one group.", "Keep one of them."],
  KEY_OVER_1024_CHARS: ["A key is longer than 1,024 characters here.", "Write a shorter one, with a colon behind it."],
  TAB_AS_INDENT: ["A tab stands in front of the line.", "Indent it by blanks."],
  TAG_RESOLVE_FAILED: ["A text begins with `!` here, which has another meaning.", "Put the text in quotes."],
  BAD_INDENT: [
    "The line is not indented as those it belongs to.",
    "Begin it with as many blanks as the lines beside it.",
  ],
  MISSING_CHAR: [
    "Something that has to stand here is missing.",
    "Look for a quote, brace or bracket that is not closed, or a comma or colon that is missing.",
  ],
  UNEXPECTED_TOKEN: [
    "Something stands here that does not belong here.",
    "Look for a quote, brace or bracket too many, or for a comma or colon that is missing.",
  ],
};
const OTHERWISE: readonly [says: string, mend: string] = [
  "From here on the text cannot be read.",
  "Keys end with a colon and a blank, what belongs to a key is indented by two blanks, texts with `: ` or ` #` stand in quotes.",
];

/** What is told of an error of the parser: what was found, and what to write. */
export const parserWords = (code: string): readonly [says: string, mend: string] => SAID[code] ?? OTHERWISE;
