import {
  anyBalance,
  type Balances,
  type BarCase,
  type Beam,
  balanceReaction,
  GRAVITY,
  heaviestCase,
  type Known,
  lengthErrors,
  loadMiddleValue,
  type Missing,
  missing,
  momentValue,
  mostBentCase,
  shearValue,
  unlevelReaction,
  type Value,
} from "@plumbmark/calc";
import { written } from "../../document/nothing-written.js";
import { settingWord } from "../reading/setting-text.js";
import type { Bar } from "./bar.js";
import { beamsOf } from "./bar-loads.js";
import type { Hang } from "./hang.js";

/** What one hang carries at worst. */
export interface WorstCase {
  /** The hang it is about. */
  readonly hang: Hang;
  /** What it carries then, as a mass. */
  readonly reaction: Value<"mass">;
  /** The case that governs in words, ` with only H1 and H3 taut`; empty where it is the level bar. */
  readonly when: string;
}

/** How a bar is bent at worst. */
export interface WorstMoment {
  /** The greatest bending moment, either way. */
  readonly moment: Value<"moment">;
  /** The case that governs in words; empty where it is the level bar. */
  readonly when: string;
}

/** What the hangs of a bar carry and how it is bent at worst, over every case that counts. */
export type BarCases =
  | {
      readonly known: true;
      /** Worst of every hang, in their order from the left. */
      readonly worst: readonly WorstCase[];
      readonly bending: { readonly moment: Known<"moment">; readonly when: string; readonly bent: BarCase["bent"] };
      /** The greatest shear either way, as a mass. */
      readonly shear: Known<"mass">;
      /** Every case, with the loads it is about. */
      readonly all: readonly Solved[];
    }
  | Missing;

/** A case and the loads it is about: what has no place of its own is tried at several. */
interface Solved {
  readonly found: BarCase;
  readonly beam: Beam;
}

/** Whether a bar hangs still: the middle of all it carries lies between its outer hangs. Missing where it cannot be told. */
export type Stillness = { readonly known: true; readonly still: boolean; readonly because: string } | Missing;

/** How far ends of ropes are written to be off level, and the stiffness that asks for; undefined: every balance counts. */
function levelling(bar: Bar): { readonly within: number; readonly EI: number } | undefined {
  const { reader } = bar.build;
  if (settingWord(bar.build, "rigging.slack-hang", "cases") !== "length-error") return undefined;
  const within = reader.optional(`${bar.path}.levelled.within`, "length", "how level the ropes are", bar.label);
  const by = written(reader.data(`${bar.path}.levelled.by`));
  const { elasticity: E, secondMoment: I } = bar.section;
  if (!within?.known || by === undefined || !E.known || !I.known) return undefined;
  // Loads of the beam are kilograms, so E × I is counted in kg·m².
  return { within: within.value, EI: (E.value * 1e6 * I.value) / GRAVITY };
}

const balancesOf = (bar: Bar, beam: Beam): Balances => {
  const level = levelling(bar);
  return level ? lengthErrors(beam, level.EI, level.within) : anyBalance(beam);
};

/** Whether the bar hangs still wherever its loads without a place may be. */
export function stillness(bar: Bar): Stillness {
  const { hanging } = bar;
  if (!hanging.known) return hanging;
  try {
    for (const beam of beamsOf(bar, hanging.beam)) {
      const found = anyBalance(beam);
      if (!found.still) return { known: true, still: false, because: found.because };
    }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return missing("mass", { path: bar.path, what: "reactions", because: `${bar.label}: ${error.message}.` });
  }
  return { known: true, still: true, because: "" };
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

/** The case in words; nothing where all hangs are taut and level. */
function wordsOf(bar: Bar, { found, beam }: Solved): string {
  const { order, beam: level } = bar.hanging as Extract<Bar["hanging"], { readonly known: true }>;
  const names = (of: readonly number[]): string => listed(of.map((index) => (order[index] as Hang).name));
  const moved =
    bar.unplaced.length === 0 || beam === level ? "" : ", and what has no place on the bar at its worst place";
  if (found.errors) {
    if (found.errors.every((each) => each === 0)) return moved;
    const high = found.errors.flatMap((each, index) => (each > 0 ? [index] : []));
    const short =
      high.length === 0 || high.length === order.length
        ? ""
        : ` with ${names(high)} short and the others long by the error of levelling`;
    return `${short}${moved}`;
  }
  return order.length < 3 ? moved : ` with only ${names(found.taut)} taut${moved}`;
}

function reactionOf(bar: Bar, hang: number, { found, beam }: Solved): Known<"mass"> {
  const { order, inputs } = bar.hanging as Extract<Bar["hanging"], { readonly known: true }>;
  if (!found.taut.includes(hang))
    return { known: true, value: 0, kind: "mass", origin: { from: "counted", what: "a hang that carries nothing" } };
  const names = order.map(({ name }) => name);
  if (found.errors) return unlevelReaction(found, hang, inputs, names);
  const other = found.taut.find((each) => each !== hang) ?? (hang === 0 ? order.length - 1 : 0);
  const [xk, xo] = [order[hang], order[other]].map((each) => (each as Hang).at) as [Value, Value];
  return balanceReaction.of({ W: bar.load, xm: loadMiddleValue(beam, inputs), xk, xo }) as Known<"mass">;
}

/** The worst of a bar: over every balance there is, or over the length errors that are written and allowed. */
export function casesOf(bar: Bar): BarCases {
  const still = stillness(bar);
  if (!still.known) return still;
  const { hanging, hung } = bar;
  if (!hanging.known) return hanging;
  if (!hung.known) return hung;
  if (!still.still)
    return missing("mass", {
      path: bar.path,
      what: "reactions",
      because: `${bar.label}: it does not hang still, ${still.because}.`,
    });
  const all = beamsOf(bar, hanging.beam).flatMap((beam): readonly Solved[] => {
    const found = balancesOf(bar, beam);
    return found.still ? found.cases.map((each) => ({ found: each, beam })) : [];
  });
  const of = new Map(all.map((each) => [each.found, each]));
  const cases = all.map(({ found }) => found);
  const worst = hanging.order.map((hang, index): WorstCase => {
    const solved = of.get(heaviestCase(cases, index)) as Solved;
    return { hang, reaction: reactionOf(bar, index, solved), when: wordsOf(bar, solved) };
  });
  const bent = of.get(mostBentCase(cases)) as Solved;
  const when = wordsOf(bar, bent);
  const moment = momentValue(bent.found.bent, hanging.inputs, when && `${when.trim()}: `) as Known<"moment">;
  const shear = shearValue(cases, hanging.inputs);
  return { known: true, worst, bending: { moment, when, bent: bent.found.bent }, shear, all };
}
