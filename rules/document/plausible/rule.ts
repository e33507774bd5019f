import { arealMass, powerBySize, tabled, times } from "@plumbmark/calc";
import { atLeast, atMost, type Build, is, type RawCheck, rule, within } from "@plumbmark/kit";

type Stand = NonNullable<Build["faces"][number]["stand"]>;

/** A base that is a tenth as deep as its face is high stands like a plank on its edge (common practice). */
const LEAST_DEPTH = 0.1;

/** Edges are measured and rounded; a footprint may look a little larger than the base it is under. */
const ALLOWANCE = 1.05;

/** What a panel weighs by its face, Pa: 4 and 150 kg/m². Curtains of bare strips are lighter, and no tiles. */
const LIGHTEST = 4 * 9.80665;
const HEAVIEST = 150 * 9.80665;

/** What a square metre of panels takes at most, W; mesh takes least, walls for daylight most. */
const DIMMEST = 60;
const BRIGHTEST = 4000;

/** A tile of a tenth of its weight holds every hang. */
function* ofPanels(face: Build["faces"][number]): Iterable<RawCheck> {
  if (face.panel === undefined) return;
  const thing = { path: `${face.path}.panel`, label: face.label };
  const mass = face.panelValue("mass", "mass", "mass");
  const ofSize = (q: number) =>
    arealMass.of({
      q: tabled(q, "areal-load", "practice", "weight of a panel by its size"),
      w: face.panelWidth,
      h: face.panelHeight,
    });
  // That none is written is for the rules that weigh.
  if (!mass.known || !ofSize(LIGHTEST).known) return;
  const { name } = face.panel;
  const mend = `Correct the mass of ${name}, its size or a unit. If they are right, waive this with the name of whoever weighed it.`;
  yield atLeast(thing, {
    measured: mass,
    allowed: ofSize(LIGHTEST),
    says: ({ measured, allowed }) =>
      `${name} weighs ${measured}; for its size ${allowed} is the least that is plausible.`,
    mend,
  });
  yield atMost(thing, {
    measured: mass,
    allowed: ofSize(HEAVIEST),
    says: ({ measured, allowed }) =>
      `${name} weighs ${measured}; for its size ${allowed} is the most that is plausible.`,
    mend,
  });
}

/** One of a tenth of its power fits ten times on every circuit. */
function* powerOfPanels(face: Build["faces"][number]): Iterable<RawCheck> {
  if (face.panel === undefined) return;
  const thing = { path: `${face.path}.panel`, label: face.label };
  const most = face.panel.quantities.get("power.maximum");
  const ofSize = (watts: number) =>
    powerBySize.of({
      P1: tabled(watts, "power", "practice", "power of a panel by its size"),
      w: face.panelWidth,
      h: face.panelHeight,
    });
  // What is written in VA is within a few hundredths of it; one that is not written is for the rules that load.
  if (most?.kind !== "power" || !ofSize(DIMMEST).known) return;
  const measured = face.panelValue("power.maximum", "power", "maximum power");
  const { name } = face.panel;
  const mend = `Correct the maximum power of ${name}, its size or a unit. If they are right, waive this with the name of whoever measured it.`;
  yield atLeast(thing, {
    measured,
    allowed: ofSize(DIMMEST),
    says: (words) =>
      `${name} takes ${words.measured} at most; for its size ${words.allowed} is the least that is plausible.`,
    mend,
  });
  yield atMost(thing, {
    measured,
    allowed: ofSize(BRIGHTEST),
    says: (words) =>
      `${name} takes ${words.measured} at most; for its size ${words.allowed} is the most that is plausible.`,
    mend,
  });
}

function* ofStand(stand: Stand): Iterable<RawCheck> {
  const { face, depth, footprint, baseArea } = stand;
  yield atLeast(stand, {
    measured: depth,
    allowed: times(face.height, LEAST_DEPTH, "1 ÷ 10"),
    says: ({ measured, allowed }) =>
      `${stand.label} is ${measured} deep; under a face this high ${allowed} is the least that is plausible.`,
    mend: "Correct the depth of the base, or its unit. If it is right, waive this with the name of whoever designed the base.",
  });
  // That none is written is for rigging.deck-load to say.
  if (footprint.known)
    yield atMost(stand, {
      measured: footprint,
      allowed: times(baseArea, ALLOWANCE, "1.05"),
      says: ({ measured, allowed }) =>
        `${stand.label} is said to stand on ${measured}; from its own width and depth it covers no more than ${allowed}.`,
      mend: "Correct the footprint, or the depth and width of the base: what is larger than the base carries nothing.",
    });
}

