import { printMeasure } from "./quantity.js";

export interface WorkingLine {
  readonly formula: string;
  readonly with: string;
  readonly result: { readonly value: number; readonly unit: string };
}

/** One line of a working with its result: `(14 × 130 W ÷ 0.95 + 150 W) ÷ 120 V = 17.2 A`. */
export const showWorking = ({ with: numbers, result }: WorkingLine): string => `${numbers} = ${printMeasure(result)}`;
