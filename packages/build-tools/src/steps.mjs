// Runs the installed tools with this Node, so that no shell or PATH is needed.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

export const top = fileURLToPath(new URL("../../../", import.meta.url));

/** Runs a script of node_modules or of the workspace; returns its exit status. */
export function run(script, ...args) {
  const { status, signal } = spawnSync(process.execPath, [`${top}${script}`, ...args], { cwd: top, stdio: "inherit" });
  return signal ? 1 : (status ?? 1);
}
