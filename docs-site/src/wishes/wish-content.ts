import { useNotice } from "@plumbmark/core";
import {
  buildableTable,
  costText,
  type DraftRecord,
  lengthAsWritten,
  type OptionEntry,
  optionsTable,
} from "@plumbmark/draft";
import { drawingsOf } from "../drawings/drawings.js";
import { elevationsOf } from "../drawings/elevation.js";
import { type Drawing, SHEET_WIDTH, type DrawingSubject as Subject, stamped, svg } from "../drawings/shared/drawing.js";
import { type Content, h } from "../html/html.js";
import { inlineCode } from "../html/inline-code.js";
import { verdictState } from "../html/state.js";
import { table } from "../html/table.js";
import { cautions } from "../sheet/cautions.js";

/** Options of a wish with the builds their drawings are made from, in the same order. */
export interface WishSheet {
  readonly record: DraftRecord;
  readonly subjects: readonly Subject[];
  /** The day it was drafted. */
  readonly today: string;
  /** What could not be asked when it was drafted, in sentences. */
  readonly remarks?: readonly string[];
}

const NOTICE = useNotice({ verdict: "draft", status: "draft" }) as string;

export const TO_FIND_COLUMNS = ["What", "By whom"] as const;
export const BUY_COLUMNS = ["Part", "Count", "Price of one", "Sum"] as const;
export const SHAPE_COLUMNS = ["Panel", "Columns", "Rows up to", "Size", "One row more"] as const;

const LEAD =
  "Drafts to choose from, laid out and inspected by the formulas and rules that judge a build. Nobody has approved anything: what a structure, a floor, a wall or a circuit carries is for licensed people to state, in writing, before anything is lifted or energised.";

interface Stamp {
  /** Whose drawing it is: many are called alike. */
  readonly of: string;
  readonly words: string;
}

const stampOf = ({ record: { wish }, today }: WishSheet, { number }: OptionEntry): Stamp => ({
  of: `option ${number}`,
  words: `${wish} · option ${number} · draft · inspected ${today}`,
});

/** A drawing that is never without the words that nothing is to be built from it. */
function figure(drawing: Drawing | undefined, id: string, { of, words }: Stamp): Content {
  if (!drawing) return undefined;
  const scrolls = drawing.width >= SHEET_WIDTH;
  return h("figure", { class: scrolls ? ["drawn"] : ["drawn", "compact"] }, [
    scrolls ? h("p", { class: "hint" }, "The drawing scrolls sideways.") : undefined,
    h(
      "section",
      { class: "wide", tabindex: 0, ariaLabel: `${drawing.title}, ${of}` },
      svg(stamped(drawing, words, NOTICE), id),
    ),
  ]);
}

const NOT_PRICED = h("em", "not priced");

const HIDDEN = new Set(["Option"]);

/** The figures options are compared by, as they stand in the table of the command. */
const figuresOf = (record: DraftRecord, index: number): Content => {
  const { columns, rows } = optionsTable(record);
  return h(
    "dl",
    columns.flatMap(({ name }, at) =>
      HIDDEN.has(name) ? [] : [h("div", [h("dt", name), h("dd", rows[index]?.[at]?.text ?? "")])],
    ),
  );
};

const sideBySide = (sheet: WishSheet): Content => {
  const { record, subjects } = sheet;
  const elevations = elevationsOf(subjects);
  return h(
    "div",
    { class: "options" },
    record.options.map((option, index) =>
      h("section", { class: "option", ariaLabelledby: `Option-${option.number}` }, [
        h("h3", { id: `Option-${option.number}` }, [
          h("a", { href: `#More-${option.number}` }, `Option ${option.number}`),
          " ",
          verdictState({ verdict: "draft" }),
        ]),
        figure(elevations[index], `Elevation-${option.number}`, stampOf(sheet, option)) ??
          h("p", "Its size cannot be told."),
        h("p", inlineCode(option.trades)),
        figuresOf(record, index),
      ]),
    ),
  );
};

const listed = (title: string, lines: readonly string[]): Content =>
  lines.length === 0
    ? undefined
    : [
        h("h2", title),
        h(
          "ul",
          lines.map((each) => h("li", inlineCode(each))),
        ),
      ];

/** What hangs or holds the face. */
const holdingOf = (subject: Subject | undefined): readonly Drawing[] =>
  subject ? drawingsOf(subject).filter(({ name }) => /^(?:hang-plot|stand)-/u.test(name)) : [];

