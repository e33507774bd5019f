import { type System, sum, type Value } from "@plumbmark/calc";
import type { Bar } from "@plumbmark/core";
import { type Drawing, type DrawingSubject, fitsPage, fittedToPage, SHEET_WIDTH } from "../shared/drawing.js";
import { drawingHeading, notes } from "../shared/heading.js";
import { LEADING } from "../shared/lettering.js";
import { scaleBar, scaleText } from "../shared/scale.js";
import { rect, type Shapes, WIDE } from "../shared/svg.js";
import { drawnTable } from "../shared/table.js";
import { gapNotes, resultText, UNWRITTEN, weightText, writtenText } from "../shared/value-text.js";
import { diagrams } from "./diagram.js";
import { belowBar } from "./hung-face.js";
import { type PlotLayout, plotLayout } from "./layout.js";
import { caseWords, HANG_HEADER, hangRows, LEG_HEADER, legRows } from "./rows.js";
import { type BarEnd, heightOf, levelsOf, places, support } from "./supports.js";

const WIDTH = SHEET_WIDTH - 4;

/** In less room the dimensions of short pieces would run into one another. */
const LEAST_SHARE = 0.7;

/** A bar with so many hangs that its table leaves too little of a page. */
const TOO_HIGH = " It is higher than a page and printed smaller: measure by the bar below it.";

const whole = (masses: readonly Value[]): Value => sum(masses, "mass", "m");

/** The one weight of a bar with its parts: the words of the check and of the register. */
function weightWords(bar: Bar, system: System): string {
  const words = (value: Value): string => resultText(value, system);
  const faces = words(whole(bar.masses.slice(0, bar.carries.length)));
  const cables = words(whole(bar.cables.map(({ mass }) => mass)));
  const own = words(whole(bar.hangs.map(({ ownMass }) => ownMass)));
  const other = bar.otherLoad ? `, other load ${words(bar.otherLoad)}` : "";
  return `Weight, all that the structure bears: ${weightText(bar.onStructure, system)}. Of it: panels with what they carry ${faces}, cables ${cables}, the bar itself ${words(bar.selfMass)}${other} – these the hangs carry, ${words(bar.load)} – and the hangs themselves ${own}.`;
}

/** What of the bar's second suspension is written, and where it is; what is written for all bars where it has none of its own. */
function secondWords({ second }: Bar, { build }: DrawingSubject): string {
  if (!second) return build.secondary.map(({ name }) => name).join(", ") || UNWRITTEN;
  const parts = second.assembly.parts.map(({ name }) => name).join(", ");
  const { hangs } = second;
  const where = hangs?.length === second.bar.hangs.length ? "each hang" : hangs?.map(({ name }) => name).join(", ");
  return `${parts || `parts ${UNWRITTEN}`}, at ${where || `hangs ${UNWRITTEN}`}`;
}

function facts(bar: Bar, subject: DrawingSubject): readonly string[] {
  const { build, system } = subject;
  const section = build.reader.text(`${bar.path}.section`) ?? UNWRITTEN;
  const { letter } = bar;
  const survey = build.reader.venue?.statedAt(`${letter.path}.by`);
  const signed = [letter.text("by"), letter.text("on"), survey && `as in ${survey.by}`].filter(Boolean).join(", ");
  const by = signed === "" ? build.reader.text("rigging.structure-by") : signed;
  const { stillness } = bar;
  return [
    weightWords(bar, system),
    `Section ${section}. The structure may carry in all: ${writtenText(bar.structure, system)}.`,
    `Ratings of the structure: ${by ?? `who states them is ${UNWRITTEN}`}. Second suspension: ${secondWords(bar, subject)}.`,
    ...(stillness.known && !stillness.still ? [`The bar does not hang still: ${stillness.because}.`] : []),
    "Level: the bar level on all its hangs. At worst (≤): the most in any balance, whatever the lengths of the ropes, or in those the levelling lets. On structure: with the hardware it hangs by. Rated: the structure there, as stated. Weakest: the least working load limit. Loads are masses; underlined figures, drops and hooks are not to scale.",
  ];
}