/** A cord is never lighter than its copper, and a table says what none exceeds: it is advice, for the table is no law. */
function* ofCords({ cordMasses }: Build): Iterable<RawCheck> {
  for (const { name, path, file, stated, least, most } of cordMasses)
    yield {
      ...within(
        { path, label: name },
        {
          measured: stated,
          least,
          most,
          says: ({ measured, allowed }) =>
            `${name} is said to weigh ${measured}; cords of its conductors weigh from ${allowed}.`,
          mend: `Correct the mass of ${name} in ${file}, its conductor or a unit; or take the mass out, and what cords of its kind weigh is assumed.`,
          sources: ["cord-mass", "iec-60028", "iec-60228"],
        },
      ),
      level: "should",
    };
}

/**
 * Whatever governs, a longer span carries no more: bending and deflection fall with it, and where shear governs a load
 * in the middle stays as it is. A row that rises has a slipped point or another unit.
 */
function* loadTable({ section, path, label }: Build["bars"][number]): Iterable<RawCheck> {
  const rows = [...section.loadTable].sort((one, other) => one.span - other.span);
  const here = { path: `${path}.section`, label };
  for (const [index, row] of rows.entries()) {
    const before = rows[index - 1];
    if (!before) continue;
    const said = (what: string) => ({
      says: ({ measured, allowed }: { measured: string; allowed: string }) =>
        `${label}: row ${index + 1} of its maker's load table, by span, has ${measured} ${what}, and the shorter span before it ${allowed}; a longer span never carries more.`,
      mend: "Correct the row or its unit from the maker's sheet, under `loads` of the part. Nothing is hung by a table that rises.",
    });
    yield atMost(here, {
      measured: tabled(row.uniform, "mass-per-length", "part", "uniform load of the row"),
      allowed: tabled(before.uniform, "mass-per-length", "part", "uniform load of the row before"),
      ...said("spread evenly"),
    });
    yield atMost(here, {
      measured: tabled(row.centre, "mass", "part", "load in the middle of the row"),
      allowed: tabled(before.centre, "mass", "part", "load in the middle of the row before"),
      ...said("in the middle"),
    });
  }
}

/** Nobody can have signed it yet. It is advice: a document is written ahead of what it waits for. */
function* ofDays({ statedAhead }: Build): Iterable<RawCheck> {
  for (const { path, on } of statedAhead)
    yield {
      ...is(
        { path: `${path}.on`, label: `\`${path}\`` },
        {
          holds: false,
          says: `\`${path}\` is of ${on}, which is still to come.`,
          mend: "Write the day on which it was signed or confirmed, once it is.",
        },
      ),
      level: "should",
    };
}

/** Every figure that is written, against its range, and what rests on the size of a panel or a base. */
function* ofSizes(build: Build): Iterable<RawCheck> {
  const { implausible } = build;
  for (const { of, path, found } of implausible) {
    const name = found.title === undefined ? `\`${found.path}\`` : `\`${found.path}\` (${found.title})`;
    yield is(
      { path, label: name },
      {
        holds: false,
        says: `${of}${name} is \`${found.text}\`; from ${found.range[0]} to ${found.range[1]} is plausible.`,
        mend: "Correct the figure or its unit. If it is right, waive this with the name of whoever stands for it.",
      },
    );
  }
  if (implausible.length === 0) yield is(build, { holds: true, says: "Every figure is of the size its field has." });
  for (const face of build.faces) {
    yield* ofPanels(face);
    yield* powerOfPanels(face);
    if (face.stand) yield* ofStand(face.stand);
  }
}

export default rule({
  id: "document.plausible",
  states: "Every figure is of the size its field has.",
  level: "shall",
  why: "A figure with a slipped point or another unit computes as well as a right one, and whatever rests on it holds: a beam rated 1e300 lb carries everything.",
  judged:
    "Every quantity of the document and of the parts it names against the range that its field has in the schemas, which is far wider than anything ordinary: what lies outside is a slip. The mass of a panel against its size: from 4 to 150 kg/m²; its maximum power: from 60 to 4,000 W/m². The depth of a base against a tenth of the height of the face on it, and a footprint against the base it is under, `width` × `depth`, or the face's own width where the base has none. A maker's load table, row by row: a longer span never carries more. The mass per length of a cord, as a recommendation, against the copper in it and against the greatest mass that tables have for such a cord. What is stated, signed or confirmed on a day that is still to come, as a recommendation. The ranges of the fields are common practice.",
  sources: ["practice", "statics", "cord-mass", "iec-60028", "iec-60228"],
  *checks({ build }) {
    // What a cord may weigh is no basis of what a panel may.
    for (const check of ofSizes(build)) yield { ...check, sources: ["practice"] };
    for (const bar of build.bars) for (const check of loadTable(bar)) yield { ...check, sources: ["statics"] };
    yield* ofCords(build);
    for (const check of ofDays(build)) yield { ...check, sources: ["practice"] };
  },
});
