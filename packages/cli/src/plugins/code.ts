import { createHash } from "node:crypto";
import { existsSync, readFileSync, realpathSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, extname, join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { isOutside } from "../files/find-files.js";
import { ownFile } from "../own-file.js";
import type { Target } from "./target.js";

// Which code a plugin is made of, to the byte. What cannot be told for sure is not told, and nothing is then kept of it.

type Lexer = typeof import("es-module-lexer/js");

const KIT = /^@plumbmark\/(?:kit|calc)(?=$|\/)/u;

class Doubt extends Error {}

/** The folder of a package of ours: what is imported is `dist/index.js` in it. */
const ownFolder = (name: string): string =>
  dirname(dirname(realpathSync(createRequire(ownFile("dist/plugins/child.js")).resolve(name))));

/** A kit that lies beside the plugin comes before ours: it has to be the same one, for then its code is known. */
function refuseOtherKit(name: string, from: string): void {
  const folder = dirname(from);
  const found = join(folder, "node_modules", name);
  if (existsSync(found)) {
    if (realpathSync(found) !== ownFolder(name)) throw new Doubt(found);
  } else if (dirname(folder) !== folder) refuseOtherKit(name, folder);
}

/** Modules another one imports that are files beside it, as addresses. */
function importsOf({ parse }: Lexer, text: string, path: string): readonly string[] {
  const [imports, , , isModule] = parse(text);
  // A script of the older kind takes others by a call, which is not looked for.
  if (!isModule) throw new Doubt(path);
  return imports.flatMap(({ n: name }) => {
    // Told only while it runs, or `import.meta`, by which it can find files.
    if (name === undefined) throw new Doubt(path);
    const kit = KIT.exec(name)?.[0];
    if (kit !== undefined) refuseOtherKit(kit, path);
    else if (!/^\.\.?\//u.test(name)) throw new Doubt(path);
    return kit === undefined ? [new URL(name, pathToFileURL(path)).href] : [];
  });
}

/** A file and what it imports. @throws when it is in doubt */
function visit(lexer: Lexer, home: string, address: string, seen: Map<string, string>): void {
  const real = realpathSync(fileURLToPath(address));
  const path = relative(home, real).replaceAll("\\", "/");
  if (isOutside(path)) throw new Doubt(path);
  if (seen.has(path)) return;
  const bytes = readFileSync(real);
  seen.set(path, createHash("sha256").update(bytes).digest("hex"));
  const kind = extname(real);
  if (kind === ".json") return;
  // What `.js` is, a file elsewhere says.
  if (kind !== ".mjs") throw new Doubt(path);
  for (const each of importsOf(lexer, bytes.toString("utf8"), real)) visit(lexer, home, each, seen);
}

/**
 * Every file a plugin is made of, with a hash of what is in it. Undefined for a package, and when it imports anything
 * but the kit and files ending in `.mjs` or `.json` of the docs repository, or something that is told only as it runs.
 */
export async function codeOf({ address }: Target, folder: string): Promise<readonly (readonly string[])[] | undefined> {
  if (!address.startsWith("file:")) return undefined;
  try {
    const seen = new Map<string, string>();
    visit(await import("es-module-lexer/js"), realpathSync(folder), address, seen);
    return [...seen];
  } catch {
    return undefined;
  }
}
