import { knownOutline } from "@plumbmark/core";
import { isFailure } from "../kept/failure.js";
import type { Kept } from "../kept/kept.js";
import { frameKey, hashOf } from "../kept/keys.js";
import { carryOutPlugin, type Given, type Looked, type Outcome } from "./carry-out.js";
import { codeOf } from "./code.js";
import { contentOf, joined, type Keys, keepByDocument, keptByDocument, notIn } from "./kept-by-document.js";
import type { Target } from "./target.js";

/** Undefined when its code cannot be told for sure. */
async function keysOf(
  target: Target,
  { folder, limits, taken }: Given,
  { files, today }: Looked,
  { edition }: Kept,
): Promise<Keys | undefined> {
  const found = await codeOf(target, folder);
  if (!found) return undefined;
  const code = hashOf([target.name, found, limits, taken, edition, process.version]);
  const outlines = [...files.documents.map(knownOutline), ...(files.others ?? [])];
  return { code, around: hashOf([code, frameKey(files, edition, today), outlines]) };
}

/** Of a plugin with a rule that looks at more than one document: all of them. */
const wholeKey = ({ around }: Keys, { files, wanted }: Looked): string =>
  hashOf([around, wanted, files.documents.map((file) => [file.path, contentOf(file)])]);

const isSound = ({ rules, failed }: Outcome): boolean =>
  failed.length === 0 && !rules.some(({ outcomes }) => Object.values(outcomes).some(isFailure));

/**
 * Carries out every rule of a plugin, or gives what it came to before when its code and everything it can see are the
 * same: document by document when none of its rules looks at two at once. What failed is tried again each time, and what
 * prints is let print.
 */
export async function carryOutKept(target: Target, given: Given, on: Looked, kept: Kept | undefined): Promise<Outcome> {
  const keys = kept && (await keysOf(target, given, on, kept));
  if (!kept || !keys) return carryOutPlugin(target, given, on);
  const whole = kept.plugins.get(wholeKey(keys, on)) as Outcome | undefined;
  if (whole) return whole;
  const known = keptByDocument(keys, on, kept);
  const left = known ? notIn(known, on) : on;
  if (known && left.wanted.length === 0) return known;
  let printed = false;
  const warn = (text: string): void => {
    printed = true;
    given.warn(text);
  };
  const outcome = await carryOutPlugin(target, { ...given, warn }, left);
  const all = known ? joined(known, outcome) : outcome;
  // Its code may have been changed while it was loaded.
  if (!printed && isSound(outcome) && keys.around === (await keysOf(target, given, on, kept))?.around) {
    if (outcome.alone) keepByDocument(keys, outcome, left, kept);
    else kept.plugins.set(wholeKey(keys, on), all);
  }
  return all;
}
