import { drawingStyle } from "./drawings/drawing-style.js";
import { FORMULAS, METHODS } from "./formulas-page.js";
import { COLUMNS as PARTS } from "./parts-page.js";
import { COLUMNS as REGISTER } from "./register.js";
import { rowLabels } from "./row-labels.js";
import { COLUMNS as SOURCES } from "./sources-page.js";
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
    ["part-rows", PARTS],
    ["source-rows", SOURCES],
    ["formula-rows", FORMULAS],
    ["method-rows", METHODS],
  ]);
