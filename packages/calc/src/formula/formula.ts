import type { Kind } from "../quantity/kinds.js";
import type { Print } from "../quantity/print.js";
import type { SourceId } from "../sources/index.js";
import { type OfKind, refuseOtherKind } from "./kind-check.js";
import { substitution } from "./substitution.js";
import { type Gap, gapsOf, type Known, missing, type Value } from "./value.js";

/** One input of a formula. */
export interface Input {
  readonly kind: Kind;
  /** What it is, in words. */
  readonly is: string;
  /** A list of values rather than one. */
  readonly many?: boolean;
  /** Range of validity, in the kept unit. */
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
}

export type Inputs = Readonly<Record<string, Input>>;

type Numbers<I extends Inputs> = {
  readonly [K in keyof I]: I[K] extends { readonly many: true } ? readonly number[] : number;
};
/** Values by the names of the inputs, of whatever kind. */
type Values<I extends Inputs> = {
  readonly [K in keyof I]: I[K] extends { readonly many: true } ? readonly Value[] : Value;
};
type Knowns<I extends Inputs> = {
  readonly [K in keyof I]: I[K] extends { readonly many: true } ? readonly Known[] : Known;
};

export interface Definition<I extends Inputs, K extends Kind = Kind> {
  /** Unique, `topic.name`. */
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly kind: K;
  readonly inputs: I;
  /** The right-hand side in the symbols of `inputs`, × ÷ − √ Σ as in a handbook. */
  readonly expression: string;
  readonly source: SourceId;
  /** Other sources that say the same. */
  readonly also?: readonly SourceId[];
  /** Where it holds. */
  readonly validity: string;
  /** A worked example, in kept (SI) units, from outside the project where one is published. */
  readonly example: {
    readonly given: Numbers<I>;
    readonly gives: number;
    readonly within: number;
    readonly from: string;
  };
  readonly compute: (numbers: Numbers<I>) => number;
  /** Puts the numbers in; by default every symbol of `expression` is replaced by its value. */
  readonly show?: (values: Knowns<I>, print: Print) => string;
}

export interface Formula<I extends Inputs = Inputs, K extends Kind = Kind> extends Definition<I, K> {
  /**
   * Applies the formula to values: missing inputs give a missing result, an input outside the validity does too.
   * @throws TypeError when an input is of another kind than its own
   */
  of<const V extends Values<I>>(
    values: V & { readonly [N in keyof I & keyof V]: OfKind<I[N]["kind"], V[N]> },
  ): Value<K>;
}

const listed = new Map<string, Formula>();

/** Every formula defined so far, by id; the register of formulas is printed from it. */
export const formulas = (): readonly Formula[] => [...listed.values()].sort((a, b) => (a.id < b.id ? -1 : 1));

const asList = (value: Value | readonly Value[]): readonly Value[] =>
  Array.isArray(value) ? (value as readonly Value[]) : [value as Value];

function outside(input: Input, value: number): string | undefined {
  if (!Number.isFinite(value)) return "is not a finite number";
  if (input.above !== undefined && value <= input.above) return `has to be above ${input.above}`;
  if (input.least !== undefined && value < input.least) return `has to be at least ${input.least}`;
  if (input.most !== undefined && value > input.most) return `has to be at most ${input.most}`;
  return undefined;
}

function outsideGaps(
  title: string,
  inputs: readonly (readonly [string, Input])[],
  values: Readonly<Record<string, Value | readonly Value[]>>,
): readonly Gap[] {
  const gaps: Gap[] = [];
  for (const [symbol, input] of inputs) {
    for (const value of asList(values[symbol] as Value)) {
      if (!value.known) continue;
      const problem = outside(input, value.value);
      if (problem)
        gaps.push({
          path: value.origin.from === "written" ? value.origin.path : "",
          what: input.is,
          because: `${title}: the ${input.is} ${problem}.`,
        });
    }
  }
  return gaps;
}

/** The plain numbers of known values. */
function numbersOf(
  inputs: readonly (readonly [string, Input])[],
  values: Readonly<Record<string, Known | readonly Known[]>>,
): Readonly<Record<string, number | readonly number[]>> {
  const numbers: Record<string, number | readonly number[]> = {};
  for (const [name] of inputs) {
    const value = values[name] as Known | readonly Known[];
    numbers[name] = Array.isArray(value)
      ? (value as readonly Known[]).map((each) => each.value)
      : (value as Known).value;
  }
  return numbers;
}

/**
 * Defines a formula: data plus one expression. The number, the shown working, the page of the register and a test
 * all come from this one object.
 */
export function formula<const I extends Inputs, const K extends Kind>(definition: Definition<I, K>): Formula<I, K> {
  const { id, symbol, kind, inputs, expression, source, title } = definition;
  const listedInputs = Object.entries(inputs);
  if (listed.has(id)) throw new Error(`formula ${id} is defined twice`);
  const substitute = substitution(expression, Object.keys(inputs));
  const made: Formula<I, K> = {
    ...definition,
    of(values) {
      const flat: Value[] = [];
      for (const [name, input] of listedInputs)
        for (const each of asList((values as Values<Inputs>)[name] as Value | readonly Value[])) {
          refuseOtherKind(each, input.kind, `${title}: the ${input.is}`);
          flat.push(each);
        }
      const outOfRange = outsideGaps(title, listedInputs, values as never);
      if (outOfRange.length > 0 || !flat.every((each) => each.known))
        return missing(kind, ...gapsOf(flat), ...outOfRange);
      const numbers = numbersOf(listedInputs, values as never) as Numbers<I>;
      const result = definition.compute(numbers);
      if (!Number.isFinite(result))
        return missing(kind, { path: "", what: title, because: `${title} has no finite value for these inputs.` });
      const knowns = values as unknown as Knowns<I>;
      const show = (print: Print): string => definition.show?.(knowns, print) ?? substitute(knowns as never, print);
      return {
        known: true,
        value: result,
        kind,
        origin: {
          from: "step",
          step: { formula: `${symbol} = ${expression}`, show, source, inputs: flat as readonly Known[] },
        },
      };
    },
  };
  listed.set(id, made as unknown as Formula);
  return made;
}
