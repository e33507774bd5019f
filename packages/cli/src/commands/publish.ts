import { resolve } from "node:path";
import type { Engine, PublishResult } from "../engine/engine.js";
import { filesText } from "../engine/publish-site.js";
import type { CommandContext } from "../terminal/context.js";
import { watch } from "./watch.js";

export interface PublishOptions {
  readonly to: string;
  readonly standard?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
  readonly watch?: boolean;
  readonly venueProse?: boolean;
}

const FAILED = "plumbmark: a plugin failed; the sheets say where. Everything else was inspected and is published.\n";

/** As of an inspection: 2 when part of it could not be carried out. The pages themselves say what is not ready. */
const statusOf = ({ failed }: PublishResult, { warn }: CommandContext): number => {
  if (failed) warn(FAILED);
  return failed ? 2 : 0;
};

/** Publishes a docs repository as a static site, again and again when it is watched; gives the exit status. */
export async function publishCommand(
  folder: string | undefined,
  { to: written, standard, plugins, watch: isWatching = false, venueProse = false }: PublishOptions,
  context: CommandContext,
  engine: Engine,
): Promise<number> {
  const to = resolve(context.folder, written);
  const paths = folder === undefined ? [] : [folder];
  const { today, warn, progress } = context;
  const request = { folder: context.folder, paths, standard, today, plugins, warn, progress, to, venueProse };
  const first = await engine.publish(request);
  context.print(
    `${filesText(first.written + first.unchanged)} are in ${to}\nOpen ${resolve(to, "index.html")} in a browser.\n`,
  );
  let status = statusOf(first, context);
  if (!isWatching) return status;
  context.print("Watching; stop with Ctrl-C.\n");
  await watch(first.root, to, context, async () => {
    const result = await engine.publish(request);
    status = statusOf(result, context);
    context.print(`${filesText(result.written)} written, ${result.unchanged} as before\n`);
  });
  return status;
}
