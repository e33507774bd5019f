import { printer, type System, type Value } from "@plumbmark/calc";
import { endsOf, placeName, pointOf, type Survey, type SurveyedPlace, surveyData, surveyNames } from "@plumbmark/core";
import type { Element } from "hast";
import { type Drawing, SHEET_WIDTH } from "./shared/drawing.js";
import { fitted, LEADING, lettering, MIDDLE, measure, SMALL } from "./shared/lettering.js";
import { type Scale, scaleBar, scaleFor, scaleText } from "./shared/scale.js";
import { type Box, FINEST, group, line, type PaperPoint, path, rect, type Shapes } from "./shared/svg.js";

/** Something of a venue seen from above, in metres to the audience's right and upstage. */
interface Spot {
  readonly name: string;
  readonly right: number;
  readonly upstage: number;
  /** Lines beside it. */
  readonly words: readonly string[];
}

interface Beam {
  readonly name: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly points: readonly Spot[];
}

const flat = ({ right, upstage }: SurveyedPlace): readonly [number, number] | undefined =>
  right.known && upstage.known ? [right.value, upstage.value] : undefined;

/** Circuits by the place their outlets are at, as places are compared. */
function circuitsAt(survey: Survey): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const name of surveyNames(survey, "circuits")) {
    const at = surveyData(survey, "circuits", name, "at");
    if (typeof at === "string") found.set(placeName(at), [...(found.get(placeName(at)) ?? []), name]);
  }
  return found;
}

function spotsOf(survey: Survey, print: (value: Value<"length">) => string): readonly Spot[] {
  const circuits = circuitsAt(survey);
  return surveyNames(survey, "places").flatMap((name) => {
    const point = pointOf(survey, name);
    const place = point && flat(point);
    if (!point || !place) return [];
    const own = circuits.get(placeName(name)) ?? [];
    const up = point.up.known && Math.abs(point.up.value) > 1e-9 ? `, ${print(point.up)} up` : "";
    return [
      { name, right: place[0], upstage: place[1], words: [`${name}${up}`, ...own.map((each) => `circuit ${each}`)] },
    ];
  });
}

function beamsOf(survey: Survey): readonly Beam[] {
  return surveyNames(survey, "structure").flatMap((name) => {
    const ends = endsOf(survey, name);
    const [from, to] = (ends ?? []).map(flat);
    if (!from || !to) return [];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const points = surveyNames(survey, "structure", name, "points").flatMap((point): Spot[] => {
      const at = survey.values.get(`structure.${name}.points.${point}.at`);
      if (!at || length === 0) return [];
      const share = at.value / length;
      return [
        {
          name: point,
          right: from[0] + share * (to[0] - from[0]),
          upstage: from[1] + share * (to[1] - from[1]),
          words: [point],
        },
      ];
    });
    return [{ name, from, to, points }];
  });
}

const MARGIN = 14;
const HEAD = 10;
const FOOT = 11;

/** Whether two boxes of lettering run into one another. */
const meet = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;

/** Puts lettering beside marks so that none runs into another: each moves down until it is free. */
class Labels {
  readonly #taken: Box[] = [];
  readonly shapes: Element[] = [];

  constructor(readonly width: number) {}

