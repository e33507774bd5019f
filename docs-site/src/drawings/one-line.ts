import { endVoltage, farEndDrop, sum, type Value } from "@plumbmark/calc";
import type { Circuit, Run } from "@plumbmark/core";
import { arrowHead } from "./shared/dimension.js";
import { type Drawing, type DrawingSubject, failureMark, failureNotes, SHEET_WIDTH } from "./shared/drawing.js";
import { drawingHeading, notes } from "./shared/heading.js";
import { aboutMiddle, fitted, LEADING, lettering, SMALL } from "./shared/lettering.js";
import { line, path, polyline, rect, type Shapes, svgShape, WIDE } from "./shared/svg.js";
import { gapNotes, resultText, UNWRITTEN, writtenText } from "./shared/value-text.js";

const BREAKER = 27;
const OUTLET = 70;
/** Where the panels of a run stand. */
const PANELS = [117, 141, 165] as const;
const ROW = 26;
const BOX = { width: 11, height: 8 };

const small = (words: string, x: number, y: number, anchor: "start" | "middle" | "end" = "middle", data = {}) =>
  lettering(words, [x, y], { size: SMALL, anchor, data });

/** What is left of the supply at a panel of the run, 0 the first: less the wiring, the feed and every jumper before it. */
function voltageAt(run: Run, index: number): Value {
  const own = farEndDrop.of({ dv: run.drops.slice(0, index + 2) });
  return endVoltage.of({ V: run.voltage, dv: run.feederDrop ? sum([run.feederDrop, own], "voltage") : own });
}

const valueMark = (name: string, value: Value): Readonly<Record<string, string | number>> =>
  value.known ? { [name]: value.value } : {};

/** Switch blade with the cross of a breaker at its fixed contact (IEC 60617). */
const breaker = (x: number, y: number): Shapes => [
  path(`M${x - 8} ${y}h8l9 -4.2`, { strokeWidth: WIDE }),
  path(`M${x + 8} ${y}h6`, { strokeWidth: WIDE }),
  path(`M${x + 6.9} ${y - 1.1}l2.2 2.2m0 -2.2l-2.2 2.2`, { strokeWidth: WIDE }),
];

/** Beside the figures of a run or a circuit for which a rule does not hold; which rules is told below. */
const failed = (subject: DrawingSubject, path: string, x: number, y: number): Shapes =>
  failureMark(subject, path) === undefined
    ? []
    : [lettering("does not hold", [x, y], { size: SMALL, bold: true, data: { dataFailure: path } })];

/** Room for those words under the last row. */
const MARKED = 7;

function source(circuit: Circuit, y: number, subject: DrawingSubject): Shapes {
  const { build, system } = subject;
  const { reader } = build;
  const wiring = `${circuit.path}.wiring`;
  const length = reader.value(`${wiring}.length`, "length", "length of the building wiring", circuit.label);
  const wired = circuit.conductor.known || length.known;
  const phases = circuit.threePhase ? "three phase, between lines" : "";
  const residual = circuit.hasResidual ? [`residual ${writtenText(circuit.residual, system)}`] : [];
  const more = circuit.outletCount === undefined ? "" : circuit.outletCount === 1 ? "" : `${circuit.outletCount} × `;
  return [
    svgShape("circle", { cx: 12, cy: y, r: 3, fill: "none", stroke: "currentColor", strokeWidth: WIDE }),
    path(`M10 ${y}c.7 -1.6 1.4 -1.6 2 0s1.4 1.6 2 0`),
    small(writtenText(circuit.voltage, system), 2, y + 8, "start", valueMark("dataSupply", circuit.voltage)),
    ...(phases ? [small(phases, 2, y + 8 + LEADING, "start")] : []),
    line([15, y], [BREAKER - 8, y], { strokeWidth: WIDE }),
    ...breaker(BREAKER, y),
    small(
      `breaker ${writtenText(circuit.breaker, system)}`,
      BREAKER + 3,
      y - 6.5,
      "middle",
      valueMark("dataBreaker", circuit.breaker),
    ),
    ...residual.map((words) => small(words, BREAKER + 3, y - 6.5 - LEADING)),
    line([BREAKER + 14, y], [OUTLET, y], { strokeWidth: WIDE }),
    small(
      wired ? `${writtenText(circuit.conductor, system)}, ${writtenText(length, system)}` : `wiring ${UNWRITTEN}`,
      (BREAKER + 14 + OUTLET) / 2,
      y - 1.4,
    ),
    small(
      resultText(circuit.current, system),
      (BREAKER + 14 + OUTLET) / 2,
      y + 4,
      "middle",
      valueMark("dataCurrent", circuit.current),
    ),
    svgShape("path", { d: `M${OUTLET} ${y - 2.4}a2.4 2.4 0 0 1 0 4.8z`, fill: "currentColor" }),
    small(fitted(`${more}${circuit.outlet ?? `outlet ${UNWRITTEN}`}`, 40, SMALL), OUTLET + 4, y + 8.4, "end"),
    ...failed(subject, circuit.path, 2, y + 16),
  ];
}

