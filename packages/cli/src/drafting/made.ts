import { basename } from "node:path";
import { openRepository } from "@plumbmark/core";
import {
  type Brief,
  briefFor,
  type Drafted,
  type DraftRecord,
  draft,
  draftRecord,
  unknownIn,
  type Wish,
} from "@plumbmark/draft";
import { rules } from "@plumbmark/rules";
import type { DocsRepository } from "../repository/read-repository.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import { type DraftOptions, limitOf } from "./options.js";

/** Work of less than this says nothing of how far it is. */
const QUIET_MS = 1000;

/** What a wish came to. */
export interface Made {
  readonly brief: Brief;
  readonly wish: Wish;
  readonly record: DraftRecord;
  readonly drafted: Drafted;
}

/** What several wishes are drafted in, and how long all of it may take. */
export interface Drafting {
  readonly repository: DocsRepository;
  readonly options: DraftOptions;
  readonly context: CommandContext;
  readonly begun: number;
}

/** The docs repository, held in memory. */
export const opened = ({ files }: DocsRepository, { today }: CommandContext) =>
  openRepository(files, rules, { today, every: true, keep: "models", turns: false });

/** Drafts from a wish. @throws Trouble when it names what is not there */
export function made(wish: Wish, path: string, { repository, options, context, begun }: Drafting): Made {
  const held = opened(repository, context);
  const [mistake] = unknownIn(wish, held);
  if (mistake) throw new Trouble(`${wish.file}: \`${mistake.path}\`: ${mistake.says}`, mistake.mend);
  const limit = limitOf(options.within);
  const isOver = (): boolean => limit !== undefined && performance.now() - begun > limit;
  const brief = briefFor(wish, { repository: held, path, isOver });
  const progress = (words: string): void => {
    if (performance.now() - begun > QUIET_MS) context.progress?.(`${wish.name}: ${words}`);
  };
  const { every = false, pairs = false } = options;
  const drafted = draft(brief, { name: basename(path, ".md"), every, pairs, progress });
  context.progress?.("");
  return { brief, wish, drafted, record: draftRecord(brief, drafted) };
}

/** Whether an option needs nothing that is not there. */
export const hasNoShortfall = ({ drafted }: Made): boolean =>
  drafted.options.some(({ shortfall }) => shortfall.length === 0);

/** What is asked, from now on. */
export const draftingIn = (repository: DocsRepository, options: DraftOptions, context: CommandContext): Drafting => ({
  repository,
  options,
  context,
  begun: performance.now(),
});