  put([x, y]: PaperPoint, words: readonly string[], data: Readonly<Record<string, string>>): void {
    const lines = words.map((each) => fitted(each, 60, SMALL));
    const width = Math.max(...lines.map((each) => measure(each, SMALL)));
    const left = x + 2 + width > this.width - 1 ? x - 2 - width : x + 2;
    const box = { x: left, y: y - LEADING + 1, width, height: LEADING * lines.length };
    while (this.#taken.some((each) => meet(each, box))) box.y += LEADING;
    this.#taken.push({ ...box });
    // A label that had to move far is led back to its mark.
    if (box.y > y + 2) this.shapes.push(line([x, y], [left, box.y + LEADING - 2], { strokeWidth: FINEST }));
    for (const [index, text] of lines.entries())
      this.shapes.push(
        lettering(text, [left, box.y + LEADING * (index + 1) - 1], { size: SMALL, ...(index === 0 ? { data } : {}) }),
      );
  }
}

const cross = ([x, y]: PaperPoint): Element => path(`M${x - 1.5} ${y}h3M${x} ${y - 1.5}v3`);

/** A venue from above, to scale: places with their circuits, structures with their points; the audience is below. */
export function venuePlan(survey: Survey, system: System): Drawing | undefined {
  const say = printer(system);
  const print = (value: Value<"length">): string => (value.known ? say(value.value, "length") : "not stated");
  const [spots, beams] = [spotsOf(survey, print), beamsOf(survey)];
  const all = [
    [0, 0] as const,
    ...spots.map(({ right, upstage }) => [right, upstage] as const),
    ...beams.flatMap(({ from, to }) => [from, to]),
  ];
  if (spots.length + beams.length === 0) return undefined;
  const [left, right] = [Math.min(...all.map(([x]) => x)), Math.max(...all.map(([x]) => x))];
  const [front, back] = [Math.min(...all.map(([, y]) => y)), Math.max(...all.map(([, y]) => y))];
  const room = [SHEET_WIDTH - 2 * MARGIN - 40, 190] as const;
  const scales = [
    scaleFor(Math.max(right - left, 1), room[0], system),
    scaleFor(Math.max(back - front, 1), room[1], system),
  ];
  const scale = scales.reduce((one, other) => (other.ratio > one.ratio ? other : one)) as Scale;
  const at = (x: number, y: number): PaperPoint => [MARGIN + scale.mm(x - left), HEAD + MARGIN + scale.mm(back - y)];
  const bottom = HEAD + 2 * MARGIN + scale.mm(back - front);
  const labels = new Labels(SHEET_WIDTH);
  const shapes: Element[] = [];
  const origin = at(0, 0);
  labels.put(origin, ["measured from here"], { dataLabel: "origin" });
  for (const { name, from, to, points } of beams) {
    shapes.push(line(at(...from), at(...to), { strokeWidth: 1, dataStructure: name }));
    for (const point of points) {
      const [x, y] = at(point.right, point.upstage);
      shapes.push(
        rect({ x: x - 1, y: y - 1, width: 2, height: 2 }, { fill: "#fff", dataPoint: `${name}.${point.name}` }),
      );
      labels.put([x - 3.5, y - 2.2], point.words, { dataLabel: `${name}.${point.name}` });
    }
    const ends = from[0] <= to[0] ? to : from;
    labels.put(at(...ends), [name], { dataLabel: name });
  }
  for (const { name, right: x, upstage, words } of spots) {
    const [cx, cy] = at(x, upstage);
    shapes.push(
      path(`M${cx - 1} ${cy}a1 1 0 1 0 2 0a1 1 0 1 0 -2 0`, {
        fill: "currentColor",
        dataPlace: name,
        dataX: cx,
        dataY: cy,
      }),
    );
    labels.put([cx, cy], words, { dataLabel: name });
  }
  const title = `Plan of ${survey.title}`;
  const foot: Shapes = [
    lettering("the audience is on this side", [MARGIN, bottom + 2], { size: SMALL }),
    scaleBar(scale, [SHEET_WIDTH - 70, bottom + 2]),
    lettering(scaleText(scale), [MARGIN, bottom + 7], { size: SMALL }),
  ];
  return {
    name: "venue-plan",
    title,
    description: describe(survey, spots, beams),
    width: SHEET_WIDTH,
    height: bottom + FOOT,
    shapes: [
      lettering(title, [2, 6], { size: MIDDLE, bold: true }),
      group({ dataScale: scale.ratio }, [cross(origin), ...shapes]),
      ...labels.shapes,
      ...foot,
    ],
  };
}

function describe(survey: Survey, spots: readonly Spot[], beams: readonly Beam[]): string {
  const places = spots.map(({ words }) => words.join(", ")).join("; ");
  const structures = beams.map(({ name, points }) => [name, ...points.map((each) => each.name)].join(", ")).join("; ");
  return [
    `${survey.title} from above, upstage at the top.`,
    places === "" ? "" : `Places: ${places}.`,
    structures === "" ? "" : `Structures with their points: ${structures}.`,
  ]
    .filter((each) => each !== "")
    .join(" ");
}
