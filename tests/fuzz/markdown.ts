import fc from "fast-check";
import { NAMES } from "./odd.js";

/** Markdown by its grammar: blocks of inlines, nested, with what an inspection looks for among them. */
const word = fc.oneof(
  fc.constantFrom(
    "Scope",
    "Cautions",
    "Lift plan",
    "Power-up",
    "Sign-off",
    "text",
    "*",
    "_",
    "`",
    "<b>",
    "&amp;",
    "\\",
    "\ud800",
    "😀",
    "https://x",
    "a@b.c",
    "[^1]",
    "![",
    "](",
  ),
  fc.constantFrom(...NAMES),
);

const url = fc.constantFrom(
  "calc:faces.header.mass",
  "calc:faces.header.panel-count",
  "calc:",
  "calc:schedules.cables",
  "calc:drawings.faces.header",
  "calc:__proto__",
  "calc:constructor.name",
  "calc:faces.__proto__.mass",
  "#scope",
  "#",
  "",
  "../x.md",
  "../../../etc/passwd",
  "%E0%A4%A",
  "%2e%2e/%2e%2e/x",
  "/etc/passwd",
  "file:///etc/passwd",
  "javascript:alert(1)",
  "<a b>",
  "x.md?y#z",
  "C:\\x",
  "\\\\host\\share",
  "a%00b",
);

const { inline, block } = fc.letrec<{ inline: string; block: string }>((tie) => ({
  inline: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    word,
    fc.tuple(tie("inline"), tie("inline")).map(([one, two]) => `${one} ${two}`),
    fc.tuple(fc.constantFrom("*", "**", "~~", "`", "_"), tie("inline")).map(([mark, text]) => mark + text + mark),
    fc.tuple(fc.constantFrom("", "!"), tie("inline"), url).map(([image, text, to]) => `${image}[${text}](${to})`),
    fc.tuple(tie("inline"), word).map(([text, name]) => `[${text}][${name}]`),
  ),
  block: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    tie("inline"),
    fc.tuple(fc.integer({ min: 1, max: 7 }), tie("inline")).map(([depth, text]) => `${"#".repeat(depth)} ${text}`),
    fc
      .tuple(fc.constantFrom("> ", "- ", "1. ", "- [ ] ", "- [x] ", "    ", "\t", "* "), tie("block"))
      .map(([mark, text]) => mark + text.replaceAll("\n", `\n${" ".repeat(mark.length)}`)),
    fc
      .array(fc.array(tie("inline"), { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 })
      .map((rows) =>
        rows
          .map((row, index) => `| ${row.join(" | ")} |${index === 0 ? `\n|${row.map(() => "---|").join("")}` : ""}`)
          .join("\n"),
      ),
    fc
      .tuple(fc.constantFrom("```", "~~~", "<!--", "<div>", "$$"), tie("inline"))
      .map(([fence, text]) => `${fence}\n${text}\n${fence}`),
    fc.tuple(word, url).map(([name, to]) => `[${name}]: ${to}`),
    fc.tuple(word, tie("inline")).map(([name, text]) => `[^${name}]: ${text}`),
    fc.constantFrom("---", "===", "***", "", "<details>", "</details>"),
    fc.tuple(tie("block"), tie("block")).map(([one, two]) => `${one}\n\n${two}`),
    fc.tuple(tie("block"), tie("block")).map(([one, two]) => `${one}\n${two}`),
  ),
}));

export { inline };

export const body: fc.Arbitrary<string> = fc
  .tuple(fc.array(block, { maxLength: 6 }), fc.constantFrom("\n\n", "\n", "\r\n\r\n", "\r"))
  .map(([blocks, between]) => blocks.join(between));
