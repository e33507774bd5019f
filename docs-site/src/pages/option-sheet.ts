import { drawingsOf } from "../drawings/drawings.js";
import { type Drawing, type DrawingSubject, svg } from "../drawings/shared/drawing.js";
import { type Content, h, pageText } from "../html/html.js";

/** One way to make what was wished for, as it is shown to a client. */
export interface SheetOption {
  readonly title: string;
  /** What it trades for what. */
  readonly trades: string;
  /** Figures to compare it by, each with its name. */
  readonly figures: readonly (readonly [name: string, text: string])[];
  readonly subject: DrawingSubject;
  readonly toFindOut: readonly { readonly what: string; readonly by: string }[];
}

const STYLE = `
:root { font: 10.5pt/1.4 "Liberation Sans", Arial, sans-serif; color: #111; background: #fff; }
body { max-width: 190mm; margin: 0 auto; padding: 6mm; }
h1 { font-size: 17pt; margin: 0 0 2mm; } h2 { font-size: 13pt; margin: 6mm 0 1mm; border-bottom: .4mm solid #111; } h3 { font-size: 10.5pt; margin: 3mm 0 1mm; }
p, ul { margin: 1mm 0; } .warn { border: .5mm solid #111; padding: 2mm; font-weight: 600; }
.option { break-inside: avoid-page; } .side { display: grid; grid-template-columns: 1fr 1fr; gap: 4mm; align-items: start; }
figure { margin: 0; } figcaption { font-size: 9pt; } figure svg { width: 100%; height: auto; max-height: 110mm; }
table { border-collapse: collapse; width: 100%; } th, td { text-align: left; vertical-align: top; padding: .6mm 2mm .6mm 0; border-bottom: .2mm solid #999; font-weight: normal; } td { font-weight: 600; }
@media (max-width: 560px) { .side { grid-template-columns: 1fr; } }
@media print { body { padding: 0; max-width: none; } }
`;

const shown = (drawing: Drawing, id: string): Content =>
  h("figure", [svg(drawing, id), h("figcaption", drawing.title)]);

/** What hangs or holds the face, and the face from the audience: what a client can look at. */
const picked = (all: readonly Drawing[]): readonly Drawing[] => {
  const first = (name: RegExp): Drawing | undefined => all.find((each) => name.test(each.name));
  return [first(/^face-.*-power-audience$/u), first(/^hang-plot-/u) ?? first(/^stand-/u)].filter(
    (each) => each !== undefined,
  );
};

const option = ({ title, trades, figures, subject, toFindOut }: SheetOption, index: number): Content =>
  h("section", { class: "option" }, [
    h("h2", title),
    h("p", trades),
    h(
      "div",
      { class: "side" },
      picked(drawingsOf(subject)).map((each, at) => shown(each, `option-${index + 1}-${at + 1}`)),
    ),
    h(
      "table",
      h(
        "tbody",
        figures.map(([name, text]) => h("tr", [h("th", { scope: "row" }, name), h("td", text)])),
      ),
    ),
    h("h3", "What is still to be found out, by whom"),
    toFindOut.length === 0
      ? h("p", "Nothing that the rules ask for.")
      : h(
          "ul",
          toFindOut.map(({ what, by }) => h("li", `${what}: ${by}`)),
        ),
  ]);

/** The options of a wish side by side, each with its face, its hang plot and its figures; it stands by itself and loads nothing. */
export const optionSheet = (title: string, notSaid: readonly string[], options: readonly SheetOption[]): string =>
  pageText(
    h("html", { lang: "en" }, [
      h("head", [
        h("meta", { charset: "utf-8" }),
        h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
        h("title", `Options: ${title}`),
        h("style", STYLE),
      ]),
      h("body", [
        h("h1", title),
        h(
          "p",
          { class: "warn" },
          "Drafts to choose from. Do not build from them: nobody has approved anything, and what a structure, a floor, a wall or a circuit carries is for licensed people to state.",
        ),
        notSaid.length > 0
          ? [
              h("h3", "Not said, and what was taken instead"),
              h(
                "ul",
                notSaid.map((each) => h("li", each)),
              ),
            ]
          : undefined,
        ...options.map(option),
      ]),
    ]),
  );
