import { connectors, sections } from "@plumbmark/calc";
import { choices } from "../../document/nearest.js";
import type { Data } from "../../document/yaml.js";
import type { Stock } from "../../repository/stock.js";
import { partName, type Reader } from "./reader.js";

const names = (data: Data | undefined): readonly string[] => (Array.isArray(data) ? data.map(partName) : []);

/** Complains about every part, lot, connector and section that is referred to and does not exist. */
export function checkReferences(reader: Reader, stock: Stock): void {
  const part = (name: string, path: string): void => {
    if (name !== "" && !reader.parts.has(name))
      reader.complain(path, `The part \`${name}\` is not in the catalogue.`, choices([...reader.parts.keys()], name));
  };
  const list = (path: string): void => {
    for (const [index, name] of names(reader.data(path)).entries()) part(name, `${path}.${index + 1}`);
  };
  for (const face of reader.keys("faces")) {
    for (const extra of reader.keys(`faces.${face}.extras`)) part(extra, `faces.${face}.extras.${extra}`);
    const lot = reader.text(`faces.${face}.lot`);
    for (const name of lot === undefined ? reader.keys(`faces.${face}.lot`) : [lot])
      if (!stock.lots.has(name))
        reader.complain(
          `faces.${face}.lot`,
          `The lot \`${name}\` is not in the stock list.`,
          stock.lots.size > 0
            ? choices([...stock.lots.keys()], name)
            : "There is no stock list; write `stock.yaml` with the lot, its panel, batch and count.",
        );
  }
  for (const circuit of reader.keys("power.circuits")) {
    const outlet = reader.text(`power.circuits.${circuit}.outlet`);
    if (outlet !== undefined && !connectors.has(outlet))
      reader.complain(
        `power.circuits.${circuit}.outlet`,
        `The connector \`${outlet}\` is not known.`,
        choices([...connectors.keys()], outlet),
      );
  }
  for (const bar of reader.keys("rigging.bars")) checkBar(reader, `rigging.bars.${bar}`, list);
  list("picture.path");
  list("rigging.secondary");
  for (const brought of reader.keys("also-bring")) part(brought, `also-bring.${brought}`);
}

function checkBar(reader: Reader, path: string, list: (path: string) => void): void {
  const section = reader.text(`${path}.section`);
  if (section !== undefined && !sections.has(section) && !reader.parts.has(section))
    reader.complain(
      `${path}.section`,
      `The section \`${section}\` is neither in the built-in table nor in the catalogue.`,
      choices([...sections.keys()], section),
    );
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
      reader.complain(`${each}.face`, `There is no face \`${face}\`.`, choices(faces, face));
  }
}
