import { nearest } from "../document/nearest.js";
import { frontMatterOf } from "../document/yaml/front-matter.js";
import { type Data, readYaml } from "../document/yaml/yaml.js";

/** Above this nobody writes a front matter by hand; what stands below is not looked at. */
const FARTHEST = 200_000;

/** Keys that nothing but a build document has. */
const OF_A_BUILD = ["faces", "power", "rigging", "picture", "prepared-by", "approved-by", "approved", "on-site"];

/** A line that begins with the key, in capitals or quotes, indented or in braces. */
const KEY_LINE = /^[ \t]*\{?[ \t]*["']?build["']?[ \t]*:/iu;

const hasKeyLine = (lines: readonly string[]): boolean => lines.some((line) => KEY_LINE.test(line));

/** Lines until the front matter ends, or those it might be in. */
function head(text: string): readonly string[] {
  const lines = text.slice(0, FARTHEST).split(/\r\n|\n|\r/u);
  const end = lines.findIndex((line, index) => index > 0 && /^---[ \t]*$/u.test(line));
  return end < 0 ? lines.slice(0, 500) : lines.slice(0, end);
}

const isGroup = (data: Data): data is Readonly<Record<string, Data>> =>
  typeof data === "object" && data !== null && !Array.isArray(data);

/** A key that was meant to be `build`: in capitals, or with a letter too many, too few or in the wrong place. */
function isMeantKey(key: string, others: readonly string[]): boolean {
  if (key.trim().toLowerCase() === "build") return true;
  // Many words are a letter away from it: what else is written has to tell.
  return (
    key.length >= 4 &&
    key.length <= 6 &&
    nearest(key.trim(), ["build"]) === "build" &&
    others.some((other) => OF_A_BUILD.includes(other) || other === "status")
  );
}

/** What a Markdown file is, as far as its front matter tells: a build document, one that was meant to be, or neither. */
export function documentKind(text: string): "build" | "meant" | "other" {
  const bare = text.replace(/^\uFEFF/u, "");
  const front = frontMatterOf(text);
  if (!front) {
    // A fence that nothing closes, one below empty lines, or none at all: still meant as a front matter.
    const lines = head(bare.trimStart());
    const [first = ""] = lines;
    return /^---[ \t]*$/u.test(first)
      ? hasKeyLine(lines)
        ? "meant"
        : "other"
      : KEY_LINE.test(first)
        ? "meant"
        : "other";
  }
  const yaml = text.slice(front.from, front.to);
  // Most are told so: reading all of a front matter takes longer than looking for the key at the margin.
  if (/^build[ \t]*:/mu.test(yaml)) return "build";
  if (front.to - front.from > FARTHEST) return "other";
  const { data, mistakes } = readYaml(yaml);
  if (mistakes.length > 0 || data === null) return hasKeyLine(yaml.split(/\r\n|\n|\r/u)) ? "meant" : "other";
  if (!isGroup(data)) return "other";
  const keys = Object.keys(data);
  if (keys.includes("build")) return "build";
  const others = (key: string): readonly string[] => keys.filter((each) => each !== key);
  if (keys.some((key) => isMeantKey(key, others(key)))) return "meant";
  return keys.includes("faces") || keys.filter((key) => OF_A_BUILD.includes(key)).length > 1 ? "meant" : "other";
}

/**
 * Whether a Markdown file is a build document, or was meant to be one: told from its front matter as it is read, however
 * that is indented, braced or quoted, and from what stands there where it cannot be read.
 */
export const isBuildDocument = (text: string): boolean => documentKind(text) !== "other";