function elevation(
  layout: PlotLayout,
  top: number,
  subject: DrawingSubject,
): { readonly shapes: Shapes; readonly bottom: number } {
  const { bar, x, length, scale } = layout;
  const rows = (end: BarEnd): number => LEADING * (1 + Math.max(0, ...levelsOf(layout, subject.system, end).values()));
  const behind = top + 1.3 + rows("right");
  const dims = behind + 5.2 + rows("left");
  const y = dims + 6 + heightOf(layout);
  const below = belowBar(layout, y + 1.2, subject);
  const shear = diagrams(layout, below.bottom + 1, subject.system);
  const bottom = below.bottom + shear.height + 4;
  return {
    bottom,
    shapes: [
      ...places(layout, behind, y, subject.system, "right"),
      ...places(layout, dims, y, subject.system),
      rect(
        { x: x(0), y, width: scale.mm(length), height: 1.2 },
        { fill: "currentColor", strokeWidth: WIDE, className: "bar", dataBar: bar.name },
      ),
      ...bar.hangs.filter((hang) => hang.at.known).map((hang) => support(layout, hang, y, subject.system)),
      ...below.shapes,
      ...shear.shapes,
      scaleBar(scale, [SHEET_WIDTH - 62, bottom]),
    ],
  };
}

function describe(bar: Bar, { system }: DrawingSubject): string {
  const hangs = bar.hangs.map(
    (hang) =>
      `hang ${hang.name} at ${writtenText(hang.at, system)} carries ${resultText(hang.level, system)} level and ${resultText(hang.worst.reaction, system)} at worst (${caseWords(hang.worst.when)})${hang.bridled ? "" : `, on the structure ${resultText(hang.onStructure(hang.level), system)} and ${resultText(hang.onStructure(hang.worst.reaction), system)}`}`,
  );
  const { moment, when } = bar.worstMoment;
  const carried = bar.carries.map(({ face, from }) => `face ${face.name} from ${writtenText(from, system)}`);
  return `A bar of ${writtenText(bar.length, system)} carries ${carried.join(" and ") || "nothing that is written down"}. From its left end as the audience sees it: ${hangs.join("; ") || "no hang is written down"}. Weight, all that the structure bears: ${weightText(bar.onStructure, system)}. Below it its shear and bending moment: level at most ${resultText(bar.moment, system)}, at worst ${resultText(moment, system)} (${caseWords(when)}).`;
}

/** A bar with what it carries, what its hangs carry, and what they may. */
export const hangPlot = (bar: Bar, subject: DrawingSubject): Drawing => {
  const drawing = fittedToPage((share) => drawnPlot(bar, subject, share), LEAST_SHARE);
  return fitsPage(drawing) ? drawing : drawnPlot(bar, subject, LEAST_SHARE, TOO_HIGH);
};

function drawnPlot(bar: Bar, subject: DrawingSubject, share: number, printed = ""): Drawing {
  const layout = plotLayout(bar, subject, share);
  const title = `Bar ${bar.name}: hang plot`;
  const seen =
    "Seen from the audience. Lower row of places: from the end of the bar at the audience's left. Upper row: from the end at the audience's right, which is the left one seen from behind.";
  const top = drawingHeading(
    title,
    [
      layout
        ? `${seen} ${scaleText(layout.scale)}.${printed}`
        : "Not drawn: the length of the bar is not written down.",
    ],
    SHEET_WIDTH,
  );
  const drawn = layout ? elevation(layout, top.height, subject) : { shapes: [], bottom: top.height };
  const hangs = drawnTable(HANG_HEADER, hangRows(bar, subject), [2, drawn.bottom + 4], WIDTH);
  const legs = legRows(bar, subject);
  const low = drawn.bottom + 4 + hangs.height + 2;
  const legTable = legs.length > 0 ? drawnTable(LEG_HEADER, legs, [2, low], WIDTH) : { shapes: [], height: 0 };
  const missing = bar.hung.known ? [] : gapNotes([bar.hung]);
  const foot = notes([...facts(bar, subject), ...missing], 2, low + legTable.height, WIDTH);
  return {
    name: `hang-plot-${bar.name}`,
    title,
    description: describe(bar, subject),
    width: SHEET_WIDTH,
    height: low + legTable.height + foot.height + 3,
    shapes: [...top.shapes, ...drawn.shapes, ...hangs.shapes, ...legTable.shapes, ...foot.shapes],
  };
}
