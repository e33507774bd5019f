import { areNeighbours } from "@plumbmark/calc";
import { type Chain, type Face, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Panels = NonNullable<Chain["panels"]>;

const steps = (panels: Panels): readonly { readonly from: Panels[number]; readonly to: Panels[number] }[] =>
  panels.slice(1).map((to, index) => ({ from: panels[index] as Panels[number], to }));

/** One direction: along the rows or along the columns the chain may turn back and forth; across them it goes one way. */
function oneWay(panels: Panels): boolean {
  const ways = (axis: "row" | "column"): number =>
    new Set(
      steps(panels)
        .map(({ from, to }) => Math.sign(to.cell[axis] - from.cell[axis]))
        .filter((sign) => sign !== 0),
    ).size;
  return ways("row") <= 1 || ways("column") <= 1;
}

/** Which way most steps of a chain go; undefined where it has none, or as many of either. */
function grain(panels: Panels): "row by row" | "column by column" | undefined {
  const along = steps(panels).map(({ from, to }) => from.cell.row === to.cell.row);
  const [rows, all] = [along.filter((each) => each).length, along.length];
  return rows * 2 > all ? "row by row" : rows * 2 < all ? "column by column" : undefined;
}

/** Chains of one face go the same way; side by side, one by rows and one by columns are cabled wrongly at their seam. */
function* together(face: Face, chains: readonly Chain[]): Generator<RawCheck> {
  const ways = chains.flatMap((chain) => {
    const way = chain.panels?.[0]?.face === face ? grain(chain.panels) : undefined;
    return way ? [{ name: chain.name, way }] : [];
  });
  if (ways.length < 2) return;
  const first = ways[0] as (typeof ways)[number];
  const other = ways.find(({ way }) => way !== first.way);
  yield is(face, {
    holds: other === undefined,
    says: other
      ? `On face ${face.name} chain ${first.name} goes ${first.way} and chain ${other.name} ${other.way}.`
      : `All chains of face ${face.name} go ${first.way}.`,
    mend: "Lay all chains of a face the same way, row by row or column by column.",
  });
}

export default rule({
  id: "data.neighbours",
  states: "A chain goes from neighbour to neighbour, in one consistent direction.",
  level: "should",
  why: "A chain that jumps about is cabled wrongly in the dark, and nobody finds the panel that broke it.",
  judged:
    "Each panel of a chain has to share an edge with the one before it, and the chain has to work its way through the face row by row or column by column, never turning back on itself. Chains of one face have to go the same way, by rows or by columns.",
  sources: ["practice"],
  *checks({ build }) {
    for (const chain of build.chains) {
      const { panels } = chain;
      if (!panels) {
        yield open(chain, {
          says: `${chain.label} has no panels in cable order written down.`,
          mend: `Write them under \`${chain.path}.panels\`.`,
          needs: [`${chain.path}.panels`],
        });
        continue;
      }
      const jumps = steps(panels).filter(({ from, to }) => from.face !== to.face || !areNeighbours(from.cell, to.cell));
      const told = jumps.slice(0, 4).map(({ from, to }) => `from ${from.name} to ${to.name}`);
      const beyond = jumps.length - told.length;
      const more = beyond === 0 ? "" : beyond === 1 ? " and once more" : ` and ${beyond} times more`;
      const straight = oneWay(panels);
      const says =
        jumps.length > 0
          ? `${chain.label} jumps ${told.join(", ")}${more}.`
          : straight
            ? `${chain.label} goes from neighbour to neighbour.`
            : `${chain.label} turns back on itself: it goes both ways along the rows and along the columns.`;
      yield is(chain, {
        holds: jumps.length === 0 && straight,
        says,
        mend: "Go back and forth: the second row starts below the end of the first, such as `A1..A6, B6..B1`.",
      });
    }
    for (const face of build.faces) yield* together(face, build.chains);
  },
});
