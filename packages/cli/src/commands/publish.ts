import { resolve } from "node:path";
import type { Surroundings } from "../surroundings.js";
import { counted, type Published, type PublishOptions, publishOnce } from "./publish-once.js";
import { watch } from "./watch.js";

const FAILED = "plumbmark: a plugin failed; the sheets say where. Everything else was inspected and is published.\n";

/** As of an inspection: 2 when part of it could not be carried out. The pages themselves say what is not ready. */
const statusOf = ({ failed }: Published, { warn }: Surroundings): number => {
  if (failed) warn(FAILED);
  return failed ? 2 : 0;
};

/** Publishes a docs repository as a static site, again and again when it is watched; gives the exit status. */
export async function publishCommand(
  folder: string | undefined,
  options: PublishOptions,
  around: Surroundings,
): Promise<number> {
  const to = resolve(around.folder, options.to);
  let last = await publishOnce(folder, options, around, options.watch ? new Map() : undefined);
  const { written, unchanged, root } = last;
  around.print(`${counted(written + unchanged)} are in ${to}\nOpen ${resolve(to, "index.html")} in a browser.\n`);
  let status = statusOf(last, around);
  if (!options.watch) return status;
  around.print("Watching; stop with Ctrl-C.\n");
  await watch(root, to, around, async () => {
    last = await publishOnce(folder, options, around, last.sheets);
    status = statusOf(last, around);
    around.print(`${counted(last.written)} written, ${last.unchanged} as before\n`);
  });
  return status;
}
