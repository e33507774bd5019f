import type { Value } from "@plumbmark/calc";
import type { Build } from "../build.js";
import { dataValues } from "./data.js";
import { faceValues } from "./faces.js";
import { pictureValues } from "./picture.js";
import { powerValues } from "./power.js";
import { riggingValues } from "./rigging.js";
import { standValues } from "./standing.js";
import { stockValues } from "./stock.js";
import { totals } from "./totals.js";
import { viewingValues } from "./viewing.js";

/** Every computed value of a build, by the path it is quoted with; paths follow the document. */
export const valuesOf = (build: Build): ReadonlyMap<string, Value> =>
  new Map([
    ...faceValues(build),
    ...standValues(build),
    ...viewingValues(build),
    ...powerValues(build),
    ...dataValues(build),
    ...pictureValues(build),
    ...riggingValues(build),
    ...stockValues(build),
    ...totals(build),
  ]);
