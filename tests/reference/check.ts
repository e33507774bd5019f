import { expect, test } from "vitest";

/** How a check value is known; `arithmetic` follows from a formula or another printed figure. */
export type Basis = "published" | "memory" | "arithmetic" | "practice";

export interface ReferenceCheck {
  /** Short name of the check, with the inputs. */
  readonly name: string;
  /** Document, edition, clause or page. */
  readonly source: string;
  readonly basis: Basis;
  /** What our code says. */
  readonly got: () => number | string | boolean | readonly number[];
  /** What the source says, as printed or worked out there. */
  readonly printed: number | string | boolean | readonly number[];
  /** Half a unit in the last printed digit, or the reason given in `because`. */
  readonly within?: number;
  /** Why this tolerance. */
  readonly because?: string;
}

/**
 * One check against a value from outside the project. The test run prints how many rest on each source
 * (see tests/run/reporter.ts), so the source is kept with the test.
 */
export function reference(check: ReferenceCheck): void {
  const label =
    check.basis === "memory" ? " (from memory)" : check.basis === "practice" ? " (common practice, no source)" : "";
  test(`${check.name}: ${check.source}${label}`, ({ task }) => {
    Object.assign(task.meta, { reference: { source: check.source, basis: check.basis } });
    const got = check.got();
    const compare = (value: unknown, printed: unknown): void => {
      if (typeof printed !== "number") {
        expect(value).toBe(printed);
        return;
      }
      expect(typeof value).toBe("number");
      expect(
        Math.abs((value as number) - printed),
        `got ${String(value)}, printed ${printed}, within ${check.within ?? 0}`,
      ).toBeLessThanOrEqual(check.within ?? 1e-9);
    };
    if (!Array.isArray(check.printed)) {
      compare(got, check.printed);
      return;
    }
    expect(Array.isArray(got) && got.length === check.printed.length).toBe(true);
    for (const [index, printed] of check.printed.entries()) compare((got as readonly number[])[index], printed);
  });
}
