import { GRAVITY, type Kind, type Known, marked, readQuantity } from "@plumbmark/calc";
import { asRead } from "../document/nothing-written.js";
import type { Data } from "../document/yaml/yaml.js";

/** Kinds that may be written for one another: what a point carries as a mass or as a force. */
const alsoAs = (kind: Kind): readonly Kind[] =>
  kind === "mass" || kind === "force"
    ? ["mass", "force"]
    : kind === "ratio" || kind === "voltage"
      ? ["ratio", "voltage"]
      : [kind];

/** A mass and a force are held against one another by the weight of the mass. */
const inOneKind = ({ value, kind }: Pick<Known, "value" | "kind">): readonly [number, Kind] =>
  kind === "force" ? [value / GRAVITY, "mass"] : [value, kind];

interface Figure {
  readonly value: number;
  readonly kind: Kind;
  /** One unit of the last digit that is written, in the unit its kind is kept in. */
  readonly step: number;
}

/** The last number of a text made greater by one unit of its last digit: `17 ft 10 in` → `17 ft 11 in`, `3/8 in` → `4/8 in`. */
function nextUp(text: string): string {
  const fraction = /(\d+)\/(\d+)(?=\D*$)/u.exec(text);
  if (fraction)
    return `${text.slice(0, fraction.index)}${Number(fraction[1]) + 1}/${fraction[2]}${text.slice(fraction.index + fraction[0].length)}`;
  // The figure of a unit, such as that of `ft2`, is none of the value.
  const number = [...text.matchAll(/(?<![A-Za-zΩµ²³/.\d])\d[\d,]*(?:\.\d+)?/gu)].at(-1);
  if (!number) return text;
  const [found] = number;
  const decimals = found.split(".")[1]?.length ?? 0;
  const next = (Number(found.replaceAll(",", "")) + 10 ** -decimals).toFixed(decimals);
  return `${text.slice(0, number.index)}${next}${text.slice(number.index + found.length)}`;
}

function figureOf(data: string | number, kinds: readonly Kind[]): Figure | undefined {
  const text = marked(String(data)).text;
  const [is, next] = [text, nextUp(text)].map((each) => readQuantity(each, kinds));
  if (!is?.ok) return undefined;
  const [value, kind] = inOneKind(is.quantity);
  const step = next?.ok ? Math.abs(inOneKind(next.quantity)[0] - value) : 0;
  return { value, kind, step };
}

/**
 * Whether two texts say the same quantity, to the precision the coarser of them is written with: half a unit of its last
 * digit. A bound agrees with what lies within it; a guess contradicts nothing.
 */
export function quantitiesAgree(own: string | number, stated: string | number, kind: Kind): boolean {
  const kinds = alsoAs(kind);
  const [one, other] = [figureOf(own, kinds), figureOf(stated, kinds)];
  const { sure } = typeof own === "string" ? marked(own) : { sure: undefined };
  // What cannot be read is told where it stands.
  if (!one || !other || sure === "guess") return true;
  if (one.kind !== other.kind) return false;
  const slip = Math.max(one.step, other.step) / 2 + 1e-9 * Math.max(Math.abs(one.value), Math.abs(other.value));
  if (sure === "at most") return other.value <= one.value + slip;
  if (sure === "at least") return other.value >= one.value - slip;
  return Math.abs(one.value - other.value) <= slip;
}

/** Both halves of `8 ft x 4 ft`. */
const halves = (text: string): readonly string[] => text.split(/\s*[x×]\s*/u);

/** Whether what a build writes and what the survey states are the same thing. @param kind of the quantity it is, if it is one */
export function agree(own: Data, stated: Data, kind: Kind | undefined): boolean {
  const isPlain = (data: Data): data is string | number => typeof data === "string" || typeof data === "number";
  if (kind !== undefined && isPlain(own) && isPlain(stated)) {
    const [mine, theirs] = [halves(String(own)), halves(String(stated))];
    return mine.length === theirs.length && mine.every((half, at) => quantitiesAgree(half, theirs[at] ?? "", kind));
  }
  if (isPlain(own) && isPlain(stated)) return asRead(String(own)) === asRead(String(stated));
  return JSON.stringify(own) === JSON.stringify(stated);
}
