import type { ItemLength } from "../../repository/items.js";
import type { DesignSource } from "./design-source.js";

/** The lengths that are owned of the cable written at a path; undefined where the holdings do not list it by length. */
export const lengthsOwned = ({ reader, context }: DesignSource, path: string): readonly ItemLength[] | undefined =>
  context.stock.items.get(reader.text(`${path}.part`) ?? "")?.lengths;
