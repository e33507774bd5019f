import { basename, resolve } from "node:path";
import { changedFrom, freePath, frontMatterText, namesKept, readWish, underNames, wishLike } from "@plumbmark/draft";
import { changesText } from "../report/draft/changes-text.js";
import { json } from "../report/form.js";
import { fromRoot } from "../source/paths.js";
import { Trouble } from "../terminal/trouble.js";
import { judgedByPlugins } from "./by-plugins.js";
import { type Drafting, hasNoShortfall, made, opened } from "./made.js";
import { printDrafts } from "./print.js";
import { draftTarget } from "./target.js";
import { writeOption } from "./write-option.js";

/** Drafts a build that stands in another size, and tells what is another then. @throws Trouble */
export async function draftLike(
  like: string,
  written: readonly string[],
  number: number | undefined,
  drafting: Drafting,
): Promise<number> {
  const { repository, options, context } = drafting;
  if (written.length > 0) throw new Trouble("A wish and a build to be like are named.", "Name one of them.");
  if (options.width === undefined && options.height === undefined)
    throw new Trouble("What is to be another is not said.", "Add `--width 12 ft`, in quotes, or `--height`.");
  const held = opened(repository, context);
  const path = fromRoot(repository.root, resolve(context.folder, like));
  if (!held.documents.includes(path))
    throw new Trouble(`${like} is no build document of the docs repository.`, "Name one.");
  const { build } = held.model(path);
  const text = repository.files.documents.find((each) => each.path === path)?.text ?? "";
  const target = draftTarget(options, repository.root, context.folder);
  const name = target ? basename(target.file, ".md") : `${basename(path, ".md")}-again`;
  const data = wishLike(build, text, name, options);
  if ("says" in data && "mend" in data) throw new Trouble(`${like}: ${String(data.says)}`, String(data.mend));
  const { wish, mistakes } = readWish(
    { path, text: frontMatterText(data as Parameters<typeof frontMatterText>[0]) },
    held.surveys.byName,
  );
  if (!wish)
    throw new Trouble(
      `${like}: ${mistakes.map(({ says }) => says).join(" ")}`,
      "Write a wish instead: `plumbmark start wish NAME`.",
    );
  const taken = new Set(repository.files.documents.map((each) => each.path));
  // The draft stands in the place of the build: what that takes is free for it.
  const others = repository.files.documents.filter((each) => each.path !== path);
  const without = { ...repository, files: { ...repository.files, documents: others } };
  const [place, around] = [target?.file ?? freePath(taken, name), { ...drafting, repository: without }];
  const result = await judgedByPlugins(made(wish, place, around), place, around);
  const kept = namesKept(text, options.face);
  const found = result.drafted.options[(number ?? 1) - 1];
  const chosen = found && kept ? underNames(result.brief, name, found, kept) : undefined;
  const changes = chosen && kept ? changedFrom(text, kept.face, chosen.scheme.matter) : [];
  const left = build.faces.flatMap((each) => (each.name === kept?.face ? [] : [each.name]));
  if (target && number !== undefined) {
    const options = result.drafted.options.map((each) => (each === found && chosen ? chosen : each));
    const named = { ...result, drafted: { ...result.drafted, options } };
    const status = await writeOption(named, number, target, drafting.options.replace ?? false, context);
    context.print(changesText(like, changes, left, context), "report");
    return status;
  }
  if (options.as === "json")
    context.print(
      json({ ...result.record, like: { file: path, changes, ...(left.length > 0 ? { "not-in-it": left } : {}) } }),
      "json",
    );
  else {
    printDrafts([result.record], options.as, context);
    context.print(`\n${changesText(like, changes, left, context)}`, options.as === "text" ? "report" : "text");
  }
  return hasNoShortfall(result) ? 0 : 1;
}
