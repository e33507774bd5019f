import type { Value } from "@plumbmark/calc";
import type { Hop, Station } from "@plumbmark/core";
import { arrowHead } from "./shared/dimension.js";
import { type Drawing, type DrawingSubject, SHEET_WIDTH } from "./shared/drawing.js";
import { drawingHeading, notes } from "./shared/heading.js";
import { fitted, LEADING, lettering, SMALL, wrapped } from "./shared/lettering.js";
import { line, rect, type Shapes, WIDE } from "./shared/svg.js";
import { UNWRITTEN, writtenText } from "./shared/value-text.js";

const BOX = { width: 34, height: 15 };
const APART = 38;
const PER_ROW = 3;
const ROW = 27;

const placeOf = (index: number, top: number) => ({
  x: 2 + (index % PER_ROW) * (BOX.width + APART - 3),
  y: top + Math.floor(index / PER_ROW) * ROW,
});

function device(name: string, where: string | undefined, index: number, top: number): Shapes {
  const { x, y } = placeOf(index, top);
  const lines = wrapped(name, BOX.width - 3, SMALL).slice(0, 2);
  return [
    rect({ x, y, ...BOX }, { strokeWidth: WIDE, dataDevice: name }),
    ...lines.map((each, place) => lettering(each, [x + 1.5, y + 4.4 + place * LEADING], { size: SMALL, bold: true })),
    lettering(where ?? `place ${UNWRITTEN}`, [x + 1.5, y + BOX.height - 1.6], { size: SMALL }),
  ];
}

const lengthOf = (cable: Station, { build }: DrawingSubject): Value =>
  build.reader.value(`${cable.path}.length`, "length", "length", cable.name);

/** The cables of one link over an arrow; at the end of a row the arrow leads down to the next. */
function link(hop: Hop, index: number, top: number, subject: DrawingSubject): Shapes {
  const from = placeOf(index, top);
  const to = placeOf(index + 1, top);
  const words = hop.cables.flatMap((each) => [each.name, writtenText(lengthOf(each, subject), subject.system)]);
  const wide = APART - 6;
  if (to.y === from.y) {
    const [x1, x2, y] = [from.x + BOX.width, to.x, from.y + BOX.height / 2];
    return [
      line([x1, y], [x2, y], { strokeWidth: WIDE }),
      arrowHead([x2, y], 0, 2.6),
      ...label(words, x1 + 1.5, y, wide),
    ];
  }
  const [x, y1, y2] = [from.x + BOX.width / 2, from.y + BOX.height, to.y];
  const turn = y1 + (y2 - y1) / 2;
  const below = to.x + BOX.width / 2;
  return [
    line([x, y1], [x, turn], { strokeWidth: WIDE }),
    line([x, turn], [below, turn], { strokeWidth: WIDE }),
    line([below, turn], [below, y2], { strokeWidth: WIDE }),
    arrowHead([below, y2], Math.PI / 2, 2.6),
    ...label([words.join(", ")], below + 4, turn, SHEET_WIDTH / 2),
  ];
}

const label = (words: readonly string[], x: number, y: number, width: number): Shapes =>
  words
    .slice(0, 3)
    .map((each, index) =>
      lettering(fitted(each, width, SMALL), [x, y + (index === 0 ? -1.4 : 4 + (index - 1) * LEADING)], { size: SMALL }),
    );

/** From the source to the processor and its ports; undefined when no picture path is written. */
export function picturePath(subject: DrawingSubject): Drawing | undefined {
  const { build, system } = subject;
  const { hops } = build.picture;
  const first = hops[0];
  if (!first) return undefined;
  const place = (path: string): string | undefined => build.reader.text(`${path}.place`);
  const stations = [first.from, ...hops.map(({ to }) => to)];
  const title = "Picture path and ports";
  const { width, height, rate, depth } = build.picture;
  const sent = `Sent: ${writtenText(width, system)} × ${writtenText(height, system)}, ${writtenText(rate, system)}, ${writtenText(depth, system)}. Not to scale. Panels are named as the audience sees the face, A1 at its upper left.`;
  const top = drawingHeading(title, [sent], SHEET_WIDTH);
  const start = top.height + 4;
  const low = placeOf(stations.length - 1, start).y + BOX.height + 4;
  const chains = build.chains.map((chain) => {
    const back = chain.backUpPort === undefined ? "" : `, back to port ${chain.backUpPort}`;
    return `Port ${chain.port ?? UNWRITTEN}: chain ${chain.name}, ${chain.panels ? `${chain.panels[0]?.name} to ${chain.panels.at(-1)?.name}` : `panels ${UNWRITTEN}`}${back}.`;
  });
  const foot = notes(chains, 2, low, SHEET_WIDTH - 4);
  const names = stations.map((each) => each?.name ?? "an unknown source");
  return {
    name: "picture-path",
    title,
    description: `${names.join(", then ")}. ${sent} ${chains.join(" ")}`,
    width: SHEET_WIDTH,
    height: low + foot.height + 3,
    shapes: [
      ...top.shapes,
      ...stations.flatMap((each, index) =>
        device(each?.name ?? "unknown source", each && place(each.path), index, start),
      ),
      ...hops.flatMap((hop, index) => link(hop, index, start, subject)),
      ...foot.shapes,
    ],
  };
}
