import { createHash } from "node:crypto";
import type { RepositoryFiles } from "@plumbmark/core";
import { isFailure } from "../kept/failure.js";
import type { Kept } from "../kept/kept.js";
import { frameKey } from "../kept/keys.js";
import type { NamedFile } from "../kept/outlines.js";
import { carryOutPlugin, type Given, type Looked } from "./carry-out.js";
import { codeOf } from "./code.js";
import type { Target } from "./target.js";

const hash = (text: string): string => createHash("sha256").update(text).digest("hex");

type Outcome = Awaited<ReturnType<typeof carryOutPlugin>>;

/** What every rule of a plugin can see: all documents, and everything they rest on. */
const seenIn = (files: RepositoryFiles, edition: string, today: string) => [
  frameKey(files, edition, today),
  // A text may be one that is only read when it is looked at.
  (files.documents as readonly NamedFile[]).map((file) => [file.path, file.id ?? hash(file.text)]),
];

/** The key of what a plugin comes to; undefined when its code cannot be told for sure. */
async function keyOf(
  target: Target,
  { folder, limits, taken }: Given,
  { files, today, wanted }: Looked,
  { edition }: Kept,
): Promise<string | undefined> {
  const code = await codeOf(target, folder);
  if (!code) return undefined;
  const all = [target.name, code, limits, taken, wanted, seenIn(files, edition, today)];
  return hash(JSON.stringify(all));
}

const isSound = ({ rules, failed }: Outcome): boolean =>
  failed.length === 0 && !rules.some(({ outcomes }) => Object.values(outcomes).some(isFailure));

/**
 * Carries out every rule of a plugin, or gives what it came to before when its code and everything it can see are the
 * same. What failed is tried again each time, and what prints is let print.
 */
export async function carryOutKept(target: Target, given: Given, on: Looked, kept: Kept | undefined): Promise<Outcome> {
  const key = kept && (await keyOf(target, given, on, kept));
  if (!kept || key === undefined) return carryOutPlugin(target, given, on);
  const known = kept.plugins.get(key) as Outcome | undefined;
  if (known) return known;
  let printed = false;
  const warn = (text: string): void => {
    printed = true;
    given.warn(text);
  };
  const outcome = await carryOutPlugin(target, { ...given, warn }, on);
  // Its code may have been changed while it was loaded.
  if (!printed && isSound(outcome) && key === (await keyOf(target, given, on, kept))) kept.plugins.set(key, outcome);
  return outcome;
}
