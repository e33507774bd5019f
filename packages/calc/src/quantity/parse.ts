import { awgArea, awgName, awgNumber } from "./awg.js";
import { type Kind, kinds } from "./kinds.js";
import { toKept, type Unit, units, unitsOf } from "./units.js";

/** A quantity as read: `value` in the unit its kind is kept in, `unit` as it was written. */
export interface Quantity {
  readonly kind: Kind;
  readonly value: number;
  readonly unit: Unit;
  /** The text it was read from. */
  readonly text: string;
}

export type Reading =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly found: string; readonly allowed: string };

/** Examples for messages, by kind. */
const EXAMPLES: Partial<Record<Kind, string>> = {
  length: "`11 ft`, `10 ft 6 in`, `3/8 in`, `500 mm`, `2.4 m`",
  mass: "`7.9 kg`, `186 lb`",
  current: "`20 A`, `3.5 mA`",
  voltage: "`120 V`",
  power: "`133 W`, `1.2 kW`",
  "apparent-power": "`140 VA`",
  conductor: "`12 AWG`, `2.5 mm2`",
  ratio: "`70 %`, `0.7`",
  "areal-load": "`125 lb/ft2`, `5 kN/m2`",
  "mass-per-length": "`0.25 kg/m`, `0.4 lb/ft`",
  angle: "`30 deg`",
  "data-rate": "`1 Gb/s`",
  frequency: "`60 Hz`",
};

const allowedFor = (wanted: readonly Kind[]): string =>
  wanted
    .map((kind) => {
      const names = kind === "conductor" ? ["AWG", "mm2"] : unitsOf(kind).map((unit) => unit.print || "no unit");
      const example = EXAMPLES[kind];
      return `${kinds[kind].name} in ${[...new Set(names)].join(", ")}${example ? `, such as ${example}` : ""}`;
    })
    .join("; or ");

const NUMBER = String.raw`\d+(?:[.]\d+)?(?:[eE][+-]?\d+)?|[.]\d+`;
// A unit is one word, a foot or inch mark, or one of the few names of two words.
const UNIT = String.raw`['"\u2032\u2033]|(?:short|long|metric) tons?|sq ft|lb/sq ft|per cent|k?N m|[^\s\d.,'"\u2032\u2033-][^\s'"\u2032\u2033]*`;
const PIECE = new RegExp(
  String.raw`^\s*(-)?\s*(?:(\d+)[\s-]+(\d+)\s*/\s*(\d+)|(\d+)\s*/\s*(\d+)|(${NUMBER}))\s*(${UNIT})?`,
  "u",
);

interface Piece {
  readonly number: number;
  readonly unit: string;
  readonly rest: string;
}

function piece(text: string): Piece | undefined {
  const match = PIECE.exec(text);
  if (!match) return undefined;
  const [whole, minus, mixed, above, below, numerator, denominator, plain, unit] = match;
  if (below === "0" || denominator === "0") return undefined;
  const size =
    mixed !== undefined
      ? Number(mixed) + Number(above) / Number(below)
      : numerator !== undefined
        ? Number(numerator) / Number(denominator)
        : Number(plain);
  return { number: minus ? -size : size, unit: (unit ?? "").trim(), rest: text.slice(whole.length) };
}

const fold = (text: string): string =>
  text.replaceAll("²", "2").replaceAll("³", "3").replaceAll("⁴", "4").replaceAll("·", ".").replace(/\s+/gu, " ").trim();

/** `MV` is a million volts and no slip for `mV`: a prefix is not guessed. `MM` can only mean millimetres. */
const isOtherPrefix = (unit: Unit, name: string): boolean => /^m(?:A|V|W|Ω)/u.test(unit.print) && name.startsWith("M");

/** A ton is 2,000 lb, 2,240 lb or 1,000 kg, and `T` is written for all of them: twelve per cent are not guessed. */
const TON = /^(?:T|ton|tons)$/iu;
const isAnyTon = (name: string, wanted: readonly Kind[]): boolean =>
  TON.test(name) && name !== "t" && wanted.some((kind) => kind === "mass" || kind === "force");
const TONS = "`short ton` (2,000 lb), `long ton` (2,240 lb) or `t` (1,000 kg)";

/** The same few units are written over and over; spellings are those of documents, so what is remembered has an end. */
const MOST = 2000;
const named = new Map<string, Unit | undefined>();

function unitNamed(spelling: string, wanted: readonly Kind[]): Unit | undefined {
  const key = `${wanted.join()} ${spelling}`;
  if (named.has(key)) return named.get(key);
  const found = unitSpelt(spelling, wanted);
  if (named.size >= MOST) named.clear();
  named.set(key, found);
  return found;
}

