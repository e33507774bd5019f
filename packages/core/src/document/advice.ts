import { type Kind, kinds, readQuantity, unitsOf } from "@plumbmark/calc";
import { nearest } from "./nearest.js";

/** What was found where a quantity belongs, what to write, and, where only one thing can be meant, that thing. */
export interface Advice {
  readonly found: string;
  readonly mend: string;
  readonly better?: string;
  /** Nothing else can be meant: it can be written without asking. */
  readonly sure?: boolean;
  /** What else could be meant. */
  readonly offers?: readonly string[];
  /** Something that could stand there. */
  readonly standIn?: string;
}

/** Units people write a kind in, the usual first; of other kinds the first few of the table. */
const USUAL: Partial<Record<Kind, readonly string[]>> = {
  length: ["ft", "in", "m", "mm"],
  mass: ["kg", "lb"],
  force: ["kN", "lbf"],
  current: ["A"],
  voltage: ["V"],
  power: ["W"],
  "apparent-power": ["VA"],
  conductor: ["AWG", "mm2"],
  ratio: ["%"],
  "areal-load": ["kN/m2", "lb/ft2"],
  "mass-per-length": ["kg/m", "lb/ft"],
  angle: ["deg"],
  "data-rate": ["Gb/s", "Mb/s"],
  frequency: ["Hz"],
  "colour-depth": ["bit"],
  luminance: ["cd/m2"],
  illuminance: ["lx"],
  time: ["s", "min", "h"],
  temperature: ["°C", "°F"],
  loss: ["dB"],
};

export const unitsFor = (wanted: readonly Kind[]): readonly string[] =>
  wanted.flatMap((kind) => {
    const listed = unitsOf(kind)
      .map(({ print }) => print)
      .filter((print) => print !== "");
    return USUAL[kind] ?? listed.slice(0, 4);
  });

/** Units people write a kind of quantity in, the usual first. */
export const usualUnits = (kind: Kind): readonly string[] => unitsFor([kind]);

const either = (texts: readonly string[]): string =>
  texts.length > 1 ? `${texts.slice(0, -1).join(", ")} or ${texts.at(-1)}` : (texts[0] ?? "");

const quoted = (texts: readonly string[]): string => either(texts.map((text) => `\`${text}\``));

/** `a length in ft, in, m or mm` */
export const kindNames = (wanted: readonly Kind[]): string => {
  const units = unitsFor(wanted);
  const names = either(wanted.map((kind) => kinds[kind].name));
  return units.length === 0 ? names : `${names} in ${either(units)}`;
};

/** `such as `11 ft`` with the number that was written, so that only its unit has to be looked at. */
const withUnits = (number: string, wanted: readonly Kind[]): string =>
  quoted(unitsFor(wanted).map((unit) => `${number} ${unit}`));

const CUSTOMARY: ReadonlySet<string> = new Set(["ft", "in", "lb", "lbf", "AWG", "lb/ft2", "lb/ft", "°F"]);

/** Some quantity of a kind, in a unit that is usual where the practice is. */
export function standInFor(wanted: readonly Kind[], practice?: "us" | "iec"): string {
  const units = unitsFor(wanted);
  const one = practice === "iec" ? units.find((unit) => !CUSTOMARY.has(unit)) : undefined;
  return `10 ${one ?? units[0] ?? ""}`.trim();
}

export const reads = (text: string, wanted: readonly Kind[]): boolean => readQuantity(text, wanted).ok;

const NUMBER = String.raw`-?\d+(?:\.\d+)?`;

