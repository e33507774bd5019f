import { createHash, randomUUID } from "node:crypto";
import { mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { homedir } from "node:os";
import { dirname, isAbsolute, join } from "node:path";
import { fileURLToPath } from "node:url";
import { constants, Script } from "node:vm";
import type { Surroundings } from "../surroundings.js";
import { optimizeLater } from "./later.js";

// Starts the command line with what V8 made of its code at an earlier time: compiling it takes longer than most of
// what it is asked to do.

/** What the script gives: see program.ts. */
export interface Program {
  readonly command: (words: readonly string[], around?: Surroundings) => Promise<number>;
  readonly thread: () => Promise<unknown>;
}

const DIST = fileURLToPath(new URL(/\/start\/[^/]*$/u.test(import.meta.url) ? "../" : "./", import.meta.url));
const PATH = join(DIST, "program.cjs");
const NAME = `program-${process.version}-${process.platform}-${process.arch}.code`;
const HEAD = 32;

/** Beside the script, where the build puts it for its own Node.js. */
export const ownCode = (): string => join(DIST, NAME);

/** In the cache of whoever runs it, for every other Node.js; by the script, since there may be several. */
function usersCode(source: string): string | undefined {
  const named = process.env.XDG_CACHE_HOME ?? "";
  const folder = isAbsolute(named) ? named : homedir() === "/" ? "" : join(homedir(), ".cache");
  const script = createHash("sha1").update(source, "latin1").digest("hex").slice(0, 16);
  return isAbsolute(folder) ? join(folder, "plumbmark", `${script}-${NAME}`) : undefined;
}

const digest = (bytes: Uint8Array): Buffer => createHash("sha256").update(bytes).digest();

/** V8 trusts what it is given, so a damaged file must not come to it. */
function sound(path: string | undefined): Buffer | undefined {
  try {
    const bytes = readFileSync(path ?? "");
    const code = bytes.subarray(HEAD);
    return digest(code).equals(bytes.subarray(0, HEAD)) ? code : undefined;
  } catch {
    return undefined;
  }
}

function write(path: string, code: Buffer): void {
  const beside = `${path}-${randomUUID()}`;
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(beside, Buffer.concat([digest(code), code]), { flag: "wx" });
    renameSync(beside, path);
  } catch {
    // It is slower without, and that is all.
  }
}

function scriptOf(source: string, cachedData: Buffer | undefined): Script {
  const importModuleDynamically = constants.USE_MAIN_CONTEXT_DEFAULT_LOADER as never;
  return new Script(source, { filename: PATH, importModuleDynamically, ...(cachedData ? { cachedData } : {}) });
}

/** The program, and a way to keep what V8 has made of its code by now. */
export function load(): { readonly program: Program; readonly keep: (path: string) => void } {
  // Also for whoever makes the code that is kept: V8 only takes what was made with the same settings.
  optimizeLater();
  // The build sees to it that there is nothing but ASCII in it.
  const source = readFileSync(PATH, "latin1");
  const own = sound(ownCode());
  let script = scriptOf(source, own);
  if (!own || script.cachedDataRejected) {
    const path = usersCode(source);
    const users = sound(path);
    script = scriptOf(source, users);
    if (path && (!users || script.cachedDataRejected))
      process.once("exit", () => write(path, script.createCachedData()));
  }
  const program = script.runInThisContext() as (require: NodeJS.Require, path: string) => Program;
  return { program: program(createRequire(PATH), PATH), keep: (path) => write(path, script.createCachedData()) };
}
