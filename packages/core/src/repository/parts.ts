import type { Known } from "@plumbmark/calc";
import { asMeant, edited, editsOf } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import type { Place } from "../document/place.js";
import type { Implausible } from "../document/plausible.js";
import { readData } from "../document/read-data.js";
import { inWorld, type Unsure, type World } from "../document/unsure.js";
import { readWholeYaml } from "../document/yaml/whole-yaml.js";
import type { Data, Placed } from "../document/yaml/yaml.js";
import { assemblyMistakes } from "./assembly-mistakes.js";
import { assumedOf } from "./assumed.js";
import type { SourceFile } from "./files.js";
import { priceMistakes } from "./price.js";

/** One entry of the parts catalogue; quantities by their path inside the part (`power.maximum`, `size.1`). */
export interface Part {
  /** Its name in the catalogue. */
  readonly name: string;
  /** What it is: `panel`, `power-cable`, `hardware` … */
  readonly kind: string;
  /** The file of the catalogue it is in. */
  readonly file: string;
  /** Its entry, as it is written. */
  readonly data: Readonly<Record<string, Data>>;
  /** Its quantities by their path inside the part: `power.maximum`, `size.1`. */
  readonly quantities: ReadonlyMap<string, Known>;
  /** Those of them whose size is not plausible, by their path inside the part. */
  readonly implausible: readonly Implausible[];
  /** Its guesses and bounds, by their path inside the part. */
  readonly unsure: readonly Unsure[];
  /** What is wrong with how it is written, in whichever file; by its path in the catalogue. What it costs is left out. */
  readonly mistakes: readonly Mistake[];
}

export interface Catalogue {
  readonly parts: ReadonlyMap<string, Part>;
  readonly mistakes: ReadonlyMap<string, readonly Mistake[]>;
  /** The catalogue as it was most likely meant, for telling what waits for its mistakes. */
  readonly meant: () => Catalogue;
}

const kindOf = ({ kind }: Readonly<Record<string, Data>>): string => (typeof kind === "string" ? kind : "");

const meantFile = ({ path, text }: SourceFile): SourceFile => ({
  path,
  text: asMeant(text, (each) => readData("parts", readWholeYaml(each)).mistakes),
});

