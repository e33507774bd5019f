import { createHash } from "node:crypto";
import { existsSync, readFileSync, realpathSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, extname, join, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { ownFile } from "../own-file.js";
import { isOutside } from "../source/paths.js";
import type { Target } from "./target.js";

// Which code a plugin is made of, to the byte. What cannot be told for sure is not told, and nothing is then cached of it.

type Lexer = typeof import("es-module-lexer/js");

const KIT = /^(?:@plumbmark\/(?:kit|calc)|plumbmark\/kit)(?=$|\/)/u;

class Doubt extends Error {}

/** The folder of a package of ours: what is imported is `dist/index.js` in it. */
const ownFolder = (name: string): string =>
  dirname(dirname(realpathSync(createRequire(ownFile("dist/plugins/child.js")).resolve(name))));

/** A package as it lies nearest above a folder; undefined when there is none. */
function installed(name: string, folder: string): string | undefined {
  const found = join(folder, "node_modules", name);
  if (existsSync(found)) return realpathSync(found);
  return dirname(folder) === folder ? undefined : installed(name, dirname(folder));
}

/** Where the kit lies that a plugin gets under a name, if one lies beside it; the whole package brings its own. */
function kitFor(name: string, from: string): string | undefined {
  if (!name.startsWith("plumbmark/")) return installed(name, dirname(from));
  const whole = installed("plumbmark", dirname(from));
  return whole === undefined ? undefined : installed("@plumbmark/kit", whole);
}

/** A kit that lies beside the plugin comes before ours: it has to be the same one, for then its code is known. */
function refuseOtherKit(name: string, from: string): void {
  const found = kitFor(name, from);
  const own = ownFolder(name.replace(/^plumbmark\//u, "@plumbmark/"));
  if (found !== undefined && found !== own) throw new Doubt(found);
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

/** The code of one plugin, file by file. */
class Code {
  readonly files = new Map<string, string>();

  constructor(
    private readonly lexer: Lexer,
    /** What lies outside of it is in doubt. */
    private readonly home: string,
  ) {}

  /** A file and what it imports. @throws when it is in doubt */
  visit(address: string): void {
    const real = realpathSync(fileURLToPath(address));
    if (!this.isNew(real)) return;
    const text = this.add(real);
    const kind = extname(real);
    if (kind === ".json") return;
    if (kind !== ".mjs" && !(kind === ".js" && this.isModuleByPackage(dirname(real)))) throw new Doubt(real);
    for (const each of importsOf(this.lexer, text, real)) this.visit(each);
  }

  add(real: string): string {
    const bytes = readFileSync(real);
    this.files.set(this.pathOf(real), createHash("sha256").update(bytes).digest("hex"));
    return bytes.toString("utf8");
  }

  private isNew(real: string): boolean {
    return !this.files.has(this.pathOf(real));
  }

  private pathOf(real: string): string {
    const path = relative(this.home, real).split(sep).join("/");
    if (isOutside(path)) throw new Doubt(path);
    return path;
  }

  /** What `.js` is, the nearest package.json says, which is then a part of the code. */
  private isModuleByPackage(folder: string): boolean {
    const file = join(folder, "package.json");
    if (existsSync(file)) return (JSON.parse(this.add(file)) as { readonly type?: unknown }).type === "module";
    return !isOutside(relative(this.home, dirname(folder))) && this.isModuleByPackage(dirname(folder));
  }
}

/** Where a package says its module is, if it says so plainly: one file, for whoever imports it. */
function entryOf(folder: string): string {
  const { exports: given, main } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const root: unknown = given?.["."] ?? given ?? main;
  const conditions =
    typeof root === "string" ? [["default", root]] : Object.entries((root as object | undefined) ?? {});
  // The first condition that applies counts. Of others than these it cannot be told here whether they do.
  const found = conditions.find(([name]) => name !== "types" && name !== "require");
  const [name, entry] = found ?? [];
  if ((name !== "import" && name !== "default") || typeof entry !== "string") throw new Doubt(folder);
  return join(folder, entry);
}

/**
 * Every file a plugin is made of, with a hash of what is in it: those of the docs repository, or of its package. Undefined
 * when it imports anything but the kit and modules or JSON beside it, or something that is told only as it runs.
 */
export async function pluginCode(
  { address }: Target,
  folder: string,
): Promise<readonly (readonly string[])[] | undefined> {
  try {
    const lexer = await import("es-module-lexer/js");
    const isFile = address.startsWith("file:");
    const home = isFile ? realpathSync(folder) : installed(address, folder);
    if (home === undefined) return undefined;
    const code = new Code(lexer, home);
    if (!isFile) code.add(join(home, "package.json"));
    code.visit(isFile ? address : pathToFileURL(entryOf(home)).href);
    return [...code.files];
  } catch {
    return undefined;
  }
}