function panelBox(name: string, x: number, y: number): Shapes {
  return [
    rect({ x, y: y - BOX.height / 2, ...BOX }, { strokeWidth: WIDE }),
    small(name, x + BOX.width / 2, aboutMiddle(y)),
  ];
}

interface Stop {
  /** Number in the run, from 0. */
  readonly index: number;
  readonly x: number;
}

/** The first, the second and the last panel; what lies between is broken out. */
const stops = (count: number): readonly Stop[] =>
  [...new Set([0, 1, count - 1])]
    .filter((index) => index < count)
    .map((index, place) => ({ index, x: PANELS[place] as number }));

function jumperTo(run: Run, from: Stop, to: Stop, y: number, { system }: DrawingSubject): Shapes {
  const behind = run.taps.slice(to.index);
  const x1 = from.x + BOX.width;
  const middle = (x1 + to.x) / 2;
  const skipped = to.index - from.index - 1;
  const current = sum(behind, "current", "I");
  return [
    line([x1, y], [to.x, y], { strokeWidth: WIDE, ...(skipped > 0 ? { strokeDasharray: "1 1.2" } : {}) }),
    ...(skipped > 0 ? [small(`${skipped} more`, middle, y - 1.4)] : []),
    small(writtenText(current, system, "?"), middle, y + 4, "middle", valueMark("dataInto", current)),
  ];
}

function panelsOf(run: Run, y: number, subject: DrawingSubject): Shapes {
  const { panels } = run;
  const { system } = subject;
  if (!panels) return [small(`panels ${UNWRITTEN}`, PANELS[0] + 2, aboutMiddle(y), "start")];
  const all = stops(panels.length);
  return all.flatMap((stop, place) => {
    const voltage = voltageAt(run, stop.index);
    const last = stop.index === panels.length - 1;
    const from = all[place - 1];
    return [
      ...(from ? jumperTo(run, from, stop, y, subject) : []),
      ...panelBox(panels[stop.index]?.name.split(" ")[1] ?? "", stop.x, y),
      small(writtenText(voltage, system, "?"), stop.x + BOX.width / 2, y + 8.4, "middle", {
        ...valueMark("dataVoltage", voltage),
        ...(last ? { dataLast: run.name } : {}),
      }),
    ];
  });
}

function row(run: Run, y: number, outlet: number, subject: DrawingSubject): Shapes {
  const { system } = subject;
  const legs = run.legs === undefined ? "" : ` (legs ${run.legs})`;
  const start = OUTLET + 6;
  const part = run.feed.part?.name ?? run.build.reader.text(`${run.feed.path}.part`) ?? `feed ${UNWRITTEN}`;
  const length = run.feed.length.known ? `${writtenText(run.feed.length, system)} of` : `length ${UNWRITTEN}`;
  return [
    polyline(
      [
        [OUTLET + 2.4, outlet],
        [start, outlet],
        [start, y],
        [PANELS[0], y],
      ],
      { strokeWidth: WIDE },
    ),
    arrowHead([PANELS[0], y], 0, 2.4),
    lettering(`${run.name}${legs}: ${length}`, [start + 1.5, y - 5.2], {
      size: SMALL,
      bold: true,
      data: { dataRun: run.name },
    }),
    small(fitted(part, PANELS[0] - start - 2, SMALL), start + 1.5, y - 1.4, "start"),
    small(resultText(run.current, system), start + 1.5, y + 4, "start", valueMark("dataRunCurrent", run.current)),
    small(
      run.voltageDrop.known ? `${resultText(run.voltageDrop, system)} lost at the end` : "drop cannot be told",
      start + 1.5,
      y + 8.4,
      "start",
    ),
    ...failed(subject, run.path, start + 1.5, y + 12.6),
    ...panelsOf(run, y, subject),
  ];
}

