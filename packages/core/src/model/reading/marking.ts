import { GRAVITY, unitByCode } from "@plumbmark/calc";
import { written } from "../../document/nothing-written.js";
import type { Data } from "../../document/yaml/yaml.js";

const POUND = unitByCode("mass", "[lb_av]").factor;
const SHORT_TON = 2000 * POUND;

/** A figure of a marking with its unit: `1000 LB`, `3-1/4 T`, `1/2 T`, `4.75 t`, `1,000 lbs`. */
const FIGURE =
  /(?<![\d/.,])(?:(?:(\d{1,6})[\s-]{1,2})?(\d{1,3})\/(\d{1,3})|(\d{1,3}(?:,\d{3})+|\d{1,6}(?:[.,]\d{1,3})?))\s?(lbs?|kgs?|kn|tons?|t)(?![\p{L}\p{N}])/giu;

/** A comma before three digits parts thousands; any other is a decimal point. */
const plain = (text: string): number =>
  Number(/^\d+(?:,\d{3})+$/u.test(text) ? text.replaceAll(",", "") : text.replace(",", "."));

/** Kilograms of a unit as makers stamp it: in us practice T and TON are short tons, a small `t` is a tonne everywhere. */
function kilogramsOf(unit: string, practice: "us" | "iec"): number {
  const small = unit.toLowerCase();
  if (small.startsWith("lb")) return POUND;
  if (small.startsWith("kg")) return 1;
  if (small === "kn") return 1000 / GRAVITY;
  return unit === "t" || practice === "iec" ? 1000 : SHORT_TON;
}

/** What is stamped on a piece of hardware or written on its tag. */
export interface Marking {
  /** As it reads. */
  readonly text: string;
  /** The load it names, in kilograms: the one after `WLL`, else the last; undefined where it names none. */
  readonly load: number | undefined;
}

/** A marking of the catalogue; undefined where nothing is written. */
export function markingOf(data: Data | undefined, practice: "us" | "iec"): Marking | undefined {
  const text = written(data);
  if (text === undefined) return undefined;
  const after = /(?:wll|swl)(.*)$/iu.exec(text)?.[1];
  const found = after === undefined ? undefined : [...after.matchAll(FIGURE)][0];
  const [, whole, over, under, figure, unit = ""] = found ?? [...text.matchAll(FIGURE)].at(-1) ?? [];
  const count = figure === undefined ? Number(whole ?? 0) + Number(over) / Number(under) : plain(figure);
  const load = count * kilogramsOf(unit, practice);
  return { text, load: Number.isFinite(load) && load > 0 ? load : undefined };
}
