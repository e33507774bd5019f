import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { constants, Script } from "node:vm";
import { writeInPlace } from "@plumbmark/in-place";
import { userCache } from "../engine/cache/location.js";
import { readOwnFile } from "../engine/cache/own-file-access.js";
import type { CommandContext } from "../terminal/context.js";
import { optimizeLater } from "./later.js";

// Starts the command line with what V8 made of its code at an earlier time: compiling it takes longer than most of
// what it is asked to do.

/** What the script gives: see program.ts. */
export interface Program {
  readonly command: (words: readonly string[], context?: CommandContext) => Promise<number>;
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
  const script = createHash("sha1").update(source, "latin1").digest("hex").slice(0, 16);
  const cache = userCache();
  return cache === undefined ? undefined : join(cache, `${script}-${NAME}`);
}

const digest = (bytes: Uint8Array): Buffer => createHash("sha256").update(bytes).digest();

/** What V8 made of the script while these commands were carried out: of what none of them needs it made nothing. */
interface Kept {
  readonly commands: readonly string[];
  readonly code: Buffer;
}

/** V8 trusts what it is given, so neither a damaged file nor one of somebody else must come to it. */
function sound(bytes: Buffer | undefined): Kept | undefined {
  const rest = bytes?.subarray(HEAD);
  if (!rest || !bytes || !digest(rest).equals(bytes.subarray(0, HEAD))) return undefined;
  const end = rest.indexOf("\n");
  return { commands: rest.toString("latin1", 0, end).split(" "), code: rest.subarray(end + 1) };
}

function write(
  path: string,
  { commands, code }: Kept,
  modes: { readonly mode?: number; readonly folderMode?: number } = {},
): void {
  const rest = Buffer.concat([Buffer.from(`${commands.join(" ")}\n`, "latin1"), code]);
  try {
    writeInPlace(path, Buffer.concat([digest(rest), rest]), modes);
  } catch {
    // It is slower without, and that is all.
  }
}

function scriptOf(source: string, cachedData: Buffer | undefined): Script {
  const importModuleDynamically = constants.USE_MAIN_CONTEXT_DEFAULT_LOADER as never;
  return new Script(source, { filename: PATH, importModuleDynamically, ...(cachedData ? { cachedData } : {}) });
}

/** What the build put there is trusted as the script itself is. */
function readIfThere(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

/** What is no such word is no command; after an option it might be the option's value, and nothing is kept. */
const NAME_OF_COMMAND = /^[a-z][a-z-]{0,30}$/u;

/** Carried out as asked for, so that what it needs has been compiled; status 2 is a command that was not. */
const wasCarriedOut = (): boolean => process.exitCode !== 2;

/**
 * The program, and a way to keep what V8 has made of its code by now.
 * @param words of the command line it is loaded for; what V8 makes for a command that it was not loaded for before is
 *   kept with the rest
 */
export function load(words: readonly string[] = []): {
  readonly program: Program;
  readonly keep: (path: string) => void;
} {
  // Also for whoever makes the code that is kept: V8 only takes what was made with the same settings.
  optimizeLater();
  // The build sees to it that there is nothing but ASCII in it.
  const source = readFileSync(PATH, "latin1");
  const own = sound(readIfThere(ownCode()));
  let script = scriptOf(source, own?.code);
  if (!own || script.cachedDataRejected) {
    const path = usersCode(source);
    const users = sound(path === undefined ? undefined : readOwnFile(path));
    script = scriptOf(source, users?.code);
    const known = users && !script.cachedDataRejected ? users.commands : [];
    const [command = ""] = words;
    if (path && NAME_OF_COMMAND.test(command) && !known.includes(command))
      process.once("exit", () => {
        if (!wasCarriedOut()) return;
        const kept = { commands: [...known, command], code: script.createCachedData() };
        write(path, kept, { mode: 0o600, folderMode: 0o700 });
      });
  }
  const program = script.runInThisContext() as (require: NodeJS.Require, path: string) => Program;
  return {
    program: program(createRequire(PATH), PATH),
    keep: (path) => write(path, { commands: [], code: script.createCachedData() }),
  };
}