function unitSpelt(spelling: string, wanted: readonly Kind[]): Unit | undefined {
  const name = fold(spelling);
  const candidates = units.filter((unit) => wanted.includes(unit.kind));
  const exact = candidates.find(
    (unit) => fold(unit.print) === name || unit.spellings.some((other) => fold(other) === name),
  );
  if (exact) return exact;
  // Case is only forgiven where it cannot make another unit of it: `FT` is a foot, but `MW` is not `mW`.
  const lower = name.toLowerCase();
  const loose = candidates.filter((unit) =>
    [unit.print, ...unit.spellings].some((other) => fold(other).toLowerCase() === lower),
  );
  const [only] = loose;
  return loose.length === 1 && only && !isOtherPrefix(only, name) ? only : undefined;
}

const CONDUCTOR = /^\s*(?:#\s*)?(\d+(?:\/0)?)\s*(?:AWG|awg)\s*$/u;
const AWG_UNIT: Unit = { kind: "conductor", code: "AWG", factor: 1, print: "AWG", spellings: [], system: "us" };

function readConductor(text: string): Quantity | undefined {
  const match = CONDUCTOR.exec(text) ?? /^\s*AWG\s*(\d+(?:\/0)?)\s*$/iu.exec(text);
  const gauge = match ? awgNumber(match[1] as string) : undefined;
  return gauge === undefined
    ? undefined
    : { kind: "conductor", value: awgArea(gauge), unit: AWG_UNIT, text: `${awgName(gauge)} AWG` };
}

/** Kinds that may be written as a bare number, because they have no unit. */
const BARE: readonly Kind[] = ["ratio", "factor", "count", "pixels"];

/**
 * Reads one quantity of one of the `wanted` kinds as people write it: `11 ft`, `10 ft 6 in`, `14' 6"`, `3/8 in`,
 * `1-1/2 in`, `12 AWG`, `70 %`. Never throws; a text it cannot read says what was found and what may stand there.
 */
export function readQuantity(input: string | number, wanted: readonly Kind[]): Reading {
  const text = String(input).trim();
  const refuse = (found: string): Reading => ({ ok: false, found, allowed: allowedFor(wanted) });
  if (text.length > 80) return refuse(`a text of ${text.length} characters`);
  if (wanted.includes("conductor")) {
    const conductor = readConductor(text);
    if (conductor) return { ok: true, quantity: conductor };
  }
  const bare = wanted.find((kind) => BARE.includes(kind));
  let rest = text;
  let total = 0;
  let first: Unit | undefined;
  while (rest.trim() !== "") {
    const next = piece(rest);
    if (!next || (first && next.number < 0)) return refuse(`\`${text}\``);
    if (next.unit === "") {
      if (bare && !first && next.rest.trim() === "")
        return { ok: true, quantity: { kind: bare, value: next.number, unit: unitsOf(bare)[0] as Unit, text } };
      return refuse(`the bare number \`${text}\``);
    }
    if (isAnyTon(next.unit, wanted))
      return { ok: false, found: `\`${text}\`, and \`${next.unit}\` may be any of three tons`, allowed: TONS };
    const unit = unitNamed(next.unit, wanted);
    if (!unit) return refuse(unitElsewhere(next.unit, text));
    // Only feet and inches are written one after the other.
    if (first && !(first.kind === unit.kind && first.print === "ft" && unit.print === "in"))
      return refuse(`\`${text}\``);
    total += toKept(next.number, unit);
    first ??= unit;
    rest = next.rest;
  }
  if (!first) return refuse(text === "" ? "nothing" : `\`${text}\``);
  if (!Number.isFinite(total)) return refuse(`\`${text}\``);
  return { ok: true, quantity: { kind: first.kind, value: total, unit: first, text } };
}

function unitElsewhere(spelling: string, text: string): string {
  const other = unitNamed(spelling, Object.keys(kinds) as Kind[]);
  return other
    ? `\`${text}\`, which is ${kinds[other.kind].name}`
    : `\`${text}\`, whose unit \`${spelling}\` is not known`;
}

/** Reads `a x b` (also `×`): a pair of quantities of one kind, such as `500 mm x 500 mm` or `160 x 160`. */
export function readPair(
  input: string | number,
  wanted: readonly Kind[],
): { ok: true; pair: readonly [Quantity, Quantity] } | { ok: false; found: string; allowed: string } {
  const halves = String(input).split(/\s*[x×]\s*/u);
  const allowed = `two values joined by \`x\`, each ${allowedFor(wanted)}`;
  if (halves.length !== 2) return { ok: false, found: `\`${input}\``, allowed };
  const [left, right] = halves as [string, string];
  const second = readQuantity(right, wanted);
  if (!second.ok) return { ok: false, found: second.found, allowed };
  let one = readQuantity(left, wanted);
  // `500 x 500 mm`: the unit stands once.
  if (!one.ok) one = readQuantity(`${left} ${second.quantity.unit.print}`, wanted);
  if (!one.ok) return { ok: false, found: one.found, allowed };
  return { ok: true, pair: [one.quantity, second.quantity] };
}
