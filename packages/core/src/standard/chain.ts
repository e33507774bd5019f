import type { Data } from "../document/yaml/yaml.js";
import type { RepositoryFiles } from "../repository/files.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import { readFolder, readRoot, type StandardFile, type StandardMistake } from "./file.js";
import { mergedPeople } from "./people.js";

/** Every house standard of a docs repository: the root's and those of folders, the nearest to the root first. */
export interface Standards {
  readonly root: StandardFile;
  readonly folders: readonly StandardFile[];
}

/** House standards that apply to one document, the root's first. */
export type StandardChain = readonly [StandardFile, ...StandardFile[]];

const depth = (folder: string): number => folder.split("/").length;

/** Reads every house standard of a repository, with the mistakes of their form. */
export function readStandards(files: RepositoryFiles): {
  readonly standards: Standards;
  readonly mistakes: readonly StandardMistake[];
} {
  const root = readRoot(files.houseStandard);
  const folders = [...(files.folderStandards ?? [])].sort((a, b) => depth(a.folder) - depth(b.folder)).map(readFolder);
  return {
    standards: { root: root.standard, folders: folders.map(({ standard }) => standard) },
    mistakes: [root, ...folders].flatMap(({ mistakes }) => mistakes),
  };
}

const chains = new WeakMap<Standards, Map<string, StandardChain>>();

/** House standards above a file or folder, the root's first; the same chain for whatever lies below the same ones. */
export function chainFor(standards: Standards, path: string): StandardChain {
  const above = standards.folders.filter(({ folder }) => path === folder || path.startsWith(`${folder}/`));
  const known = chains.get(standards) ?? new Map<string, StandardChain>();
  chains.set(standards, known);
  const key = above.map(({ folder }) => folder).join("\n");
  const chain = known.get(key) ?? [standards.root, ...above];
  known.set(key, chain);
  return chain;
}

type Rules = HouseStandardSettings["requirements"];

/** Later levels and settings on top of earlier ones, rule by rule. */
function mergedRules(all: readonly Rules[]): Rules {
  const merged: Record<string, Readonly<Record<string, Data>>> = {};
  for (const rules of all) for (const [id, own] of Object.entries(rules)) merged[id] = { ...merged[id], ...own };
  return merged;
}

/** A folder names some of those who may, and nobody else. */
function peopleOf(all: readonly HouseStandardSettings[]): Pick<HouseStandardSettings, "people"> {
  const people = mergedPeople(all.flatMap((each) => (each.people ? [each.people] : [])));
  return people ? { people } : {};
}

/** One house standard for one document: sections are added up, rules lie on top of one another. */
export function mergedStandard(chain: StandardChain): HouseStandardSettings {
  const [root, ...folders] = chain;
  if (folders.length === 0) return root.settings;
  const all = chain.map(({ settings }) => settings);
  const written = folders.map(({ placed }) => (placed.data ?? {}) as Readonly<Record<string, Data>>);
  const practice = written.findLast((each) => each.practice !== undefined)?.practice as "us" | "iec" | undefined;
  const sections = [root.settings.sections, ...written.map((each) => (each.sections ?? []) as readonly string[])];
  return {
    ...root.settings,
    name: all.map(({ name }) => name).join(" with "),
    practice: practice ?? root.settings.practice,
    sections: [...new Set(sections.flat())],
    requirements: mergedRules(all.map(({ requirements }) => requirements)),
    ...peopleOf(all),
  };
}
