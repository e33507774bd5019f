import { connectors, type Kind, kinds, printQuantity, type Retention, sections, unitsOf } from "@plumbmark/calc";
import { schemas } from "@plumbmark/core";
import { anchor } from "../../html/anchor.js";
import { type Content, h } from "../../html/html.js";
import { table } from "../../html/table.js";
import { linkTo, type SitePage } from "../page.js";
import type { SchemaPiece } from "./fields.js";
import { kindsOfPart } from "./known-files.js";
import { referencePath } from "./reference-page.js";

export const LISTS_PATH = "reference/lists.html";

export const CONNECTOR_COLUMNS = ["WrittenWords", "Connector", "Standard", "Held by", "Mates with"];
export const SECTION_COLUMNS = ["WrittenWords", "Section", "Outside", "Wall it is judged with", "Mass"];
export const UNIT_COLUMNS = ["Kind", "Units"];

const HELD: Readonly<Record<Retention, string>> = {
  none: "nothing",
  friction: "friction",
  latch: "a latch",
  twist: "a twist",
  screw: "screws",
  bayonet: "a bayonet",
};

const codes = (all: readonly string[]): Content => all.map((each, index) => [index > 0 ? ", " : "", h("code", each)]);

const connectorRows = () =>
  [...connectors.values()].map(({ id, title, standard, retention, mates }) => [
    h("code", id),
    title,
    standard,
    HELD[retention],
    codes(mates),
  ]);

const sectionRows = () =>
  [...sections.values()].map(({ id, name, outside, wall, massPerMetre }) => {
    const system = id.startsWith("pipe") ? "us" : "metric";
    const print = (value: number, kind: Kind) => printQuantity(value, kind, system);
    return [
      h("code", id),
      name,
      print(outside, "length"),
      print(wall, "length"),
      print(massPerMetre, "mass-per-length"),
    ];
  });

/** Kinds nobody writes in a file are left out: those without a unit of their own. */
const unitRows = () =>
  (Object.keys(kinds) as Kind[]).flatMap((kind) => {
    const all = unitsOf(kind).filter(({ print }) => print !== "");
    const spelled = all.map(({ print, spellings }) => [print, ...spellings.filter((each) => each !== "")]);
    return all.length === 0
      ? []
      : [[kinds[kind].name, codes(spelled.map((each) => each.join(" ")).flatMap((each) => each.split(" ")))]];
  });

const enumOf = (name: string): readonly string[] => {
  const defs = schemas.partsSchema.$defs as Readonly<Record<string, SchemaPiece>>;
  return (defs[name]?.enum ?? []) as readonly string[];
};

const listed = (title: string, id: string, ...content: readonly Content[]): Content => [
  h("h2", { id }, title),
  content,
];

const tables = (id: string): string => linkTo(LISTS_PATH, `tables.html#${anchor("Table", id)}`);

/** What may stand where a name out of a list belongs. */
export function listsPage(number: string): SitePage {
  const content: Content = [
    listed(
      "Kinds of part",
      "Kinds",
      h(
        "ul",
        kindsOfPart().map(({ kind }) =>
          h("li", h("a", { href: linkTo(LISTS_PATH, `${referencePath("parts")}#Chapter-${kind}`) }, h("code", kind))),
        ),
      ),
    ),
    listed(
      "Connectors",
      "Connectors",
      h("p", [
        "A plug and its socket have a name each where they differ. The maker's sheet says which one a device has. Ratings and sources: ",
        h("a", { href: tables("connectors.families") }, "the whole table"),
        ".",
      ]),
      h("div", { class: "rows connector-rows" }, table("Connectors", CONNECTOR_COLUMNS, connectorRows())),
    ),
    listed(
      "Sections of bars",
      "Sections",
      h("p", [
        "A pipe or tube that stands in none of these needs a part of the kind ",
        h("code", "bar"),
        " with its maker's figures. Strengths and sources: ",
        h("a", { href: tables("rigging.sections") }, "the whole table"),
        ".",
      ]),
      h("div", { class: "rows section-rows" }, table("Sections of bars", SECTION_COLUMNS, sectionRows())),
    ),
    listed(
      "Units",
      "Units",
      h(
        "p",
        "A number is written with its unit. Where the sizes of a tape are meant, feet and inches go together: 10 ft 6 in, 1-1/2 in.",
      ),
      h("div", { class: "rows unit-rows" }, table("Units", UNIT_COLUMNS, unitRows())),
    ),
    listed("Signals", "Signals", h("p", codes(enumOf("signal")))),
  ];
  return { path: LISTS_PATH, title: "Names out of lists", number, content };
}
