import { resolved, type SchemaNode, schemas } from "@plumbmark/core";
import { type Content, h, pageText } from "../html/html.js";

const root = schemas.surveySchema as SchemaNode;

/** How often what has a name of its own is asked for on one form. */
const TIMES: Readonly<Record<string, number>> = { places: 6, routes: 4, circuits: 4, structure: 2, points: 4 };

/** What is copied from a neighbour is not asked for twice, and what a build puts on a circuit is not asked of the hall. */
const LEFT_OUT = new Set(["like", "serves", "stepped", "stays-on", "other-load", "other-inrush"]);

/** What a unit is for each practice: a box says in which it is meant. */
const UNITS: Readonly<Record<string, readonly [us: string, iec: string]>> = {
  length: ["ft in", "m"],
  mass: ["lb", "kg"],
  force: ["lb", "kN"],
  current: ["A", "A"],
  voltage: ["V", "V"],
  conductor: ["AWG", "mm²"],
  illuminance: ["lx", "lx"],
  "areal-load": ["lb/ft²", "kN/m²"],
  temperature: ["°C", "°C"],
  resistance: ["Ω", "Ω"],
  ratio: ["%", "%"],
};

const kindOf = ({ quantity, pair }: SchemaNode): string | undefined =>
  [quantity ?? pair].flat()[0] as string | undefined;

/** Words that may be ticked instead of written. */
const ticks = (words: readonly string[]): Content =>
  words.map((word) => h("span", { class: "choice" }, [h("span", { class: "tick" }), word]));

const box = (node: SchemaNode, practice: "us" | "iec"): Content => {
  const words = node.type === "boolean" ? ["yes", "no"] : wordsOf(node);
  if (words.length > 0 && words.length < 8) return ticks(words);
  const kind = kindOf(node);
  const [us, iec] = (kind === undefined ? undefined : UNITS[kind]) ?? ["", ""];
  const unit = practice === "us" ? us : iec;
  return [h("span", { class: "box" }), unit === "" ? undefined : h("span", { class: "unit" }, unit)];
};

/** The words that may stand there, where nothing else may. */
const wordsOf = (node: SchemaNode): readonly string[] => (node.enum ?? []).map(String);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A line of the form: what is asked, a box, and below it what to look for. */
const field = (key: string, node: SchemaNode, practice: "us" | "iec"): Content => {
  const { title = key, description } = node;
  return h("div", { class: "field" }, [
    h("span", { class: "label" }, capital(title)),
    h("span", { class: "fill" }, box(node, practice)),
    description === undefined ? undefined : h("span", { class: "hint" }, description.replaceAll("`", "")),
  ]);
};

/** Fields of a group, those of its groups among them. */
function fieldsOf(node: SchemaNode, practice: "us" | "iec"): Content {
  const { properties = {} } = resolved(node, root);
  return Object.entries(properties)
    .filter(([key]) => !LEFT_OUT.has(key))
    .map(([key, each]): Content => {
      const inner = resolved(each, root);
      if (typeof inner.additionalProperties === "object") return named(key, inner, practice);
      if (inner.properties)
        return h("div", { class: "group" }, [h("h3", capital(inner.title ?? key)), fieldsOf(inner, practice)]);
      return field(key, inner, practice);
    });
}

/** What each has a name of its own: so many empty ones. */
function named(key: string, node: SchemaNode, practice: "us" | "iec"): Content {
  const each = resolved(node.additionalProperties as SchemaNode, root);
  // What to look for is told in the first.
  const entry = (index: number): Content =>
    h("div", { class: index === 0 ? "entry first" : "entry" }, [
      h("div", { class: "field" }, [
        h("span", { class: "label" }, "Name"),
        h("span", { class: "fill" }, h("span", { class: "box" })),
      ]),
      each.properties ? fieldsOf(each, practice) : field(key, each, practice),
    ]);
  return [h("h3", capital(node.title ?? key)), ...Array.from({ length: TIMES[key] ?? 1 }, (_, index) => entry(index))];
}

