import { type CheckEntry, openRepository } from "@plumbmark/core";
import { draftRecord, judgedAgain, type Option } from "@plumbmark/draft";
import { rules } from "@plumbmark/rules";
import { rulesOfPlugins } from "../plugins/plugins.js";
import type { Drafting, Made } from "./made.js";

const FAILED = "plugin.failed";

/** What the house's plugins say of a document that is not on the disk; nothing where it names none. */
async function checksBy(path: string, text: string, { repository, context }: Drafting): Promise<readonly CheckEntry[]> {
  const { files, settings, standardFolder } = repository;
  const others = files.documents.filter((each) => each.path !== path);
  const with1 = { ...files, documents: [...others, { path, text }] };
  const own = await rulesOfPlugins({
    settings,
    standard: files.houseStandard,
    folder: standardFolder,
    taken: rules.map(({ id }) => id),
    warn: context.warn,
    on: { files: with1, today: context.today, wanted: [path] },
  });
  const names = new Set(own.map(({ id }) => id));
  const { entry } = openRepository(with1, [...rules, ...own], { today: context.today, every: true }).one(path);
  return entry.checks.filter(({ rule, outcome }) => (names.has(rule) || rule === FAILED) && outcome !== "holds");
}

/**
 * The options judged by the plugins of the house standard as well: one that fails a requirement of theirs falls out. Each
 * is judged as the only one that is written. A plugin that could not be asked is told under what was not looked at.
 */
export async function judgedByPlugins(made: Made, path: string, drafting: Drafting): Promise<Made> {
  if (drafting.repository.settings["rules-from"].length === 0 || made.drafted.options.length === 0) return made;
  const judged = new Map<Option, readonly CheckEntry[]>();
  const unasked = new Set<string>();
  for (const option of made.drafted.options) {
    drafting.context.progress?.(`${made.wish.name}: the house's own rules`);
    const checks = await checksBy(path, option.document, drafting);
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
