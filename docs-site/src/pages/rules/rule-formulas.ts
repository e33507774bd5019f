import { type Formula, formulas, type Kind, kinds, type SourceId, sourceOf } from "@plumbmark/calc";
import { anchor } from "../../html/anchor.js";
import { sourceName } from "../../html/figure-text.js";
import { type Content, h } from "../../html/html.js";
import { subscripts } from "../../html/subscripts.js";
import { plainUnit } from "../../html/unit-text.js";
import { formulaMath, symbolMath } from "../../math/mathml.js";
import { examples } from "./examples.js";

/** Says nothing by itself: a setting's share of a value. */
const PLAIN = "value × factor";

const written = ({ symbol, expression }: Formula): string => `${symbol} = ${expression}`;

let listed: ReadonlyMap<string, Formula> | undefined;

const byText = (): ReadonlyMap<string, Formula> => {
  listed ??= new Map(formulas().map((each) => [written(each), each]));
  return listed;
};

/** What a rule's examples were worked out with, first things first. */
function stepsOf(id: string): ReadonlyMap<string, string | undefined> {
  const steps = new Map<string, string | undefined>();
  for (const { checks } of examples().rules[id] ?? [])
    for (const { working = [] } of checks)
      for (const { formula, source } of working)
        if (formula !== PLAIN && !steps.has(formula)) steps.set(formula, source);
  return steps;
}

/** Of what kind an input is, unless its words say so already: no "voltage across the load, a voltage"; and in what unit. */
const ofKind = (is: string, kind: Kind): string => {
  const [{ name }, unit] = [kinds[kind], plainUnit(kind)];
  const said = kind === "count" || is.includes(name.replace(/^an? /u, ""));
  return `${said ? "" : `, ${name}`}${unit && ` in ${unit}`}`;
};

const symbols = ({ inputs }: Formula): Content =>
  h(
    "ul",
    { class: "symbols" },
    Object.entries(inputs).map(([symbol, { is, kind }]) => h("li", [symbolMath(symbol), ` ${is}${ofKind(is, kind)}`])),
  );

/** In what unit the result comes out, when the inputs are put in as listed. */
const gives = ({ kind }: Formula): string => (plainUnit(kind) ? `Gives ${plainUnit(kind)}. ` : "");

const from = (source: SourceId): string => `Source: ${sourceName(sourceOf(source))}.`;

/** `M_r = sum of the parts`: a symbol that is set as such, and words. */
const inWords = (text: string): Content => {
  const [, symbol, words] = /^([\p{L}][\p{L}\p{Nd}_]*) = (\p{L}[\p{L} ]+ [\p{L} ]+)$/u.exec(text) ?? [];
  return symbol !== undefined && words !== undefined
    ? [symbolMath(symbol), ` = ${words.replace(/ of$/u, " of the values")}`]
    : h("code", subscripts(text));
};

/** A long method as one step under another, without the names of the example's own hangs. */
function method(text: string): Content {
  const steps = text.split(/; /u);
  if (steps.length < 2) return h("p", inWords(text));
  return h(
    "ol",
    { class: "steps" },
    steps.map((each) => h("li", inWords(each))),
  );
}

function item(text: string, source: string | undefined): Content {
  const formula = byText().get(text);
  const rests = source === undefined ? undefined : h("p", h("small", from(source as SourceId)));
  if (!formula) return h("li", [method(text), ...(rests ? [rests] : [])]);
  return h("li", [
    h("p", h("a", { href: `../formulas.html#${anchor("Formula", formula.id)}` }, formula.title)),
    formulaMath(formula.symbol, formula.expression),
    symbols(formula),
    h("p", h("small", [`Holds for ${formula.validity}. `, gives(formula), from(formula.source)])),
  ]);
}

/** The formulas a rule judges by, set as in a handbook, with what their symbols are. */
export function ruleFormulas(id: string): Content {
  const steps = [...stepsOf(id)];
  if (steps.length === 0) return undefined;
  return h(
    "ol",
    { class: "formulas" },
    steps.map(([text, source]) => item(text, source)),
  );
}
