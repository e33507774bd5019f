import { drawingStyle } from "./drawings/drawing-style.js";
import { COLUMNS as REGISTER } from "./register.js";
import { rowLabels } from "./row-labels.js";
import { COLUMNS as STOCK } from "./stock-page.js";
import { style } from "./style.js";
import { titleOf } from "./table.js";

/** The style all pages share. */
export const siteStyle =
  style +
  drawingStyle +
  rowLabels([
    ["register", REGISTER.map(titleOf)],
    ["stock", STOCK.map(titleOf)],
  ]);
