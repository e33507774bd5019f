import { type Formula, type Kind, kinds, type Method, type Register, type SourceId } from "@plumbmark/calc";
import { anchor } from "../../html/anchor.js";
import { type Content, h } from "../../html/html.js";
import { subscripts } from "../../html/subscripts.js";
import { table } from "../../html/table.js";
import { plainUnit, unitText } from "../../html/unit-text.js";
import { formulaMath, symbolMath } from "../../math/mathml.js";
import type { SitePage } from "../page.js";
import { sourceAnchor } from "./sources-page.js";

const number = (value: number): string => String(Number(value.toPrecision(9)));

/** The unit an example is in: the one the kind is kept in. */
const unit = (kind: Kind): string => {
  const text = unitText(kind);
  return text === "" || text === "°" ? text : ` ${text}`;
};

const link = (id: SourceId): Content => h("a", { href: sourceAnchor(id) }, id);

const links = (ids: readonly SourceId[]): Content => ids.flatMap((id, index) => [index > 0 ? ", " : "", link(id)]);

const inputs = (formula: Formula): Content =>
  h(
    "ul",
    Object.entries(formula.inputs).map(([symbol, { is, kind, many }]) =>
      h("li", [
        symbolMath(symbol),
        ` ${is}, ${kinds[kind].name}${plainUnit(kind) && ` in ${plainUnit(kind)}`}${many ? ", each" : ""}`,
      ]),
    ),
  );

function example({ inputs: of, kind, symbol, example: { given, gives, from } }: Formula): Content {
  const put = Object.entries(of).map(([name, input]) => {
    const value = given[name] as number | readonly number[];
    const values = typeof value === "number" ? [value] : value;
    return `${name} = ${values.map((each) => number(each) + unit(input.kind)).join("; ")}`;
  });
  return [
    subscripts(`${put.join(", ")}: ${symbol} = ${number(gives)}${unit(kind)}`),
    h("br"),
    subscripts(`From: ${from}`),
  ];
}

const formulaRow = (formula: Formula) => ({
  id: anchor("Formula", formula.id),
  cells: [
    [h("code", formula.id), h("br"), formula.title],
    // One under the other: side by side, the longest expression would leave the inputs a few letters wide.
    [formulaMath(formula.symbol, formula.expression), inputs(formula)],
    [formula.validity, h("br"), links([formula.source, ...(formula.also ?? [])])],
    example(formula),
  ],
});

const answer = (gives: Method["example"]["gives"]): string =>
  (Array.isArray(gives) ? gives : [gives])
    .map((each) =>
      typeof each === "number" ? number(each) : each === true ? "yes" : each === false ? "no" : String(each),
    )
    .join(", ");

const methodRow = ({ name, title, units, validity, sources, example: { asks, gives, from } }: Method) => ({
  id: anchor("Method", name),
  cells: [
    [h("code", name), h("br"), title],
    units,
    validity,
    [`${asks}: ${answer(gives)}`, h("br"), `From: ${from}`],
    links(sources),
  ],
});

export const FORMULAS = ["Formula", "Expression and inputs", "Holds for; source", "Worked example"];
export const METHODS = ["Method", "Units", "Holds for", "Worked example", "Source"];

/** Every formula and method with its validity, its source and a worked example. */
export function formulasPage({ formulas, methods }: Register): SitePage {
  const content: Content = [
    h(
      "p",
      "Every formula can be redone on a pocket calculator. Examples are in the units the values are kept in, and every one is run by the tests.",
    ),
    h("div", { class: "rows formula-rows" }, table("Formulas", FORMULAS, formulas.map(formulaRow))),
    h("p", "Methods read a table, solve a beam or a timing, or decide a condition."),
    h("div", { class: "rows method-rows" }, table("Methods", METHODS, methods.map(methodRow))),
  ];
  return { path: "formulas.html", title: "Formulas", number: "0.5", content };
}
