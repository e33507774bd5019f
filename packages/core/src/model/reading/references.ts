import { sections } from "@plumbmark/calc";
import type { Data } from "../../document/yaml/yaml.js";
import type { Stock } from "../../repository/stock.js";
import { surveyNames } from "../../venue/survey.js";
import { partName, type Reader } from "./reader.js";

const names = (data: Data | undefined): readonly string[] => (Array.isArray(data) ? data.map(partName) : []);

/** Complains about every part, lot, connector and section that is referred to and does not exist. */
export function checkReferences(reader: Reader, stock: Stock): void {
  const part = (name: string, path: string): void => {
    if (name !== "" && !reader.parts.has(name))
      reader.unknown(path, name, `The part \`${name}\` is not in the catalogue.`, [...reader.parts.keys()]);
  };
  const list = (path: string): void => {
    for (const [index, name] of names(reader.data(path)).entries()) part(name, `${path}.${index + 1}`);
  };
  const assembly = (path: string): void => {
    const named = reader.text(path);
    if (named === undefined) list(path);
    // What an assembly is made of is looked up where that is written, in the catalogue.
    else reader.part(path, ["assembly"]);
  };
  for (const face of reader.keys("faces")) {
    for (const extra of reader.keys(`faces.${face}.extras`)) part(extra, `faces.${face}.extras.${extra}`);
    for (const path of [`faces.${face}.hung-by`, `faces.${face}.hung-by.part`]) reader.part(path, ["attachment"]);
    const lot = reader.text(`faces.${face}.lot`);
    for (const name of lot === undefined ? reader.keys(`faces.${face}.lot`) : [lot])
      if (!stock.lots.has(name)) unknownLot(reader, `faces.${face}.lot`, name, [...stock.lots.keys()]);
  }
  checkOfVenue(reader);
  for (const bar of reader.keys("rigging.bars")) checkBar(reader, `rigging.bars.${bar}`, assembly);
  list("picture.path");
  list("rigging.secondary");
  for (const brought of reader.keys("also-bring")) part(brought, `also-bring.${brought}`);
}

/** Points, structures, floors and walls that the survey of the venue does not have. */
function checkOfVenue(reader: Reader): void {
  const survey = reader.venue?.survey;
  if (!survey) return;
  const of = (path: string, group: string, what: string): void => {
    const name = reader.text(path);
    const known = surveyNames(survey, group);
    if (name !== undefined && !known.includes(name))
      reader.unknown(path, name, `The survey ${survey.name} has no ${what} \`${name}\`.`, known);
  };
  for (const face of reader.keys("faces"))
    if (reader.text(`faces.${face}.support`) === "wall") of(`faces.${face}.on`, "walls", "wall");
    else of(`faces.${face}.on`, "floors", "floor");
  const points = surveyNames(survey, "structure").flatMap((structure) =>
    surveyNames(survey, "structure", structure, "points").map((point) => `${structure}.${point}`),
  );
  for (const bar of reader.keys("rigging.bars")) {
    of(`rigging.bars.${bar}.under`, "structure", "structure");
    for (const hang of reader.keys(`rigging.bars.${bar}.hangs`)) {
      for (const where of ["", "bridle.left.", "bridle.right."]) {
        const path = `rigging.bars.${bar}.hangs.${hang}.${where}point`;
        const point = reader.text(path);
        // One without its structure is told by its form.
        if (point?.includes(".") && !points.includes(point))
          reader.unknown(path, point, `The survey ${survey.name} has no point \`${point}\`.`, points);
      }
    }
  }
}

function unknownLot(reader: Reader, path: string, name: string, lots: readonly string[]): void {
  const says = `The lot \`${name}\` is not in the stock list.`;
  if (lots.length > 0) reader.unknown(path, name, says, lots);
  else
    reader.complain(path, says, "There is no stock list; write `stock.yaml` with the lot, its panel, batch and count.");
}

function checkBar(reader: Reader, path: string, list: (path: string) => void): void {
  const section = reader.text(`${path}.section`);
  if (section !== undefined && !sections.has(section) && !reader.parts.has(section))
    reader.unknown(
      `${path}.section`,
      section,
      `The section \`${section}\` is neither in the built-in table nor in the catalogue.`,
      [...sections.keys()],
    );
  list(`${path}.second.assembly`);
  for (const hang of reader.keys(`${path}.hangs`))
    for (const holder of ["", ".bridle.left", ".bridle.right"]) list(`${path}.hangs.${hang}${holder}.assembly`);
  const faces = reader.keys("faces");
  const carries = reader.data(`${path}.carries`);
  const paths = Array.isArray(carries)
    ? carries.map((_, index) => `${path}.carries.${index + 1}`)
    : [`${path}.carries`];
  for (const each of paths) {
    const face = reader.text(`${each}.face`);
    if (face !== undefined && !faces.includes(face))
      reader.unknown(`${each}.face`, face, `There is no face \`${face}\`.`, faces);
  }
}
