import { dirname, join } from "node:path";

/** The command of a package that is installed, by the folder its `node_modules` is in. */
const installedIn = (folder: string): string => join(folder, "node_modules", "plumbmark", "plumbmark.js");

/** A folder and those above it, the nearest first. */
const upwards = (folder: string): readonly string[] =>
  dirname(folder) === folder ? [folder] : [folder, ...upwards(dirname(folder))];

/** The command that comes with the extension, in its folder. */
export const ownCommand = (extension: string): string =>
  join(extension, "server", "node_modules", "@plumbmark", "cli", "dist", "plumbmark.js");

/**
 * The script that is started with `language-server`: that of the package a docs repository has installed, so that the
 * editor says what its pipeline says, or else the one that comes with the extension.
 * @param repositories folders that hold a house standard
 * @param extension the folder of the extension
 */
export function commandFor(
  repositories: readonly string[],
  extension: string,
  isThere: (path: string) => boolean,
): string {
  const found = repositories.flatMap(upwards).map(installedIn).find(isThere);
  return found ?? ownCommand(extension);
}