const section = (key: string, node: SchemaNode, practice: "us" | "iec"): Content => {
  const { title = key, description, additionalProperties, properties } = node;
  if (!properties && typeof additionalProperties !== "object") return field(key, node, practice);
  return h("section", [
    h("h2", capital(title)),
    description === undefined ? undefined : h("p", { class: "hint" }, description.replaceAll("`", "")),
    properties ? fieldsOf(node, practice) : named(key, { ...node, title: "" }, practice),
  ]);
};

const STYLE = `
@page { margin: 12mm; }
* { box-sizing: border-box; }
body { font: 9.5pt/1.3 system-ui, sans-serif; color: #111; max-width: 186mm; margin: 0 auto; padding: 4mm; }
h1 { font-size: 15pt; margin: 0 0 2mm; } h2 { font-size: 12pt; margin: 6mm 0 1mm; border-bottom: .5mm solid #111; break-after: avoid; }
h3 { font-size: 9.5pt; margin: 2mm 0 0; break-after: avoid; grid-column: 1 / -1; } h3:empty { display: none; }
p { margin: 1mm 0 2mm; }
.hint { color: #444; font-size: 7.5pt; line-height: 1.2; flex-basis: 100%; }
section, .group, .entry { display: grid; grid-template-columns: 1fr 1fr; gap: 1mm 5mm; align-items: start; }
section > h2, section > p, .group, .entry, .sketch { grid-column: 1 / -1; }
.field { display: flex; flex-wrap: wrap; align-items: center; gap: .5mm 2mm; break-inside: avoid; }
.label { flex: 0 0 36mm; } .fill { flex: 1 1 40mm; display: flex; flex-wrap: wrap; align-items: center; gap: 1mm; min-height: 7mm; }
.box { flex: 1; min-width: 18mm; height: 7mm; border: .3mm solid #111; } .unit { min-width: 9mm; }
.choice { display: inline-flex; align-items: center; gap: 1mm; white-space: nowrap; margin-right: 1.5mm; } .tick { width: 4.5mm; height: 4.5mm; border: .3mm solid #111; flex: none; }
.entry { border-left: 1mm solid #999; padding-left: 3mm; margin: 2mm 0; }
.entry:not(.first) .hint { display: none; }
.sketch { height: 120mm; border: .3mm solid #111; background-image: linear-gradient(#ddd .2mm, transparent .2mm), linear-gradient(90deg, #ddd .2mm, transparent .2mm); background-size: 5mm 5mm; break-inside: avoid; }
.warn { border: .5mm solid #111; padding: 2mm; font-weight: 600; }
@media (max-width: 560px) { section, .group, .entry { grid-template-columns: 1fr; } }
@media print { body { padding: 0; max-width: none; } }
`;

/** A survey on paper, with a box for each answer; it stands by itself and loads nothing. */
export function surveyFormPage(title: string, practice: "us" | "iec"): string {
  const asked = Object.entries(root.properties ?? {}).filter(([key]) => key !== "survey" && key !== "title");
  return pageText(
    h("html", { lang: "en" }, [
      h("head", [
        h("meta", { charset: "utf-8" }),
        h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
        h("title", `Survey of ${title}`),
        h("style", STYLE),
      ]),
      h("body", [
        h("h1", `Survey of ${title}`),
        h(
          "p",
          "Write down what you see, and leave out what you do not know: what is missing is asked for later, and never guessed. A question mark behind a figure says that it is a guess.",
        ),
        h(
          "p",
          { class: "warn" },
          "What a beam, a floor or a wall carries is stated by a licensed engineer, and what is behind an outlet by a licensed electrician. Open no panel, and climb on nothing that is not meant for it.",
        ),
        ...asked.map(([key, node]) => section(key, resolved(node, root), practice)),
        h("section", [h("h2", "Sketch of the plan"), h("div", { class: "sketch" })]),
      ]),
    ]),
  );
}
