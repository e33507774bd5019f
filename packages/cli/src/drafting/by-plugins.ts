import { type CheckEntry, openRepository, type RepositoryFiles } from "@plumbmark/core";
import { draftRecord, judgedAgain, type Option } from "@plumbmark/draft";
import { rules } from "@plumbmark/rules";
import { rulesOnEach } from "../plugins/plugins.js";
import type { Drafting, Made } from "./made.js";

const FAILED = "plugin.failed";

/** The docs repository with one document more, which is not on the disk. */
function filesWith({ files }: Drafting["repository"], path: string, text: string): RepositoryFiles {
  return { ...files, documents: [...files.documents.filter((each) => each.path !== path), { path, text }] };
}

/** What the house's plugins say of documents that are not on the disk, each as the only one that is written. */
async function checksBy(
  path: string,
  texts: readonly string[],
  { repository, context }: Drafting,
): Promise<readonly (readonly CheckEntry[])[]> {
  const { settings, standardFolder, files } = repository;
  const inputs = texts.map((text) => ({
    files: filesWith(repository, path, text),
    today: context.today,
    wanted: [path],
  }));
  const found = await rulesOnEach(
    {
      settings,
      standard: files.houseStandard,
      folder: standardFolder,
      taken: rules.map(({ id }) => id),
      warn: context.warn,
    },
    inputs,
  );
  return inputs.map(({ files: with1 }, index) => {
    const own = found[index] ?? [];
    const held = openRepository(with1, [...rules, ...own], { today: context.today, every: true });
    return own.flatMap((rule) => held.run(rule, path)).filter(({ outcome }) => outcome !== "holds");
  });
}

/**
 * The options judged by the plugins of the house standard as well: one that fails a requirement of theirs falls out. Each
 * is judged as the only one that is written. A plugin that could not be asked is told under what was not looked at.
 */
export async function judgedByPlugins(made: Made, path: string, drafting: Drafting): Promise<Made> {
  if (drafting.repository.settings["rules-from"].length === 0 || made.drafted.options.length === 0) return made;
  const judged = new Map<Option, readonly CheckEntry[]>();
  const unasked = new Set<string>();
  drafting.context.progress?.(`${made.wish.name}: the house's own rules`);
  const { options } = made.drafted;
  const told = await checksBy(
    path,
    options.map(({ document }) => document),
    drafting,
  );
  for (const [index, option] of options.entries()) {
    const checks = told[index] ?? [];
    for (const { rule, says, mend = "" } of checks) if (rule === FAILED) unasked.add(`${says} ${mend}`.trim());
    judged.set(
      option,
      checks.filter(({ rule }) => rule !== FAILED),
    );
  }
  drafting.context.progress?.("");
  const found = judgedAgain(made.drafted, judged);
  const drafted = { ...found, notLookedAt: [...found.notLookedAt, ...unasked] };
  return { ...made, drafted, record: draftRecord(made.brief, drafted) };
}
