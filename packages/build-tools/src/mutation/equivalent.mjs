// Changes that make no difference to any result, each with its reason, from a list kept by hand. An entry is known by
// the text of its line, so it goes out of date with the line.
import { parse } from "yaml";

export const LIST = "tests/mutation/equivalent.yaml";

const plain = (text) => text.replace(/\s+/gu, " ").trim();

/** What is changed into what; the second and later ones that read alike on a line are told by their number. */
function named(mutants) {
  const met = new Map();
  return mutants.map((mutant) => {
    const change = plain(`${mutant.was} → ${mutant.put}`);
    const key = `${mutant.path}\n${mutant.line}\n${change}`;
    met.set(key, (met.get(key) ?? 0) + 1);
    return { mutant, change: met.get(key) > 1 ? `${change} (${met.get(key)})` : change };
  });
}

/** A change as it stands in the list: the line's text, and what is changed in it. */
export function written(mutants, textOf) {
  const lines = new Map();
  const linesOf = (path) => lines.get(path) ?? lines.set(path, textOf(path).split("\n")).get(path);
  return named(mutants).map(({ mutant, change }) => ({
    mutant,
    change,
    line: plain(linesOf(mutant.path)[mutant.line - 1]),
  }));
}

const keyOf = (file, line, change) => [file, plain(line), plain(change)].join("\n");

/**
 * The reasons by mutant, and the entries that name no change of the sources any more.
 * A list is text of YAML: files, their lines, and for each line a reason and its changes.
 */
export function equivalents(text, mutants, textOf) {
  const wanted = new Map();
  for (const { file, line, changes, because } of parse(text) ?? [])
    for (const change of changes) wanted.set(keyOf(file, line, change), { because, file, line, change });
  const reasons = new Map();
  for (const { mutant, change, line } of written(mutants, textOf)) {
    const key = keyOf(mutant.path, line, change);
    const entry = wanted.get(key);
    if (!entry) continue;
    reasons.set(mutant, entry.because);
    entry.met = true;
  }
  return { reasons, stale: [...wanted.values()].filter(({ met }) => !met) };
}