/** Made when it is first asked for. */
function lazily<Made>(make: () => Made): () => Made {
  let made: Made | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** A file of the catalogue by itself. */
interface PartsFile {
  readonly parts: readonly { readonly part: Part; readonly place: Place | undefined }[];
  readonly mistakes: readonly Mistake[];
  readonly placed: Placed;
}

const readings = new WeakMap<SourceFile, PartsFile>();

/** Reads one file of the catalogue, once for each source. */
function readPartsFile(file: SourceFile): PartsFile {
  const found = readings.get(file) ?? partsFileOf(file);
  readings.set(file, found);
  return found;
}

function partsFileOf({ path: file, text }: SourceFile): PartsFile {
  const placed = readWholeYaml(text);
  const { values, mistakes: read, implausible: sizes, unsure: doubts, data: whole } = readData("parts", placed);
  const mistakes = [...read, ...priceMistakes(placed)];
  const entries = whole !== null && typeof whole === "object" && !Array.isArray(whole) ? Object.entries(whole) : [];
  const parts = entries.flatMap(([name, data]) => {
    if (data === null || typeof data !== "object" || Array.isArray(data)) return [];
    const written = data as Record<string, Data>;
    const prefix = `${name}.`;
    const quantities = new Map(
      [...values]
        .filter(([path]) => path.startsWith(prefix))
        .map(([path, value]) => [path.slice(prefix.length), value]),
    );
    const inside = <Told extends { readonly path: string }>(told: readonly Told[]): readonly Told[] =>
      told
        .filter(({ path }) => path.startsWith(prefix))
        .map((each) => ({ ...each, path: each.path.slice(prefix.length) }));
    const wrong = read.filter(({ path }) => path === name || path.startsWith(prefix));
    const place = placed.keys.get(name);
    const unsure = inside(doubts);
    const assumed = assumedOf({ name, data: written, quantities, unsure }, place);
    if (assumed) quantities.set(assumed.path, assumed.value);
    const own = {
      implausible: inside(sizes),
      unsure: assumed ? [...unsure, assumed.unsure] : unsure,
      mistakes: wrong,
    };
    const part = { name, kind: kindOf(written), file, data: written, quantities, ...own };
    return [{ part, place }];
  });
  return { parts, mistakes, placed };
}

const ofAssembly = ({ kind, data }: Part): readonly Data[] =>
  kind === "assembly" && Array.isArray(data.of) ? (data.of as readonly Data[]) : [];

/** The files with what was most likely meant: slips of each by itself, then names that only all of them together tell. */
function meantCatalogue(files: readonly SourceFile[]): Catalogue {
  const slips = files.map(meantFile);
  const { mistakes } = readCatalogue(slips);
  return readCatalogue(
    slips.map(({ path, text }) => {
      const names = (mistakes.get(path) ?? []).filter(({ rule }) => rule === "document.parts");
      return { path, text: edited(text, editsOf(names)) };
    }),
  );
}

/** Quantities follow from what is written; an implausible one is told with its place, which may have moved. */
const said = ({ file, data, implausible, unsure, mistakes }: Part): string =>
  JSON.stringify([file, data, implausible, unsure.map(({ path, text }) => [path, text]), mistakes]);

const samePart = (one: Part, other: Part): boolean => one === other || said(one) === said(other);

/**
 * Reads every file of the catalogue; a part named twice is a mistake of the later file.
 * @param before the catalogue before a file of it was replaced; a part that says the same stays the same object
 */
export function readCatalogue(files: readonly SourceFile[], before?: Catalogue): Catalogue {
  const parts = new Map<string, Part>();
  const mistakes = new Map<string, readonly Mistake[]>();
  const names = new Set(files.flatMap((file) => readPartsFile(file).parts.map(({ part }) => part.name)));
  for (const file of files) {
    const read = readPartsFile(file);
    const found = [...read.mistakes];
    for (const { part: written, place } of read.parts) {
      const unknown = assemblyMistakes(written.name, ofAssembly(written), read.placed, names);
      const part = unknown.length === 0 ? written : { ...written, mistakes: [...written.mistakes, ...unknown] };
      found.push(...unknown);
      const earlier = parts.get(part.name);
      if (!earlier) {
        const same = before?.parts.get(part.name);
        parts.set(part.name, same && samePart(same, part) ? same : part);
      } else if (place) {
        const twice: Mistake = {
          rule: "document.parts",
          path: part.name,
          place,
          says: `The part \`${part.name}\` is also in ${earlier.file}.`,
          mend: "Keep one of them.",
        };
        found.push(twice);
        // Which of them is meant nobody can tell.
        parts.set(part.name, { ...earlier, mistakes: [...earlier.mistakes, twice] });
      }
    }
    if (found.length > 0) mistakes.set(file.path, found);
  }
  return { parts, mistakes, meant: lazily(() => meantCatalogue(files)) };
}

/** The catalogue in a world: parts some of whose values are left out or are others. */
export function catalogueIn(catalogue: Catalogue, world: World): Catalogue {
  const of = (part: Part): Part => {
    const prefix = `${part.name}.`;
    const inside = (paths: Iterable<string>): readonly string[] =>
      [...paths].filter((path) => path.startsWith(prefix)).map((path) => path.slice(prefix.length));
    const without = new Set(inside(world.without));
    const instead = new Map(inside(world.instead.keys()).map((path) => [path, world.instead.get(prefix + path) ?? 0]));
    if (without.size + instead.size === 0) return part;
    const { data, values } = inWorld({ data: part.data, values: part.quantities }, { without, instead });
    return { ...part, data: data as Part["data"], quantities: values };
  };
  return { ...catalogue, parts: new Map([...catalogue.parts].map(([name, part]) => [name, of(part)])) };
}
