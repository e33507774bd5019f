import { bendingStress, greatestOf, leastOf, sum, times, type Value } from "@plumbmark/calc";
import type { Design } from "../design.js";
import { Fixings } from "../faces/wall.js";
import type { Assembly } from "../rigging/assembly.js";
import type { Bar } from "../rigging/bar.js";
import type { Hang } from "../rigging/hang.js";
import type { Leg } from "../rigging/leg.js";
import { numbered, under, type ValueEntry } from "./entries.js";

const least = (values: readonly Value[]): Value<"mass"> => leastOf(values, "mass", "capacity");

function valuesOfLeg(leg: Leg): readonly ValueEntry[] {
  const { hang } = leg;
  const worst = (): Value<"mass"> => leg.tension(hang.worst.reaction);
  return under(leg.path, {
    angle: () => leg.angle,
    tension: () => leg.tension(hang.reaction),
    "on-structure": () => leg.onStructure(leg.tension(hang.reaction)),
    "worst-tension": worst,
    "worst-on-structure": () => leg.onStructure(worst()),
    capacity: () => least(leg.ratings.map(({ allowed }) => allowed)),
    "design-factor": () => leg.assembly.designFactor(worst()),
  });
}

/** A bridle without an assembly of its own has its capacity in its legs. */
function valuesOfHang(hang: Hang): readonly ValueEntry[] {
  const ratings = (): readonly Value[] => hang.ratings.map(({ allowed }) => allowed);
  const own = !hang.bridled || hang.assembly !== undefined;
  return [
    ...under(hang.path, {
      reaction: () => hang.reaction,
      "on-structure": () => (hang.bridled ? undefined : hang.onStructure(hang.reaction)),
      worst: () => hang.worst.reaction,
      "worst-on-structure": () => (hang.bridled ? undefined : hang.onStructure(hang.worst.reaction)),
      capacity: () => (hang.ratings.length > 0 ? least(ratings()) : undefined),
      "design-factor": () => (own ? hang.ownAssembly.designFactor(hang.worst.reaction) : undefined),
    }),
    ...hang.strands.flatMap(({ assembly }) => valuesOfAssembly(assembly.path, assembly)),
    ...under(hang.path, { structure: () => hang.structure }),
    ...hang.legs.flatMap(valuesOfLeg),
  ];
}

/** Marked working loads of an assembly's parts, and how short and long it can be made. */
const valuesOfAssembly = (path: string, assembly: Assembly): readonly ValueEntry[] => [
  ...under(path, { shortest: () => assembly.length[0], longest: () => assembly.length[1] }),
  ...assembly.parts.flatMap((part) => under(part.path, { wll: () => assembly.markedWll(part) })),
];

/** What the second suspension reaches, and what it catches at each hang. */
function valuesOfSecond({ second, hangs }: Bar): readonly ValueEntry[] {
  if (!second) return [];
  return [
    ...under(second.path, {
      mass: () => second.mass,
      girth: () => second.girth,
      slack: () => second.slack,
      length: () => second.length[1],
      way: () => second.way,
      wll: () => second.assembly.weakest,
    }),
    ...hangs.flatMap((hang) => under(hang.path, { caught: () => second.caught(hang.worst.reaction) })),
  ];
}

/** What the others swing up to when a hang is lost. */
const valuesOfLosses = ({ losses }: Bar): readonly ValueEntry[] =>
  "length" in losses
    ? losses.flatMap(({ lost, peaks }) =>
        peaks.flatMap(({ hang, peak }) =>
          under(`${hang.path}.without.${lost.name}`, {
            peak: () => peak,
            "on-structure": () => hang.onStructure(peak),
          }),
        ),
      )
    : [];

/** What holds the columns of the faces on the bar. */
const valuesOfAttachments = (bar: Bar): readonly ValueEntry[] =>
  bar.carries.flatMap((carried) => {
    const { hungBy } = carried.face;
    if (!hungBy) return [];
    const load = (): Value<"mass"> => hungBy.load(bar.heaviestColumn(carried));
    return under(hungBy.path, {
      count: () => hungBy.count,
      load,
      "design-factor": () => hungBy.designFactor(load()),
    });
  });

/** Where each face it carries ends, from the left end of the bar. */
const valuesOfCarried = ({ carries }: Bar): readonly ValueEntry[] =>
  carries.flatMap(({ path, face, from, columns }) => {
    const width = (): Value<"length"> => times(face.panelWidth, columns.length);
    return under(path, { from: () => from, "right-edge": () => sum([from, width()], "length", "right edge") });
  });

/** Stress and design factors are those of the worst case. */
function valuesOfBar(bar: Bar): readonly ValueEntry[] {
  const { spans, section } = bar;
  const sags = (): readonly Value[] => spans.map(({ sag }) => sag);
  return [
    ...under(bar.path, {
      "self-mass": () => bar.selfMass,
      load: () => bar.load,
      "on-structure": () => bar.onStructure,
      structure: () => bar.structure,
      moment: () => bar.moment,
      "worst-moment": () => bar.worstMoment.moment,
      "worst-shear": () => bar.worstShear,
      drop: () => bar.drop,
      "outside-diameter": () => section.grip,
      "allowable-moment": () => section.allowable,
      stress: () => bendingStress.of({ M: bar.worstMoment.moment, S: section.elasticModulus }),
      deflection: () => (spans.length > 0 ? greatestOf(sags(), "length", "deflection") : undefined),
    }),
    ...valuesOfCarried(bar),
    ...numbered(`${bar.path}.spans`, spans, (span) => ({ length: () => span.length, deflection: () => span.sag })),
    ...bar.hangs.flatMap(valuesOfHang),
    ...valuesOfSecond(bar),
    ...valuesOfLosses(bar),
  ];
}

/** What fixings of a face on a wall are used to. */
const fixingValues = (build: Design): readonly ValueEntry[] =>
  build.faces.flatMap((face) => {
    if (face.support !== "wall") return [];
    const fixings = new Fixings(build, face);
    return under(fixings.path, {
      tension: () => fixings.tension,
      shear: () => fixings.shear,
      share: () => fixings.share,
    });
  });

/** What hangs faces from bars, or holds them to a wall: told with the face, and without what the bars come to. */
export const holdingValues = (build: Design): readonly ValueEntry[] => [
  ...build.bars.flatMap(valuesOfAttachments),
  ...fixingValues(build),
];

export const riggingValues = (build: Design): readonly ValueEntry[] => {
  const { bars, lifting } = build;
  const lifted = build.reader.has("rigging.lifting");
  return [
    ...bars.flatMap(valuesOfBar),
    ...(build.faces.length > 0 ? under(lifting.path, { heaviest: () => lifting.heaviest }) : []),
    ...(build.faces.length > 0
      ? numbered(`${lifting.path}.lifted`, lifting.pieces, ({ mass }) => ({ mass: () => mass }))
      : []),
    ...(lifted ? under(lifting.path, { limit: () => lifting.limit }) : []),
  ];
};
