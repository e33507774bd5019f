import type { BlockLine } from "./yaml-lines.js";
import type { Slip } from "./yaml-slips.js";

const brief = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);

/** What a program for merging writes round two versions of the same lines. */
const MERGE = /^(?:<{7}|={7}|>{7}|\|{7})(?:\s|$)/u;

function mergeSlip({ content, from }: BlockLine): Slip | undefined {
  if (!MERGE.test(content)) return undefined;
  return {
    ...{ from, to: from + content.length },
    says: `Two versions were merged and nobody chose between them: \`${brief(content)}\` stands between them.`,
    mend: "Keep the lines of one version, and take out the other and the lines of `<<<<<<<`, `=======` and `>>>>>>>`.",
  };
}

/** Blanks that look like blanks and are others, such as those a word processor or a web page puts between words. */
function leadSlip({ lead, content, from }: BlockLine): Slip | undefined {
  if (!/[^ \t]/u.test(lead)) return undefined;
  const start = from - lead.length;
  return {
    ...{ from: start, to: from },
    says: `Blanks that do not break stand in front of \`${brief(content)}\`; lines are indented by ordinary ones.`,
    mend: "Write ordinary blanks in their place.",
    edit: { from: start, to: from, text: lead.replace(/[^ \t]/gu, " ") },
    sure: true,
  };
}

/** Lines whose signs were put in by a word processor, or belong to the text below the front matter. */
const SIGNS: readonly (readonly [
  form: RegExp,
  says: (shown: string) => string,
  better: (match: string[]) => string,
])[] = [
  [
    /^[—–−•*](?:\s+|(?=[{[]))(\S.*)$/u,
    (shown) => `\`${shown}\` begins with a sign that is no hyphen.`,
    ([, rest]) => `- ${rest}`,
  ],
  [
    /^([A-Za-z][\w.-]*)\s*：\s*(.*)$/u,
    (shown) => `\`${shown}\` has a wide colon behind its key, which is another letter.`,
    ([, key, value]) => `${key}: ${value}`,
  ],
  [
    /^([A-Za-z][\w.-]*)\s*=\s*(.*)$/u,
    (shown) => `\`${shown}\` has an equals sign behind its key.`,
    ([, key, value]) => `${key}: ${value}`,
  ],
  [
    /^[*_`]{1,2}([A-Za-z][\w.-]*)[*_`]{1,2}\s*:\s*(.*)$/u,
    (shown) => `\`${shown}\` has signs round its key that only the text below has.`,
    ([, key, value]) => `${key}: ${value}`,
  ],
];

function signSlip({ content, from }: BlockLine): Slip | undefined {
  for (const [form, says, better] of SIGNS) {
    const match = form.exec(content);
    if (!match) continue;
    const text = better(match as unknown as string[]);
    const [start, end] = [from, from + content.length];
    return {
      ...{ from: start, to: end },
      says: says(brief(content)),
      mend: `Write \`${brief(text)}\`.`,
      edit: { from: start, to: end, text },
    };
  }
  return undefined;
}

/** `trim: ?`: what is not known is left out, or guessed. */
function questionSlip({ content, from }: BlockLine): Slip | undefined {
  const [, key] = /^(?:- +)?["']?([\w.-]+)["']?:\s+\?+$/u.exec(content) ?? [];
  if (key === undefined) return undefined;
  return {
    ...{ from, to: from + content.length },
    says: `Behind \`${key}:\` stands a question mark and nothing else.`,
    mend: `Take the line out until it is known, or write a guess before the question mark: \`${key}: 11 ft ?\`.`,
  };
}

/** Of lines of a list: one that is indented more than the one before it, or that has lost its dash. */
function listSlip(line: BlockLine, before: BlockLine | undefined): Slip | undefined {
  const isWhole = before !== undefined && /^- (?:[{[].*[}\]]|[^\s:{[]+)$/u.test(before.content);
  if (!before || !isWhole || line.indent <= before.indent) return undefined;
  const isItem = line.content.startsWith("- ");
  if (!isItem && !/^[{[]/u.test(line.content)) return undefined;
  const start = line.from - line.lead.length;
  const lead = " ".repeat(before.indent);
  return {
    ...{ from: line.from, to: line.from + line.content.length },
    says: isItem
      ? `\`${brief(line.content)}\` is indented by ${line.indent}, the line of the list before it by ${before.indent}.`
      : `\`${brief(line.content)}\` stands in a list and has no dash in front.`,
    mend: isItem ? `Begin it with ${before.indent} blanks.` : `Write \`- ${brief(line.content)}\`.`,
    edit: { from: start, to: line.from, text: isItem ? lead : `${lead}- ` },
  };
}

/** Slips that come from other programs: merges, word processors, web pages; and of lists. */
export const oddSlip = (lines: readonly BlockLine[], index: number): Slip | undefined => {
  const line = lines[index] as BlockLine;
  return mergeSlip(line) ?? leadSlip(line) ?? signSlip(line) ?? questionSlip(line) ?? listSlip(line, lines[index - 1]);
};
