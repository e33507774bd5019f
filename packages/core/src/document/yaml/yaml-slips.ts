import { oddSlip } from "./odd-slips.js";
import { type BlockLine, type LeftOpen, type Scanned, scanLines } from "./yaml-lines.js";

/** What stands from `from` to `to` becomes `text`. */
interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** What is wrong with a text that cannot be read, as its author would see it. Offsets count in the whole file. */
export interface Slip {
  readonly from: number;
  readonly to: number;
  readonly says: string;
  readonly mend: string;
  readonly edit?: Change;
  /** Nothing else can be meant than the edit. */
  readonly sure?: true;
}

const PAIR = /^(?:- +)?(["']?[\w.-]+["']?)\s*:(?:\s+(.*))?$/u;
const valueIn = (line: BlockLine): string => PAIR.exec(line.content)?.[2] ?? "";
/** A line that others may stand under: a key with nothing behind it, or an item of a list. */
const opensGroup = (line: BlockLine): boolean =>
  /:$/u.test(line.content) || /^- /u.test(line.content) || /:\s+[|>][+-]?\d?$/u.test(line.content);
const brief = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);
const blanks = (count: number): string => (count === 1 ? "1 blank" : `${count} blanks`);

const indented = (line: BlockLine, indent: number): Change => ({
  from: line.from - line.lead.length,
  to: line.from,
  text: " ".repeat(indent),
});

function tabSlip(lines: readonly BlockLine[], index: number): Slip | undefined {
  const line = lines[index] as BlockLine;
  if (!line.lead.includes("\t")) return undefined;
  const before = lines[index - 1];
  const wanted = before ? before.indent + (opensGroup(before) ? 2 : 0) : 0;
  return {
    from: line.from - line.lead.length,
    to: line.from,
    says: `A tab stands in front of \`${brief(line.content)}\`; lines are indented by blanks.`,
    mend: wanted === 0 ? "Take the tab out." : `Write ${blanks(wanted)} in its place.`,
    edit: indented(line, wanted),
    sure: true,
  };
}

function indentSlip(lines: readonly BlockLine[], index: number, levels: readonly number[]): Slip | undefined {
  const line = lines[index] as BlockLine;
  const [before, next] = [lines[index - 1], lines[index + 1]];
  if (!before) return undefined;
  const odd = (wanted: number): Slip => ({
    from: line.from,
    to: line.from + line.content.length,
    says: `\`${brief(line.content)}\` is indented by ${line.indent}, the lines beside it by ${wanted}.`,
    mend: wanted === 0 ? "Begin it at the edge of the page." : `Begin it with ${blanks(wanted)}.`,
    edit: indented(line, wanted),
  });
  const closed = !opensGroup(line) && valueIn(line) !== "";
  if (next && closed && next.indent > line.indent && next.indent === before.indent) return odd(next.indent);
  if (line.indent > before.indent && !opensGroup(before)) return odd(before.indent);
  if (line.indent < before.indent && !levels.includes(line.indent))
    return odd(levels.find((level) => level > line.indent) ?? before.indent);
  return undefined;
}

/** `12 AWG, length: 50 ft`: what stands between two marks of a group in braces, with two keys in it. */
const NO_COMMA = /(?:^|[{[,])(\s*["']?[\w.-]+["']?:\s+[^,{}[\]"']+?)(\s+)([\w.-]+):(?=\s)/u;

function formSlip(line: BlockLine, inGroup: boolean): Slip | undefined {
  const { content, from } = line;
  const at = (says: string, mend: string, edit?: Change): Slip => ({
    from,
    to: from + content.length,
    says,
    mend,
    ...(edit ? { edit } : {}),
  });
  const put = (text: string): Change => ({ from, to: from + content.length, text });
  const dash = /^-([^\s-].*)$/u.exec(content);
  if (dash)
    return at(
      `\`${brief(content)}\` has no blank behind its dash.`,
      `Write \`- ${brief(dash[1] as string)}\`.`,
      put(`- ${dash[1]}`),
    );
  const bare = content.replace(/^- +/u, "");
  const pair = PAIR.exec(content);
  if (!pair && inGroup && !/^["'{[|>&*!?%@]/u.test(bare) && !content.startsWith("- ")) {
    const glued = /^([A-Za-z][\w.-]*):(\S.*)$/u.exec(bare);
    if (glued)
      return at(
        `\`${brief(bare)}\` has no blank behind its colon.`,
        `Write \`${glued[1]}: ${brief(glued[2] as string)}\`.`,
        put(`${glued[1]}: ${glued[2]}`),
      );
    const uncoloned = /^([A-Za-z][\w.-]*)(?:\s+(.+))?$/u.exec(bare);
    // A name of several words has its colon further on: `booth to rack-a: …`.
    if (uncoloned && !/:(?:\s|$)/u.test(bare)) {
      const better = `${uncoloned[1]}:${uncoloned[2] === undefined ? "" : ` ${uncoloned[2]}`}`;
      return at(`\`${brief(bare)}\` has no colon behind its key.`, `Write \`${brief(better)}\`.`, put(better));
    }
  }
  const value = pair?.[2] ?? (content.startsWith("- ") ? bare : "");
  const valueAt = from + content.length - value.length;
  if (/^[{[]/u.test(value)) return behindGroup(value, valueAt) ?? commaSlip(value, valueAt);
  if (/^["']/u.test(value)) return behindQuote(value, valueAt);
  if (/:(?:\s|$)/u.test(value) || /^[@`%&*!]/u.test(value)) {
    const quoted = `"${value.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`;
    return {
      from: valueAt,
      to: valueAt + value.length,
      says: /:(?:\s|$)/u.test(value)
        ? `The text \`${brief(value)}\` has a colon and a blank (\`: \`) in it, which makes a key of what stands before.`
        : `The text \`${brief(value)}\` begins with a sign that has another meaning here.`,
      mend: `Put it in quotes: \`${brief(quoted)}\`.`,
      edit: { from: valueAt, to: valueAt + value.length, text: quoted },
    };
  }
  return undefined;
}

function commaSlip(value: string, from: number): Slip | undefined {
  const found = NO_COMMA.exec(value);
  if (!found) return undefined;
  const end = from + found.index + found[0].length - (found[3] as string).length - 1 - (found[2] as string).length;
  return {
    from: end,
    to: end + (found[2] as string).length + (found[3] as string).length,
    says: `In front of \`${found[3]}:\` no comma stands.`,
    mend: `Write a comma there: \`…, ${found[3]}: …\`.`,
    edit: { from: end, to: end, text: "," },
  };
}

/** Braces and brackets that are closed on their line, and what stands behind the last of them. */
function behindGroup(value: string, from: number): Slip | undefined {
  let depth = 0;
  for (const mark of value.matchAll(/"(?:[^"\\]|\\.)*"|'(?:[^']|'')*'|[{}[\]]/gu)) {
    if (/^["']/u.test(mark[0])) continue;
    depth += /[{[]/u.test(mark[0]) ? 1 : -1;
    if (depth > 0) continue;
    const end = mark.index + 1;
    const rest = value.slice(end).trim();
    // One that closes nothing is told as such.
    if (rest === "" || /^[}\]]/u.test(rest)) return undefined;
    const change = { from: from + end, to: from + value.length, text: "" };
    return {
      from: from + value.length - rest.length,
      to: from + value.length,
      says: `Behind the closing \`${mark[0]}\` stands \`${brief(rest)}\`.`,
      mend: `Take it out, or write it before the \`${mark[0]}\`.`,
      ...(rest === "," ? { edit: change, sure: true as const } : {}),
    };
  }
  return undefined;
}

function behindQuote(value: string, from: number): Slip | undefined {
  const closed = /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')(\s*)(\S.*)$/u.exec(value);
  if (!closed) return undefined;
  const inner = value.replaceAll('"', "");
  return {
    from,
    to: from + value.length,
    says: `Behind the closing quote stands \`${brief(closed[2] as string)}\`.`,
    mend: "Put the whole text into one pair of quotes.",
    edit: { from, to: from + value.length, text: `"${inner}"` },
  };
}

/** `{conductor: #12, …}`: what stands behind the sign is a comment, with the brace that would close it. */
function cutSlip(text: string, { mark, cut }: LeftOpen): Slip | undefined {
  if (!cut) return undefined;
  const value = /^[^,}\]"']*/u.exec(cut.text)?.[0].trimEnd() ?? "";
  const key = /([\w.-]+):\s*$/u.exec(text.slice(0, cut.from))?.[1];
  const gauge = key === "conductor" ? /^#\s*(\d{1,2})$/u.exec(value)?.[1] : undefined;
  const better = gauge === undefined ? `"${value}"` : `${gauge} AWG`;
  return {
    from: cut.from,
    to: cut.from + value.length,
    says: `\`${brief(value)}\` stands behind a blank, and YAML takes what begins with a number sign for a comment: it is not read, and the \`${mark}\` before it stays open.`,
    mend:
      gauge === undefined
        ? `Put quotes around it: \`${better}\`.`
        : `Write \`${better}\`; a text with such a sign stands in quotes: \`"${value}"\`.`,
    edit: { from: cut.from, to: cut.from + value.length, text: better },
  };
}

function openSlip(text: string, { leftOpen, closesNothing }: Scanned): Slip | undefined {
  if (closesNothing) {
    const { mark, from } = closesNothing;
    return { from, to: from + 1, says: `\`${mark}\` closes nothing.`, mend: "Take it out, or write what opens it." };
  }
  if (!leftOpen) return undefined;
  const cut = cutSlip(text, leftOpen);
  if (cut) return cut;
  const { mark, from, lineEnd, closes } = leftOpen;
  const what = mark === '"' || mark === "'" ? "The quote" : mark === "{" ? "The brace" : "The bracket";
  const name = mark === '"' || mark === "'" ? "the same quote" : `\`${closes}\``;
  return {
    from,
    to: from + 1,
    says: `${what} \`${mark}\` is not closed.`,
    mend: `Write ${name} where it ends; on one line that is at the line's end.`,
    edit: { from: lineEnd, to: lineEnd, text: closes },
  };
}

/** The first slip in a text that cannot be read, by its lines; undefined where none of the usual ones is found. */
export function slipIn(text: string, from: number, to: number): Slip | undefined {
  const scanned = scanLines(text, from, to);
  const { lines } = scanned;
  const levels: number[] = [];
  for (const [index, line] of lines.entries()) {
    const slip = oddSlip(lines, index) ?? tabSlip(lines, index) ?? indentSlip(lines, index, levels);
    if (slip) return slip;
    while (levels.length > 0 && (levels.at(-1) as number) > line.indent) levels.pop();
    const inGroup = levels.at(-1) === line.indent || levels.length === 0;
    if (levels.at(-1) !== line.indent) levels.push(line.indent);
    const form = formSlip(line, inGroup);
    if (form) return form;
  }
  return openSlip(text, scanned);
}
