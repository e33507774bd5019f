import { type Face, type Part, type Socket, socketAt, sockets, turned } from "@plumbmark/core";
import { arrowHead } from "../shared/dimension.js";
import type { DrawingSubject } from "../shared/drawing.js";
import { aboutMiddle, lettering, SMALL } from "../shared/lettering.js";
import { FINEST, group, line, type PaperPoint, rect, type Shapes, svgShape, WIDE } from "../shared/svg.js";
import { UNWRITTEN } from "../shared/value-text.js";
import { spread } from "./cable-entries.js";

const SIDE = 26;
/** Room for the names of the sockets at each side. */
const NAMES = 20;
const WIDTH = SIDE + 2 * NAMES + 4;
/** Above a panel, for its name and the way up. */
const ABOVE = 11;
/** From the name of a socket to the next. */
const APART = 4.2;
const HALF = 1.2;

interface Placed {
  readonly socket: Socket;
  /** From the panel's centre, as seen from behind, metres. */
  readonly from: { readonly x: number; readonly y: number };
}

interface Key {
  readonly part: Part;
  readonly width: number;
  readonly height: number;
  readonly placed: readonly Placed[];
}

/** What is seen from behind turns the other way round than what the audience sees. */
const fromBehind = ({ x, y }: { readonly x: number; readonly y: number }, degrees: number) => {
  const seen = turned({ x: -x, y }, degrees);
  return { x: -seen.x, y: seen.y };
};

function keyOf(part: Part, degrees: number): Key | undefined {
  const [across, down] = ["1", "2"].map((half) => part.quantities.get(`size.${half}`)?.value);
  if (across === undefined || down === undefined || across <= 0 || down <= 0) return undefined;
  const [width, height] = degrees % 180 === 0 ? [across, down] : [down, across];
  const placed = sockets.flatMap((socket): readonly Placed[] => {
    const at = socketAt(part, socket);
    return at ? [{ socket, from: fromBehind({ x: at.x - across / 2, y: at.y - down / 2 }, degrees) }] : [];
  });
  return { part, width, height, placed };
}

/** Power square, data round; what goes in is filled, what goes out is not. */
function mark({ socket, from }: Placed, [x, y]: PaperPoint): Shapes {
  const look = {
    strokeWidth: 0.35,
    stroke: "currentColor",
    fill: socket.endsWith("-in") ? "currentColor" : "#fff",
    ...(socket.endsWith("-in") ? {} : { className: "paper" }),
  };
  const sign = socket.startsWith("power")
    ? rect({ x: x - HALF, y: y - HALF, width: 2 * HALF, height: 2 * HALF }, look)
    : svgShape("circle", { cx: x, cy: y, r: HALF, ...look });
  return [group({ dataSocket: socket, dataAcross: from.x, dataDown: from.y }, [sign])];
}

/** The names of the sockets of one side, parted so that each can be read, with a line to its socket. */
function named(
  own: readonly (Placed & { readonly at: PaperPoint })[],
  right: boolean,
  edge: number,
  top: number,
  layer: string,
): Shapes {
  const sorted = [...own].sort((a, b) => a.at[1] - b.at[1] || a.socket.localeCompare(b.socket));
  const ys = spread(
    sorted.map(({ at }) => at[1]),
    APART,
    top + 2,
  );
  return sorted.flatMap(({ socket, at }, index) => {
    const y = ys[index] as number;
    const x = edge + (right ? 1.5 : -1.5);
    return [
      line([at[0] + (right ? HALF : -HALF), at[1]], [x, y], { strokeWidth: FINEST }),
      lettering(socket.replace("-", " "), [x + (right ? 0.5 : -0.5), aboutMiddle(y)], {
        size: SMALL,
        anchor: right ? "start" : "end",
        bold: socket.startsWith(layer),
      }),
    ];
  });
}

const perMetre = ({ width, height }: Pick<Key, "width" | "height">): number => SIDE / Math.max(width, height);

/** As high as the panel, or as the names of all sockets one under another. */
const highOf = (key: Key): number => ABOVE + Math.max(key.height * perMetre(key), sockets.length * APART);

function drawnKey({ part, width, height, placed }: Key, [x, y]: PaperPoint, layer: string): Shapes {
  const mm = perMetre({ width, height });
  const box = { x: x + NAMES + (SIDE - width * mm) / 2, y: y + ABOVE, width: width * mm, height: height * mm };
  const middle: PaperPoint = [box.x + box.width / 2, box.y + box.height / 2];
  const sited = placed.map((each) => ({
    ...each,
    at: [middle[0] + each.from.x * mm, middle[1] + each.from.y * mm] as PaperPoint,
  }));
  const right = (each: Placed): boolean => each.from.x > 0;
  const words = `${part.name}, from behind`;
  return [
    lettering(words, [x, y + 3], { size: SMALL, bold: true }),
    group({ className: "up", dataUp: part.name }, [
      line([middle[0], box.y], [middle[0], box.y - 4]),
      arrowHead([middle[0], box.y - 5.6], -Math.PI / 2, 2.4),
    ]),
    lettering("up", [middle[0] + 1.8, box.y - 2], { size: SMALL }),
    rect(box, { strokeWidth: WIDE, dataPanelKey: part.name, dataMm: mm }),
    ...sited.flatMap((each) => mark(each, each.at)),
    ...named(
      sited.filter((each) => !right(each)),
      false,
      box.x,
      box.y,
      layer,
    ),
    ...named(sited.filter(right), true, box.x + box.width, box.y, layer),
  ];
}

/** One panel of each kind as it is seen from behind, upright, with its four sockets. */
export function socketKeys(
  face: Face,
  layer: string,
  y: number,
  width: number,
  { build }: DrawingSubject,
): { readonly shapes: Shapes; readonly height: number; readonly notes: readonly string[] } {
  const degrees = Number(build.reader.data(`${face.path}.rotated`) ?? 0) || 0;
  const parts = [...new Set([face.panel, ...face.otherPanels.map(({ part }) => part)])].filter(
    (part) => part !== undefined,
  );
  const keys = parts.map((part) => ({ part, key: keyOf(part, degrees) }));
  const unknown = keys.filter(({ key }) => key === undefined || key.placed.length < sockets.length);
  const drawn = keys.flatMap(({ key }) => (key && key.placed.length > 0 ? [key] : []));
  const across = Math.max(1, Math.floor(width / WIDTH));
  const high = Math.max(0, ...drawn.map(highOf));
  return {
    shapes: drawn.flatMap((key, index) =>
      drawnKey(key, [2 + (index % across) * WIDTH, y + Math.floor(index / across) * (high + 1)], layer),
    ),
    height: Math.ceil(drawn.length / across) * (high + 1),
    notes: unknown.map(({ part }) => `Where the sockets of ${part.name} are: ${UNWRITTEN} (connector-at of the part).`),
  };
}
