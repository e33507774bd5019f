import { outdated, type RepositoryFiles, type Rule, readStandards } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { openRepository, type Repository, type Wanted } from "../files/repository.js";
import type { Kept } from "../kept/kept.js";
import { withOutlines } from "../kept/outlines.js";
import { rulesOfPlugins } from "../plugins/plugins.js";
import { plain } from "../report/lines.js";

export interface Opening extends Wanted {
  /** False refuses the plugins of the house standard. */
  readonly plugins?: boolean | undefined;
  /** What plugins came to before, for a docs repository. */
  readonly kept?: ((root: string) => Kept | undefined) | undefined;
  /** Takes what plugins print. */
  readonly warn: (text: string) => void;
}

/** A plugin is told what has to be known of the documents nobody asked for: whoever inspects need not read it twice. */
const withKnown = async ({ files, settings }: Repository, isAsked: boolean, kept: Kept | undefined) =>
  isAsked && settings["rules-from"].length > 0 ? { ...files, documents: await withOutlines(files, kept) } : files;

const standardsOf = ({
  houseStandard,
  folderStandards = [],
}: RepositoryFiles): readonly { readonly text: string }[] => [
  ...(houseStandard ? [houseStandard] : []),
  ...folderStandards,
];

/** What the house standards still call by a name of before, a line for each; only such a file is read for it. */
function renamed(files: RepositoryFiles): readonly string[] {
  if (!standardsOf(files).some(({ text }) => /^(?:rules|plugins)\s*:/mu.test(text))) return [];
  return outdated(readStandards(files).standards).map(
    ({ file, place, says, mend }) => `${file}:${place.line}:${place.column}: ${says} ${mend}`,
  );
}

/** A docs repository with every rule that applies to it: the built-in ones, and those of its plugins carried out. */
export async function open({
  plugins,
  kept,
  warn,
  ...wanted
}: Opening): Promise<Repository & { readonly rules: readonly Rule[] }> {
  const repository = await openRepository(wanted);
  const { settings, standardFolder, unmatched, wants } = repository;
  for (const line of [...renamed(repository.files), ...unmatched]) warn(`plumbmark: ${plain(line)}\n`);
  const before = kept?.(repository.root);
  const files = await withKnown(repository, plugins !== false, before);
  const own = await rulesOfPlugins({
    settings,
    standard: files.houseStandard,
    folder: standardFolder,
    taken: rules.map(({ id }) => id),
    warn,
    refused: plugins === false,
    kept: before,
    on: { files, today: wanted.today, wanted: files.documents.map(({ path }) => path).filter(wants) },
  });
  return { ...repository, files, rules: [...rules, ...own] };
}
