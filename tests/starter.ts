import { cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { starterRepository } from "@plumbmark/starter";

const NAMED = /^plugins: .*\n/mu;

/**
 * Copies the starter's docs repository without its plugin, whose process would take longer than all else a test does;
 * tests of plugins copy `starterRepository` itself.
 */
export function copyStarter(to: string): void {
  cpSync(starterRepository, to, { recursive: true });
  rmSync(join(to, "house-rules"), { recursive: true });
  const path = join(to, "house-standard.yaml");
  const standard = readFileSync(path, "utf8");
  if (!NAMED.test(standard)) throw new Error("the starter's house standard names no plugin");
  writeFileSync(path, standard.replace(NAMED, ""));
}
