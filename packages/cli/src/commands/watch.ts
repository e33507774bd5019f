import { relative, sep } from "node:path";
import { isOutside } from "../source/paths.js";
import type { CommandContext } from "../terminal/context.js";
import { explained } from "../terminal/explain.js";

/** An editor saves in several steps, and several files are saved together: they are waited for. */
const PAUSE_MS = 150;

const isHidden = (path: string): boolean =>
  path.split(sep).some((step) => step.startsWith(".") || step === "node_modules");

/**
 * Does the work again whenever something below `root` changes, one time after another, until the context ends it.
 * What goes wrong is told, and the next change is waited for. `without` is a folder that is not watched.
 */
export async function watch(
  root: string,
  without: string,
  context: CommandContext,
  work: () => Promise<void>,
): Promise<void> {
  // Loaded only here: no other command has to wait for it.
  const { watch: watcher } = await import("chokidar");
  const ignored = (path: string): boolean => isHidden(relative(root, path)) || !isOutside(relative(without, path));
  // What lies in the root is watched where it lies, and what a link finds outside is not read.
  const watching = watcher(root, { ignored, ignoreInitial: true, followSymlinks: false });
  let timer: NodeJS.Timeout | undefined;
  let running: Promise<void> = Promise.resolve();
  const again = (): Promise<void> =>
    work().catch((error: unknown) => context.warn(`plumbmark: ${explained(error, [])}\n`));
  watching.on("all", () => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      running = running.then(again);
    }, PAUSE_MS);
  });
  await (context.ended?.() ?? new Promise<void>(() => undefined));
  clearTimeout(timer);
  await watching.close();
  await running;
}
