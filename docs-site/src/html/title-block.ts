import { type Content, h } from "./html.js";

/** Cells of a title block: what it is and what stands in it; a cell without content is left out. */
export type TitleCells = readonly (readonly [string, Content])[];

const cell = ([name, content]: TitleCells[number]): Content =>
  content === undefined ? undefined : h("div", [h("dt", name), h("dd", content)]);

/** The title block of a sheet, as on a drawing: the title, and who, when and which revision in ruled cells. */
export const titleBlock = (title: string, cells: TitleCells) =>
  h("div", { class: "title" }, [h("h1", title), h("dl", { class: "block" }, cells.map(cell))]);
