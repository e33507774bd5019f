import { drawingStyle } from "../drawings/drawing-style.js";
import { titleOf } from "../html/table.js";
import { ITEM_COLUMNS } from "../pages/items-table.js";
import { PARTS_COLUMNS as PARTS } from "../pages/parts-page.js";
import { CONNECTOR_COLUMNS, SECTION_COLUMNS, UNIT_COLUMNS } from "../pages/reference/lists-page.js";
import { KEY_COLUMNS } from "../pages/reference/reference-page.js";
import { REGISTER_COLUMNS as REGISTER } from "../pages/register.js";
import { FORMULAS, METHODS } from "../pages/sources/formulas-page.js";
import { SOURCES_COLUMNS as SOURCES } from "../pages/sources/sources-page.js";
import { STOCK_COLUMNS as STOCK } from "../pages/stock-page.js";
import { PERIOD_COLUMNS, SHELF_COLUMNS } from "../pages/stock-shapes.js";
import { BUY_COLUMNS, SHAPE_COLUMNS, TO_FIND_COLUMNS } from "../wishes/wish-content.js";
import { WISH_COLUMNS } from "../wishes/wish-pages.js";
import { wishStyle } from "../wishes/wish-style.js";
import { rowLabels } from "./row-labels.js";
import { style } from "./style.js";

/** The style all pages share. */
export const siteStyle =
  style +
  drawingStyle +
  wishStyle +
  rowLabels([
    ["register", REGISTER.map(titleOf)],
    ["stock", STOCK.map(titleOf)],
    ["items", ITEM_COLUMNS.map(titleOf)],
    ["by-day", ["Days", "Builds on site"]],
    ["wishes", WISH_COLUMNS],
    ["to-find-out", TO_FIND_COLUMNS],
    ["to-buy", BUY_COLUMNS],
    ["shapes", SHAPE_COLUMNS],
    ["periods", PERIOD_COLUMNS],
    ["shelf", SHELF_COLUMNS],
    ["part-rows", PARTS],
    ["source-rows", SOURCES],
    ["formula-rows", FORMULAS],
    ["method-rows", METHODS],
    ["keys", KEY_COLUMNS],
    ["connector-rows", CONNECTOR_COLUMNS],
    ["section-rows", SECTION_COLUMNS],
    ["unit-rows", UNIT_COLUMNS],
  ]);
