import { SHEET_WIDTH } from "../shared/drawing.js";
import { hatch } from "../shared/hatch.js";
import { notes } from "../shared/heading.js";
import { lettering, SMALL } from "../shared/lettering.js";
import { lineLook, series } from "../shared/series.js";
import { FINEST, line, path, rect, type Shapes } from "../shared/svg.js";
import { drawnTable } from "../shared/table.js";
import type { Layer, Strand } from "./strand.js";

/** A longer list belongs into the schedules. */
const MOST = 24;
const SWATCH = 13;
const ROW = 4.6;

function swatch({ group, number }: Strand, y: number): Shapes {
  const box = { x: 2, y: y + 0.6, width: SWATCH - 3, height: ROW - 1.2 };
  const own = group === undefined ? undefined : series(group);
  const filled = own
    ? [
        path(hatch(box, own.hatch, 1.8), {
          stroke: own.colour,
          className: `hatch ${own.className}`,
          strokeWidth: FINEST,
        }),
      ]
    : [];
  const middle = box.y + box.height / 2;
  return [
    ...filled,
    rect(box, { strokeWidth: FINEST }),
    line([box.x, middle], [box.x + box.width, middle], lineLook(series(number))),
  ];
}

interface Legend {
  readonly shapes: Shapes;
  readonly height: number;
}

/** On a narrow drawing what a table has side by side stands one under another; a table would cut words off. */
export function legendList({ header, strands }: Layer, y: number, width: number): Legend {
  let at = y;
  const shapes = strands.flatMap((strand): Shapes => {
    const said = strand.legend.slice(1).map(({ words }, index) => `${header[index + 1]}: ${words}`);
    const own = notes(width < SHEET_WIDTH ? said : [said.join("; ")], 4 + SWATCH, at + ROW, width - SWATCH - 6);
    const name = lettering(strand.legend[0]?.words ?? "", [4 + SWATCH, at + ROW * 0.75], { size: SMALL, bold: true });
    const drawn = [...swatch(strand, at), name, ...own.shapes];
    at += ROW + own.height + 1.5;
    return drawn;
  });
  return { shapes, height: at - y };
}

/** What every line and hatch of the face stands for. */
export function legend({ header, strands, on }: Layer, y: number): Legend {
  const listed = strands.slice(0, MOST);
  const own = drawnTable(
    header,
    listed.map((each) => each.legend),
    [2 + SWATCH, y],
    SHEET_WIDTH - SWATCH - 4,
  );
  const swatches = listed.flatMap((each, index) => swatch(each, y + ROW * (index + 1)));
  const rest = strands.length - listed.length;
  const more = notes(
    rest > 0 ? [`And ${rest} more ${on}s: the schedules list them all.`] : [],
    2,
    y + own.height,
    SHEET_WIDTH - 4,
  );
  return { shapes: [...own.shapes, ...swatches, ...more.shapes], height: own.height + more.height };
}