/** `1,000 lb` and `1 000 lb`. */
const thousands = (text: string): string | undefined =>
  /^-?\d{1,3}(?:[,\u00a0\u202f '’]\d{3})+(?![\d,])/u.test(text)
    ? text.replace(/(?<=\d)[,\u00a0\u202f '’](?=\d{3}(?!\d))/gu, "")
    : undefined;

const decimal = (text: string): string | undefined =>
  /^-?\d+,\d+(?![,\d])/u.test(text) ? text.replace(",", ".") : undefined;

/** A comma before exactly three digits: a decimal, or a mark between thousands. */
export const isThree = (text: string): boolean => /,\d{3}(?!\d)/u.test(text);

function ofComma(text: string, wanted: readonly Kind[]): Advice | undefined {
  const found = `\`${text}\``;
  const [whole, point] = [thousands(text), decimal(text)];
  if (whole !== undefined && reads(whole, wanted) && !/^-?0/u.test(text)) {
    const other = text.includes(",") && point !== undefined ? `, or \`${point}\` if a decimal is meant` : "";
    const offers = point !== undefined && reads(point, wanted) ? [point] : [];
    // A comma before exactly three digits may be either mark; a blank or an apostrophe is none of a decimal.
    const sure = !text.includes(",");
    return {
      found,
      mend: `Write \`${whole}\`, without a mark between thousands${other}.`,
      better: whole,
      sure,
      offers,
    };
  }
  if (point !== undefined && reads(point, wanted))
    return { found, mend: `Write \`${point}\`: a decimal has a point.`, better: point, sure: !isThree(text) };
  return undefined;
}

/** A text as it would be written with the signs a keyboard has: minus, digits and fractions of their own, units of a shop. */
function asTyped(text: string): string {
  return text
    .replace(/(?<=\d)\s*(?=[¼½¾⅐-⅞])/gu, " ")
    .normalize("NFKC")
    .replace(/\u2044/gu, "/")
    .replace(/^\s*[\u2010-\u2015\u2212]\s*/u, "-")
    .replace(/(?<=\d)\s*#$/u, " lb")
    .replace(/^#\s*(\d{1,2}(?:\/0)?)$/u, "$1 AWG")
    .replace(/^(\d{1,2}(?:\/0)?)\s*(?:gauge|ga\.?)$/iu, "$1 AWG")
    .replace(/(?<=\d)\s*fps$/iu, " Hz");
}

/** What stands round a value that can be read: a word for nearly, a span, a remark. */
const AROUND: readonly (readonly [form: RegExp, what: string])[] = [
  [/^(?:~|≈|ca\.?|approx\.?|approximately|about|circa)\s*(.+)$/iu, "a word for nearly"],
  [/^(.+?)\s*(?:±|\+\/-|\+-).*$/u, "a span behind it"],
  [/^(.+?)\s*(?:\/\/|--|\().*$/u, "a remark behind it"],
];

function ofSigns(text: string, wanted: readonly Kind[]): Advice | undefined {
  const typed = asTyped(text);
  if (typed !== text && reads(typed, wanted))
    return { found: `\`${text}\``, mend: `Write \`${typed}\`.`, better: typed };
  for (const [form, what] of AROUND) {
    const value = form.exec(text)?.[1];
    if (value === undefined || !reads(value, wanted)) continue;
    const other = what.includes("remark") ? `\`${value} # as measured\`` : `as a guess, \`${value} ?\``;
    const mend = `Write \`${value}\`; ${what.includes("remark") ? "a remark stands behind a blank and a number sign" : "where it is not sure"}: ${other}.`;
    return { found: `\`${text}\`, with ${what}`, mend, standIn: value, offers: [value, `${value} ?`] };
  }
  return undefined;
}

/** `2.5 tons` in pounds and tonnes, whichever ton was meant. */
function ofTons(text: string): Advice | undefined {
  const [, number, unit] = new RegExp(`^(${NUMBER}|\\d+/\\d+)\\s*(T|tons?)$`, "iu").exec(text) ?? [];
  if (number === undefined || unit === "t") return undefined;
  const [over, under = "1"] = number.split("/");
  const size = Number(over) / Number(under);
  const ways = [`${number} short ton`, `${number} long ton`, `${number} t`];
  return {
    found: `\`${text}\`, and \`${unit}\` may be any of three tons`,
    mend: `Write which: \`${ways[0]}\` (${size * 2000} lb), \`${ways[1]}\` (${size * 2240} lb) or \`${ways[2]}\` (${size * 1000} kg).`,
    offers: ways,
    standIn: ways[2] as string,
  };
}

/** The two ends of `100-240 V`, `100…240 V` or `100 V to 240 V`. */
export function twoEnds(text: string, wanted: readonly Kind[]): readonly [string, string] | undefined {
  const match = new RegExp(
    String.raw`^(${NUMBER})\s*([^\d\s–…-][^\d]*?)?\s*(?:-|–|—|…|\.\.+|to)\s*(${NUMBER})\s*(\D+)$`,
    "u",
  ).exec(text);
  if (!match) return undefined;
  const [, low, own, high, unit] = match as unknown as [string, string, string | undefined, string, string];
  const ends = [`${low} ${(own ?? unit).trim()}`, `${high} ${unit.trim()}`] as const;
  return ends.every((end) => reads(end, wanted)) ? ends : undefined;
}

/** What to write instead of a text that is no quantity of the wanted kinds. */
export function adviceFor(input: string | number, wanted: readonly Kind[], problem: string): Advice {
  const text = String(input).trim();
  const comma = ofComma(text, wanted) ?? ofSigns(text, wanted) ?? ofApparent(text, wanted);
  if (comma) return comma;
  const tons = wanted.some((kind) => kind === "mass" || kind === "force") ? ofTons(text) : undefined;
  if (tons) return tons;
  const [, share] = new RegExp(`^(${NUMBER})\\s*%$`, "u").exec(text) ?? [];
  if (share !== undefined && wanted.includes("factor")) {
    const better = String(Number(share) / 100);
    return { found: problem, mend: `Write \`${better}\`.`, better };
  }
  const ends = twoEnds(text, wanted);
  if (ends)
    return {
      found: `\`${text}\`, and one value belongs here`,
      mend: `Write one value: the one that is there, such as \`${ends[0]}\` or \`${ends[1]}\`.`,
      offers: ends,
      standIn: ends[0],
    };
  const bare = new RegExp(`^${NUMBER}$`, "u").test(text);
  const standIn = standInFor(wanted);
  if (bare)
    return {
      found: `\`${text}\`, without a unit`,
      mend: `Write its unit behind it: ${withUnits(text, wanted)}.`,
      // Nobody knows which unit was meant: whoever chooses one makes it a guess, which counts for nothing until it is sure.
      offers: unitsFor(wanted).map((unit) => `${text} ${unit} ?`),
      standIn: `${text} ${unitsFor(wanted)[0] ?? ""}`.trim(),
    };
  const [, number, unit] = new RegExp(`^(${NUMBER})\\s*(\\S.*)$`, "u").exec(text) ?? [];
  if (number !== undefined && unit !== undefined) {
    const near = nearest(unit, unitsFor(wanted));
    if (near !== undefined && reads(`${number} ${near}`, wanted) && problem.includes("not known"))
      return { found: problem, mend: `Write \`${number} ${near}\`.`, better: `${number} ${near}` };
  }
  return { found: problem, mend: `Write ${kindNames(wanted)}.`, standIn };
}

/** Watts where volt-amperes belong: how many those are nobody can tell without a power factor. */
function ofApparent(text: string, wanted: readonly Kind[]): Advice | undefined {
  if (wanted.length !== 1 || wanted[0] !== "apparent-power" || !reads(text, ["power"])) return undefined;
  return {
    found: `\`${text}\`, and watts are volt-amperes only at a power factor of 1`,
    mend: "Write kVA or VA as the plate has it: watts ÷ the power factor on the plate.",
    standIn: text.replace(/W$/u, "VA"),
  };
}
