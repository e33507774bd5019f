import { type Kind, readPair } from "@plumbmark/calc";
import { type Advice, isThree, kindNames, reads, standInFor, twoEnds, unitsFor } from "./advice.js";

/** Widths of rasters that are named by their lines, 16 to 9. */
const RASTERS: Readonly<Record<string, number>> = { 720: 1280, 1080: 1920, 1440: 2560, 2160: 3840 };

/** The same where two values joined by `x` belong. */
export function adviceForPair(input: string | number, wanted: readonly Kind[], problem: string): Advice {
  const text = String(input).trim();
  const found = `\`${text}\``;
  const joined = text.replace(/\s*[,;*]\s*|\s+by\s+/u, " x ");
  if (joined !== text && readPair(joined, wanted).ok)
    return {
      found,
      mend: `Write \`${joined}\`: two values joined by \`x\`.`,
      better: joined,
      // `1,080` alone is one number of four digits or two numbers.
      sure: !/\d,\d/u.test(text),
    };
  const points = text.replace(/(?<=\d),(?=\d)/gu, ".");
  if (points !== text && readPair(points, wanted).ok)
    return { found, mend: `Write \`${points}\`: a decimal has a point.`, better: points, sure: !isThree(text) };
  if (reads(text, wanted))
    return {
      found: `${found}, and two values belong here`,
      mend: `Write both, joined by \`x\`, such as \`${text} x ${text}\`.`,
      standIn: `${text} x ${text}`,
    };
  const units = unitsFor(wanted);
  const [, lines] = /^(\d{3,4})[pi]$/iu.exec(text) ?? [];
  const wide = lines === undefined ? undefined : RASTERS[lines];
  if (wide !== undefined && units[0] === "px") {
    const better = `${wide} x ${lines}`;
    return { found, mend: `Write \`${better}\`.`, better };
  }
  const such = units[0] === undefined ? "`160 x 160`" : `\`500 ${units.at(-1)} x 500 ${units.at(-1)}\``;
  const one = standInFor(wanted);
  return { found: problem, mend: `Write two values joined by \`x\`, such as ${such}.`, standIn: `${one} x ${one}` };
}

/** The same where two ends joined by `to` belong. */
export function adviceForRange(input: string | number, wanted: readonly Kind[], problem: string): Advice {
  const text = String(input).trim();
  const ends = twoEnds(text, wanted);
  if (ends) {
    const better = `${ends[0]} to ${ends[1]}`;
    return { found: `\`${text}\``, mend: `Write \`${better}\`.`, better, sure: true };
  }
  if (reads(text, wanted))
    return {
      found: `\`${text}\`, and two ends belong here`,
      mend: `Write both ends, joined by \`to\`; for one value only, \`${text} to ${text}\`.`,
      standIn: `${text} to ${text}`,
    };
  const one = standInFor(wanted);
  return {
    found: problem,
    mend: `Write two ends joined by \`to\`, each ${kindNames(wanted)}.`,
    standIn: `${one} to ${one}`,
  };
}