/** What is on the circuit besides its runs, and counted in its current: devices by name, and other load. */
const otherLoad = (circuit: Circuit, { build, system }: DrawingSubject): string | undefined => {
  const path = `${circuit.path}.other-load`;
  const other = build.reader.isNone(path)
    ? undefined
    : build.reader.optional(path, "power", "other load", circuit.label);
  const loads = [
    ...circuit.devices.map(({ part, load }) => `${part.name}, ${resultText(load, system)}`),
    ...(other ? [`other load, ${resultText(other, system)}`] : []),
  ];
  return loads.length === 0 ? undefined : `Also on the circuit, counted in its current: ${loads.join("; ")}.`;
};

const controlWords = ({ control }: Circuit): string => `Control of the circuit: ${control ?? UNWRITTEN}.`;

/** What the voltages are counted from. */
const feederWords = (circuit: Circuit, { build, system }: DrawingSubject): string => {
  const path = `${circuit.path}.wiring.feeder-drop`;
  const lost = build.reader.optional(path, "ratio", "voltage drop of the feeder", circuit.label);
  return lost?.known
    ? `Voltages count the ${writtenText(lost, system)} that the feeder loses before the breaker.`
    : `Voltages are counted from the breaker: what the feeder loses before it is ${UNWRITTEN}.`;
};

const legWords = (circuit: Circuit, system: DrawingSubject["system"]): readonly string[] =>
  circuit.threePhase
    ? [
        `Legs: ${Object.entries(circuit.legs)
          .map(([leg, value]) => `${leg} ${resultText(value, system)}`)
          .join(", ")}. The current of the circuit is that of its fullest leg.`,
      ]
    : [];

function describe(circuit: Circuit, { system }: DrawingSubject): string {
  const runs = circuit.runs.map(
    (run) =>
      `run ${run.name} takes ${resultText(run.current, system)} over ${run.panels?.length ?? "an unknown number of"} panels and has ${resultText(run.voltageAtEnd, system)} at the last`,
  );
  return `Circuit ${circuit.name}: supply ${writtenText(circuit.voltage, system)}, breaker ${writtenText(circuit.breaker, system)}, outlet ${circuit.outlet ?? UNWRITTEN}, current ${resultText(circuit.current, system)}. ${runs.join("; ") || "No run is on it"}.`;
}

/** From the breaker to the last panel of every run, with current along the way and voltage at the panels. */
export function oneLine(circuit: Circuit, subject: DrawingSubject): Drawing {
  const { runs } = circuit;
  const title = `Circuit ${circuit.name}: one-line power diagram`;
  const top = drawingHeading(
    title,
    [
      "Not to scale. Above a line is the cable, below it the current; below a panel is its voltage.",
      "Panels are named as the audience sees the face, A1 at its upper left.",
    ],
    SHEET_WIDTH,
  );
  const first = top.height + 17;
  const y = (index: number): number => first + index * ROW;
  const gaps = gapNotes([circuit.voltage, circuit.breaker, ...runs.map((run) => run.voltageAtEnd)]);
  const failures = failureNotes(subject, [circuit, ...runs]);
  const room = failures.length > 0 ? MARKED : 0;
  const words = [
    feederWords(circuit, subject),
    otherLoad(circuit, subject),
    controlWords(circuit),
    ...legWords(circuit, subject.system),
    ...gaps,
  ].filter((each) => each !== undefined);
  const rated = `Continuous rating: ${resultText(circuit.continuousRating(), subject.system)}. Current of the circuit: ${resultText(circuit.current, subject.system)}.`;
  const foot = notes([...failures, rated, ...words], 2, y(Math.max(runs.length, 1) - 1) + 13 + room, SHEET_WIDTH - 4);
  return {
    name: `one-line-${circuit.name}`,
    title,
    description: describe(circuit, subject),
    width: SHEET_WIDTH,
    height: y(Math.max(runs.length, 1) - 1) + 16 + room + foot.height,
    shapes: [
      ...top.shapes,
      ...source(circuit, first, subject),
      ...runs.flatMap((run, index) => row(run, y(index), first, subject)),
      ...foot.shapes,
    ],
  };
}
