import type { Value } from "@plumbmark/calc";
import type { CountedDesign } from "./counted-design.js";
import { dataValues } from "./data.js";
import { deviceValues } from "./devices.js";
import type { ValueEntry } from "./entries.js";
import { faceValues } from "./faces.js";
import { pictureValues } from "./picture.js";
import { powerValues } from "./power.js";
import { holdingValues, riggingValues } from "./rigging.js";
import { sharedValues } from "./shared.js";
import { standValues } from "./standing.js";
import { stockValues } from "./stock.js";
import { totals } from "./totals.js";
import { viewingValues } from "./viewing.js";

type Maker = (build: CountedDesign) => readonly ValueEntry[];

/** Makers of values with the first words of the paths each makes; paths follow the document. */
const MAKERS: readonly (readonly [words: readonly string[], make: Maker])[] = [
  [["faces"], faceValues],
  [["faces"], standValues],
  [["viewing", "audience", "light", "camera"], viewingValues],
  [["power"], powerValues],
  [["data"], dataValues],
  [["data"], deviceValues("data")],
  [["picture"], pictureValues],
  [["picture"], deviceValues("picture")],
  [["faces"], holdingValues],
  [["rigging"], riggingValues],
  [["stock"], stockValues],
  [["shared"], sharedValues],
  [["totals"], totals],
];

/** Every computed value of a build, by the path it is quoted with; each is computed when it is asked for. */
export const valueEntries = (build: CountedDesign): readonly ValueEntry[] => MAKERS.flatMap(([, make]) => make(build));

/** Those whose paths begin with a word. */
export const valueEntriesUnder = (build: CountedDesign, first: string): readonly ValueEntry[] =>
  MAKERS.filter(([words]) => words.includes(first)).flatMap(([, make]) => make(build));

/** The same computed; what does not apply is left out. */
export const computed = (entries: readonly ValueEntry[]): ReadonlyMap<string, Value> =>
  new Map(
    entries.flatMap(([path, compute]) => {
      const value = compute();
      return value ? [[path, value]] : [];
    }),
  );
