import type { Mistake } from "../document/mistake.js";
import { type Place, START } from "../document/place.js";
import type { Placed } from "../document/yaml/yaml.js";
import type { FolderStandard, SourceFile } from "../repository/files.js";
import { type HouseStandardSettings, readHouseStandard } from "../repository/house-standard.js";

/** One house standard as it is written: the repository's own or that of a folder in it. */
export interface StandardFile {
  /** Its path from the root; undefined where the defaults of the product apply. */
  readonly file?: string;
  /** The folder it is for, "" for the root. */
  readonly folder: string;
  readonly settings: HouseStandardSettings;
  readonly placed: Placed;
}

/** A mistake in a house standard, with the file it stands in. */
export interface StandardMistake {
  readonly file: string;
  readonly place: Place;
  readonly says: string;
  readonly mend: string;
}

/** What concerns the repository as a whole and stands in the house standard of its root. */
const ROOT_ONLY = [
  "documents",
  "parts",
  "stock",
  "surveys",
  "wishes",
  "papers",
  "rules-from",
  "plugins",
  "plugin-limits",
] as const;

export const placeIn = ({ placed }: StandardFile, path: string): Place => {
  for (let here = path; here !== ""; here = here.includes(".") ? here.slice(0, here.lastIndexOf(".")) : "") {
    const found = placed.keys.get(here) ?? placed.places.get(here);
    if (found) return found;
  }
  return START;
};

/** A mistake at a path of a house standard. */
export const mistakeIn = (standard: StandardFile, path: string, says: string, mend: string): StandardMistake => ({
  file: standard.file ?? "the defaults",
  place: placeIn(standard, path),
  says,
  mend,
});

interface ReadStandard {
  readonly standard: StandardFile;
  readonly mistakes: readonly StandardMistake[];
}

const placedMistakes = (file: string, mistakes: readonly Mistake[]): readonly StandardMistake[] =>
  mistakes.map(({ place, says, mend }) => ({ file, place, says, mend }));

/** One reading for each source: what is judged by a house standard that did not change need not be judged again. */
const readings = new WeakMap<SourceFile, ReadStandard>();
const NONE: SourceFile = { path: "", text: "" };

function onceRead(source: SourceFile | undefined, read: () => ReadStandard): ReadStandard {
  const found = readings.get(source ?? NONE) ?? read();
  readings.set(source ?? NONE, found);
  return found;
}

/** Reads the house standard of the root; without one the defaults apply. */
export const readRoot = (source: SourceFile | undefined): ReadStandard => onceRead(source, () => rootOf(source));

/** Reads the house standard of a folder; what concerns the whole repository may not stand in it. */
export const readFolder = (source: FolderStandard): ReadStandard => onceRead(source, () => folderOf(source));

function rootOf(source: SourceFile | undefined): ReadStandard {
  const { standard: settings, mistakes, placed } = readHouseStandard(source);
  const standard = { ...(source ? { file: source.path } : {}), folder: "", settings, placed };
  return { standard, mistakes: placedMistakes(source?.path ?? "", mistakes) };
}

function folderOf({ folder, path, text }: FolderStandard): ReadStandard {
  const { standard: settings, mistakes, placed } = readHouseStandard({ path, text });
  const standard: StandardFile = { file: path, folder, settings, placed };
  const astray = ROOT_ONLY.filter((key) => placed.keys.has(key)).map((key) =>
    mistakeIn(
      standard,
      key,
      `\`${key}\` stands in the house standard of a folder.`,
      "Write it in the house standard of the root: it is for the whole docs repository.",
    ),
  );
  return { standard, mistakes: [...placedMistakes(path, mistakes), ...astray] };
}