/** What has to be bought with its price where the catalogue has one; never without the words that it has none. */
const toBuy = ({ cost }: OptionEntry): Content =>
  cost.pieces.length === 0
    ? h("p", "Nothing has to be bought or hired: all of it is on the shelf on those days.")
    : [
        h(
          "div",
          { class: "rows to-buy" },
          table(
            "To buy or to hire: not owned, or not free on those days",
            BUY_COLUMNS,
            cost.pieces.map(({ part, length, count, buy, each, sum }) => [
              [h("code", part), length === undefined ? "" : ` of ${length}`],
              buy === count ? String(count) : `${count}; sold are ${buy}`,
              each ?? NOT_PRICED,
              sum ?? NOT_PRICED,
            ]),
          ),
        ),
        h("p", `In all, without tax: ${costText(cost)}.`),
      ];

const conditions = ({ "possible-if": all }: OptionEntry): Content =>
  all.length === 0
    ? undefined
    : [
        h("p", "It is possible if this is done first:"),
        h(
          "ul",
          all.map((each) => h("li", inlineCode(each))),
        ),
      ];

const advised = ({ advised: all }: OptionEntry): Content =>
  all.length === 0
    ? undefined
    : [
        h("p", "Recommendations it does not meet:"),
        h(
          "ul",
          all.map(({ says }) => h("li", inlineCode(says))),
        ),
      ];

const toFindOut = ({ "to-find-out": all, number }: OptionEntry): Content =>
  all.length === 0
    ? h("p", "Nothing that the rules ask for is left to be found out.")
    : h(
        "div",
        { class: "rows to-find-out" },
        table(
          `Still to be found out for option ${number}`,
          TO_FIND_COLUMNS,
          all.map(({ what, by }) => [inlineCode(what), inlineCode(by)]),
        ),
      );

const more = (sheet: WishSheet): Content =>
  sheet.record.options.map((option, index) => [
    h("h2", { id: `More-${option.number}` }, `Option ${option.number}`),
    h("p", inlineCode(option.trades)),
    h("div", { class: "held" }, [
      h(
        "div",
        holdingOf(sheet.subjects[index]).map((each, at) =>
          figure(each, `Holding-${option.number}-${at + 1}`, stampOf(sheet, option)),
        ),
      ),
      h("div", [toBuy(option), conditions(option), advised(option), toFindOut(option)]),
    ]),
  ]);

const outOfIt = ({ columns, rows, panel, variant, says, nearest }: DraftRecord["fell-out"][number]): string =>
  `${columns} × ${rows} ${panel}${variant.length > 0 ? `, ${variant.join(", ")}` : ""}: ${says}${nearest === undefined ? "" : ` ${nearest}`}`;

function unmet({ nearest, units }: DraftRecord): Content {
  const length = (metres: number): string => lengthAsWritten(metres, units);
  return [
    h("p", h("b", "Nothing that is on offer meets this wish.")),
    nearest
      ? h(
          "p",
          `The nearest that can be made is ${length(nearest.width)} × ${length(nearest.height)}, of ${nearest.panel}.`,
        )
      : undefined,
  ];
}

function buildable(record: DraftRecord): Content {
  if ((record["can-build"] ?? []).length === 0) return undefined;
  const { title, columns, rows } = buildableTable(record, (metres) => lengthAsWritten(metres, record.units));
  return [
    h("h2", title),
    h(
      "div",
      { class: "rows shapes" },
      table(
        title,
        columns.map(({ name }) => name),
        rows.map((row) => row.map(({ text }) => text)),
      ),
    ),
  ];
}

/** Whether anything of it hangs: what a wish does not say is taken as flown. */
const lifts = ({ subjects }: WishSheet): boolean =>
  subjects.length === 0 || subjects.some(({ build }) => build.faces.some(({ support }) => support === "flown"));

/** A wish with its options, as it is put before a client: side by side first, then each with what holds it. */
export function wishContent(sheet: WishSheet): Content {
  const { record, remarks = [] } = sheet;
  const { options } = record;
  return [
    h("p", { class: "notice" }, NOTICE),
    h("p", LEAD),
    remarks.map((each) => h("p", inlineCode(each))),
    options.length === 0
      ? unmet(record)
      : [h("h2", { id: "Options" }, options.length === 1 ? "One option" : "Options side by side"), sideBySide(sheet)],
    cautions({ lifts: lifts(sheet), mains: true, generator: false }),
    buildable(record),
    more(sheet),
    listed("Not said, and what was taken instead", record["not-said"]),
    listed(options.length === 0 ? "What is in the way" : "What fell out, and why", record["fell-out"].map(outOfIt)),
    listed("Not looked at", record["not-looked-at"]),
  ];
}
