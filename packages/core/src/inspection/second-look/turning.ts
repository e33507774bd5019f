import {
  fromKept,
  type Kind,
  printNumber,
  printQuantity,
  readQuantity,
  siUnit,
  type Unit,
  unitFor,
} from "@plumbmark/calc";
import { fieldsAt } from "../../document/field.js";
import { plausibleEnds } from "../../document/plausible.js";
import type { Data } from "../../document/yaml/yaml.js";
import { type Attempted, TURNS, type Turns, turningValue } from "../../findings/turns.js";
import { buildSchema } from "../../generated/schemas.js";
import type { CheckEntry, TurnsAtEntry } from "../record.js";

/** What the checks of a rule come to with a figure in place of the one that is written. */
export type Attempt = (rule: string, path: string, figure: Data) => readonly CheckEntry[];

/** A figure of a document: its kind and unit, and what it may be. */
interface Figure {
  readonly kind: Kind | undefined;
  readonly unit: Unit | undefined;
  readonly ends: readonly [number, number];
  readonly written: number | undefined;
}

/** What else stands at the path of a figure: the value it has, and what the document is written in. */
export interface Written {
  readonly known: (path: string) => { readonly value: number; readonly kind: Kind; readonly unit?: Unit } | undefined;
  readonly whole: (path: string) => number | undefined;
  readonly system: "us" | "metric";
}

function figureAt(path: string, { known, whole, system }: Written): Figure | undefined {
  const fields = fieldsAt(buildSchema, path);
  const field = fields.find(({ quantity }) => quantity !== undefined);
  const written = known(path);
  if (field) {
    const kind = written?.kind ?? ([field.quantity].flat()[0] as Kind);
    const range = field.plausible as readonly [string, string] | undefined;
    const ends = range ? plausibleEnds(kind, range) : ([0, kind === "ratio" ? 1 : Number.NaN] as const);
    return { kind, unit: written?.unit ?? unitFor(ends[1] || 1, kind, system), ends, written: written?.value };
  }
  const count = fields.find(({ type }) => type === "integer");
  if (!count) return undefined;
  const [least, most] = [Number(count.minimum ?? 0), Number(count.maximum ?? 1000)];
  return { kind: undefined, unit: undefined, ends: [least, most], written: whole(path) };
}

/** Three figures of a number, in the unit it is printed in: `212 ft`, `0.45 m`. */
function stepOf(kept: number, unit: Unit): number {
  const size = Math.abs(fromKept(kept, unit)) || 1;
  return Math.abs(unit.factor) * 10 ** (Math.floor(Math.log10(size)) - 2);
}

const overOf = ({ measured, allowed }: CheckEntry): number | undefined => {
  if (measured === undefined || allowed?.value === undefined) return undefined;
  return allowed.sense === "at least" ? allowed.value - measured.value : measured.value - allowed.value;
};

/** A check holds or fails; what is open or not made says nothing of the figure. */
const trialOf = (check: CheckEntry | undefined): Attempted | undefined => {
  if (check === undefined || (check.outcome !== "holds" && check.outcome !== "fails")) return undefined;
  const over = overOf(check);
  return { holds: check.outcome === "holds", ...(over === undefined ? {} : { over }) };
};

/** The figure alone is what is missing, or nothing is: where several are missing nothing is claimed. */
const isAlone = (check: CheckEntry, { path }: Turns): boolean =>
  check.outcome === "fails" || (check.outcome === "open" && check.missing?.length === 1 && check.missing[0] === path);

/** Nothing, for what no formula takes a nought of. */
const NEXT_TO_NOTHING = 1e-6;

/** At which value of the figure its rule names a check would come out otherwise; undefined where that cannot be told. */
export function turnsAt(
  check: CheckEntry,
  index: number,
  written: Written,
  attempt: Attempt,
): TurnsAtEntry | undefined {
  const turns = check[TURNS];
  if (!turns || !isAlone(check, turns)) return undefined;
  const figure = figureAt(turns.path, written);
  if (!figure) return undefined;
  const { unit, kind, ends } = figure;
  const [least, most] = ends;
  const same = (one: CheckEntry): boolean => one.rule === check.rule && one.at.path === check.at.path;
  const textOf = (value: number): Data =>
    unit && kind ? `${Number(fromKept(value, unit).toPrecision(12))} ${unit.print}`.trim() : value;
  const tried = (value: number): Attempted | undefined =>
    trialOf(attempt(check.rule, turns.path, textOf(value)).filter(same)[index]);
  const known = figure.written;
  const low = Math.max(least, (known ?? (Number.isFinite(most) ? most : 1)) * NEXT_TO_NOTHING);
  const high = Number.isFinite(most) ? most : (known ?? 1) * 1000;
  const start = known ?? (turns.sense === "at most" ? high : low);
  const first = known === undefined ? undefined : trialOf(check);
  const value = turningValue({
    sense: turns.sense,
    from: start,
    to: turns.sense === "at most" ? (kind ? low : least) : high,
    ...(first ? { first } : {}),
    whole: kind === undefined,
    step: (each) => (unit ? stepOf(each, unit) : 1),
    attempt: tried,
  });
  if (value === undefined) return undefined;
  return {
    path: turns.path,
    sense: turns.sense,
    value: Number(value.toPrecision(9)),
    unit: kind ? siUnit(kind) : "{count}",
    text: unit && kind ? printed(value, kind, unit) : printNumber(value, 16),
    ...(turns.asks ? { asks: turns.asks } : {}),
  };
}

/** Printed so that it reads back as what it was. */
function printed(value: number, kind: Kind, unit: Unit): string {
  const text = printQuantity(value, kind, "metric", unit, 6);
  const read = readQuantity(text.replaceAll(",", "").replace("−", "-"), [kind]);
  return read.ok ? text : `${Number(fromKept(value, unit).toPrecision(6))} ${unit.print}`;
}
