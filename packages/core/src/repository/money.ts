/** An amount of money, exact: a whole number of the smallest unit of its currency. */
export interface Money {
  /** In the minor unit: cents of a dollar. */
  readonly minor: bigint;
  /** Letters of ISO 4217. */
  readonly currency: string;
}

/** Digits behind the point where they are not two (ISO 4217, table A.1). */
const MINOR_UNITS: Readonly<Record<string, number>> = {
  ...Object.fromEntries(
    "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF".split(" ").map((c) => [c, 0]),
  ),
  ...Object.fromEntries("BHD IQD JOD KWD LYD OMR TND".split(" ").map((c) => [c, 3])),
  ...Object.fromEntries("CLF UYW".split(" ").map((c) => [c, 4])),
};

/** Digits behind the point of amounts in a currency. */
export const minorUnits = (currency: string): number => MINOR_UNITS[currency] ?? 2;

/** Reads `412.00 USD` from its text, exactly; undefined when it is no amount, or has more digits than its currency. */
export function readMoney(text: string): Money | undefined {
  const [, whole, part = "", currency] = /^(\d{1,12})(?:\.(\d{1,4}))? ([A-Z]{3})$/u.exec(text) ?? [];
  if (whole === undefined || currency === undefined) return undefined;
  const digits = minorUnits(currency);
  if (part.length > digits) return undefined;
  return { minor: BigInt(whole + part.padEnd(digits, "0")), currency };
}

/** So many times an amount. */
export const timesMoney = ({ minor, currency }: Money, count: number): Money => ({
  minor: minor * BigInt(count),
  currency,
});

/** Sums by currency, in the order of their letters: what is in two currencies is no one sum. */
export function sumMoney(amounts: readonly Money[]): readonly Money[] {
  const sums = new Map<string, bigint>();
  for (const { minor, currency } of amounts) sums.set(currency, (sums.get(currency) ?? 0n) + minor);
  return [...sums].sort(([one], [other]) => (one < other ? -1 : 1)).map(([currency, minor]) => ({ minor, currency }));
}

/** `5,356.00` is `5356.00` here: digits and a point, as many behind it as the currency has. */
export function moneyText({ minor, currency }: Money): string {
  const digits = minorUnits(currency);
  const text = String(minor).padStart(digits + 1, "0");
  return digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}
