import { existsSync, mkdirSync, readFileSync, renameSync, rmdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deserialize, serialize } from "node:v8";
import { inject } from "vitest";

declare module "vitest" {
  export interface ProvidedContext {
    /** A folder of this run; it need not be there yet. */
    readonly ofThisRun: string;
  }
}

const A_WHILE = 50;
/** Longer than anything takes to make; the worker that made it may have ended. */
const NO_LONGER = 120_000;

const pause = (): unknown => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, A_WHILE);

function isFirst(lock: string): boolean {
  try {
    mkdirSync(lock);
    return true;
  } catch {
    return false;
  }
}

function makeFor<Made>(path: string, lock: string, make: () => Made): Made {
  try {
    const made = make();
    writeFileSync(`${path}.part`, serialize(made));
    renameSync(`${path}.part`, path);
    return made;
  } catch (error) {
    rmdirSync(lock);
    throw error;
  }
}

/**
 * What takes long to make and is only looked at: the worker that needs it first makes it, the others wait and read it.
 * @param make gives what can be copied (https://html.spec.whatwg.org/multipage/structured-data.html)
 */
export function onceARun<Made>(name: string, make: () => Made): Made {
  const folder = inject("ofThisRun");
  const [path, lock] = [join(folder, name), join(folder, `${name}.lock`)];
  mkdirSync(folder, { recursive: true });
  if (!existsSync(path) && isFirst(lock)) return makeFor(path, lock, make);
  for (const began = Date.now(); !existsSync(path) && Date.now() - began < NO_LONGER; ) pause();
  return existsSync(path) ? (deserialize(readFileSync(path)) as Made) : make();
}
