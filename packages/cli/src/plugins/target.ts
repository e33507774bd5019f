import { realpath } from "node:fs/promises";
import { isAbsolute, relative, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { type HouseStandardSettings, readYaml, type SourceFile, writtenKey } from "@plumbmark/core";
import { isOutside } from "../source/paths.js";
import { Trouble } from "../terminal/trouble.js";

/** A plugin the house standard names, and where its module is: the address of a file, or the name of a package. */
export interface Target {
  readonly name: string;
  readonly address: string;
}

const isPath = (name: string): boolean => name.startsWith(".") || isAbsolute(name);

/** A package as the registry names it, and one of its entries; no address, no drive, no way up. */
const PACKAGE = /^(?:@[a-z0-9~-][a-z0-9._~-]*\/)?[a-z0-9~-][a-z0-9._~-]*(?:\/(?!\.{1,2}(?:\/|$))[\w.~-]+)*$/u;

/** Where in the house standard a plugin is named. */
function placeOf(standard: SourceFile, index: number): string {
  const placed = readYaml(standard.text);
  const place = placed.places.get(`${writtenKey(placed, "rules-from")}.${index + 1}`);
  return place ? `${standard.path}:${place.line}:${place.column}` : standard.path;
}

const pluginCode = (error: unknown): { readonly code: string } => ({
  code: String((error as NodeJS.ErrnoException).code),
});

const ABSENT: ReadonlySet<string> = new Set(["ENOENT", "ENOTDIR"]);

async function targetOf(name: string, folder: string, place: () => string): Promise<Target> {
  if (PACKAGE.test(name)) return { name, address: name };
  if (!isPath(name) || name.includes("\0"))
    throw new Trouble(
      `${place()}: ${JSON.stringify(name)} is neither a file of the docs repository nor the name of a package.`,
      "Begin the path of a file with `./`.",
    );
  const path = resolve(folder, name);
  const [home, real] = await Promise.all([realpath(folder), realpath(path).catch(pluginCode)]);
  if (typeof real === "object" && !ABSENT.has(real.code))
    throw new Trouble(
      `${place()}: the plugin \`${name}\` cannot be read (${real.code}).`,
      "Give yourself the right to read it and the folders it is in.",
    );
  if (typeof real === "object")
    throw new Trouble(
      `${place()}: there is no plugin \`${name}\`.`,
      `Name a file of the docs repository, or a package; ${path} was looked for.`,
    );
  if (isOutside(relative(home, real).replaceAll("\\", "/")))
    throw new Trouble(
      `${place()}: the plugin \`${name}\` is outside the docs repository.`,
      "Put the file there, or name a package.",
    );
  if (/\.[cm]?tsx?$/u.test(real))
    throw new Trouble(
      `${place()}: the plugin \`${name}\` is TypeScript.`,
      "Compile it, and name the JavaScript that comes out.",
    );
  return { name, address: pathToFileURL(real).href };
}

/** Where the plugins of a house standard are, in its order. @throws Trouble with the place of one that is nowhere */
export const targetsOf = (
  { "rules-from": plugins }: HouseStandardSettings,
  standard: SourceFile,
  folder: string,
): Promise<readonly Target[]> =>
  Promise.all(
    [...new Set(plugins)].map((name) => targetOf(name, folder, () => placeOf(standard, plugins.indexOf(name)))),
  );
