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

type Maker = (build: Build) => readonly (readonly [string, Value])[];

/** Makers of values with the first words of the paths each makes; paths follow the document. */
const MAKERS: readonly (readonly [words: readonly string[], make: Maker])[] = [
  [["faces"], faceValues],
  [["faces"], standValues],
  [["viewing", "audience", "light"], viewingValues],
  [["power"], powerValues],
  [["data"], dataValues],
  [["picture"], pictureValues],
  [["rigging"], riggingValues],
  [["stock"], stockValues],
  [["totals"], totals],
];

/** Every computed value of a build, by the path it is quoted with. */
export const valuesOf = (build: Build): ReadonlyMap<string, Value> =>
  new Map(MAKERS.flatMap(([, make]) => make(build)));

/** The values whose paths begin with a word: a document that quotes two figures need not have all computed. */
export const valuesUnder = (build: Build, first: string): ReadonlyMap<string, Value> =>
  new Map(MAKERS.filter(([words]) => words.includes(first)).flatMap(([, make]) => make(build)));
