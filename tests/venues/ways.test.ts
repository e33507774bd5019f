import { readSurvey, wayBetween } from "@plumbmark/core";
import fc from "fast-check";
import { expect, test } from "vitest";

/**
 * Euclid, Elements I.47, twice over, in whole millimetres: the square on the straight line is the sum of the three
 * squares. Its root is found by halving, so that nothing is shared with how it is computed.
 */
function straight(one: readonly number[], other: readonly number[]): number {
  const square = one.reduce((sum, each, axis) => sum + BigInt(each - (other[axis] as number)) ** 2n, 0n) * 1_000_000n;
  let [low, high] = [0n, 1n];
  while (high * high <= square) high *= 2n;
  while (high - low > 1n) {
    const middle = (low + high) / 2n;
    if (middle * middle <= square) low = middle;
    else high = middle;
  }
  return Number(low) / 1_000_000;
}

const place = fc.tuple(
  fc.integer({ min: -60_000, max: 60_000 }),
  fc.integer({ min: -60_000, max: 60_000 }),
  fc.integer({ min: -5000, max: 30_000 }),
);

const written = (name: string, [right, upstage, up]: readonly number[]): string =>
  `  ${name}: {right: ${right} mm, upstage: ${upstage} mm, up: ${up} mm}\n`;

const hall = (places: string, routes: string) => {
  const text = `---\nsurvey: hall\ntitle: Hall\nplaces:\n${places}routes:\n${routes}---\n`;
  const survey = readSurvey({ path: "venues/hall.md", text });
  if (!survey || survey.mistakes.length > 0) throw new Error(JSON.stringify(survey?.mistakes));
  return survey;
};

const metres = (way: ReturnType<typeof wayBetween>): number => (way.length.known ? way.length.value : Number.NaN);

test("what nobody measured or led is Euclid's straight line", () => {
  fc.assert(
    fc.property(place, place, (one, other) => {
      const way = wayBetween(hall(written("a", one) + written("b", other), "  a to b: {via: [a]}\n"), "a", "b");
      expect(way.how).toBe("straight");
      expect(metres(way)).toBeCloseTo(straight(one, other), 5);
    }),
  );
});

test("a way that is led is the sum of its straight pieces, and never shorter than the straight line", () => {
  fc.assert(
    fc.property(fc.array(place, { minLength: 3, maxLength: 8 }), (stops) => {
      const names = stops.map((_, index) => `p${index}`);
      const via = names.slice(1, -1).join(", ");
      const survey = hall(
        stops.map((stop, index) => written(`p${index}`, stop)).join(""),
        `  p0 to ${names.at(-1)}: {via: [${via}], led: {by: R. Tallow, on: 2026-10-02}}\n`,
      );
      const way = wayBetween(survey, names.at(-1) as string, "p0");
      const pieces = stops.slice(1).map((stop, index) => straight(stops[index] as number[], stop));
      expect(way.how).toBe("led");
      expect(metres(way)).toBeCloseTo(
        pieces.reduce((sum, each) => sum + each, 0),
        4,
      );
      expect(metres(way)).toBeGreaterThanOrEqual(straight(stops[0] as number[], stops.at(-1) as number[]) - 1e-5);
    }),
  );
});

test.each([
  ["measured", "  a to b: {length: 12 m, via: [c], led: {by: R. Tallow, on: 2026-10-02}}\n", "measured", 12],
  // 3, 4 and 5 make a right angle (Elements I.48): a to c is 5 m, c to b 4 m.
  ["led", "  b to a: {via: [c], led: {by: R. Tallow, on: 2026-10-02}}\n", "led", 9],
  ["drawn, and nobody looked", "  b to a: {via: [c]}\n", "straight", Math.sqrt(9 + 0 + 0)],
  ["looked at by nobody on no day", "  b to a: {via: [c], led: {by: R. Tallow}}\n", "straight", 3],
])("a way %s", (_, routes, how, length) => {
  const places = [written("a", [0, 0, 0]), written("b", [3000, 0, 0]), written("c", [3000, 4000, 0])].join("");
  const way = wayBetween(hall(places, routes), "a", "b");
  expect(way.how).toBe(how);
  expect(metres(way)).toBeCloseTo(length, 9);
});

test("a place the survey does not have is told, and no length", () => {
  const way = wayBetween(hall(written("a", [0, 0, 0]), "  a to b: {via: [a]}\n"), "a", "b");
  expect(way.length).toMatchObject({ known: false, gaps: [{ what: "place b" }] });
});
