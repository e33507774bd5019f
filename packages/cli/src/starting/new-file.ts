import { existsSync } from "node:fs";
import { join } from "node:path";
import { isDevice } from "@plumbmark/core";
import { Trouble } from "../terminal/trouble.js";
import { putFiles } from "./put-files.js";

const NAME = /^[a-z0-9][a-z0-9-]*$/u;

/** `Heron Lane Hall` as a name: `heron-lane-hall`. */
const asName = (text: string): string =>
  text
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/gu, "-")
    .replaceAll(/^-|-$/gu, "");

/** @throws Trouble for what can be no name of a file and of what is in it */
export function refuseName(what: string, name: string): void {
  if (!NAME.test(name)) {
    const near = asName(name);
    const such = NAME.test(near) ? near : "spring-banner";
    throw new Trouble(
      `\`${name}\` is no name of a ${what}.`,
      `Write small letters, digits and hyphens, such as \`${such}\`.`,
    );
  }
  if (isDevice(name)) throw new Trouble(`\`${name}\` is the name of a device on Windows.`, "Give it another name.");
}

/** Writes one new file into a docs repository. @throws Trouble when it is there already */
export function newFile(root: string, path: string, text: string): void {
  if (existsSync(join(root, path)))
    throw new Trouble(`${path} is there already; it was left as it is.`, "Give it another name.");
  putFiles(root, [{ path, text }]);
}
