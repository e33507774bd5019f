import type { Rule } from "../inspection/judging/rule.js";
import { chainFor, type StandardChain, type Standards } from "./chain.js";
import { mistakeIn, type StandardFile, type StandardMistake } from "./file.js";
import { type InForce, inForce, type PlacedValue } from "./in-force.js";
import { isLooser, isLooserLevel, SUPPORTS, topicOf } from "./levels.js";
import { fromText } from "./listing.js";
import type { SettingDefinition } from "./setting.js";

const PRACTICES = ["us", "iec"] as const;

/** One value that asks for less than the same value of a house standard above. */
interface Loosened {
  readonly key: string;
  readonly is: PlacedValue<unknown>;
  readonly was: PlacedValue<unknown>;
  readonly told: boolean;
}

function loosened(rule: Rule, is: InForce, was: InForce): readonly Loosened[] {
  const level = isLooserLevel(is.level.value, was.level.value)
    ? [{ key: "level", is: is.level, was: was.level, told: true }]
    : [];
  const settings = Object.entries(rule.settings ?? {}).flatMap(([key, definition]: [string, SettingDefinition]) => {
    const [now, before] = [is.settings[key], was.settings[key]];
    return now && before && isLooser(definition, now.value, before.value)
      ? [{ key, is: now, was: before, told: definition.stricter !== undefined }]
      : [];
  });
  return [...level, ...settings];
}

const shown = ({ written, value }: PlacedValue<unknown>): string => written ?? String(value);

function mistakeOf(
  standard: StandardFile,
  above: StandardFile,
  rule: Rule,
  { key, is, was, told }: Loosened,
): StandardMistake {
  const says = told
    ? `${rule.id}: \`${key}\` is ${shown(is)} here, which is looser than ${shown(was)} (${fromText(was.from)}).`
    : `${rule.id}: \`${key}\` is ${shown(is)} here and ${shown(was)} above (${fromText(was.from)}); nothing tells which of them is stricter.`;
  const mend = `Ask for as much or more, or have ${above.file ?? "the house standard above"} allow it: \`allows: [${rule.id}]\`.`;
  const made = mistakeIn(standard, "", says, mend);
  const { from } = is;
  return from.from === "standard"
    ? { ...made, place: { line: from.line, column: from.column, endLine: from.line, endColumn: from.column } }
    : made;
}

const allows = ({ settings }: StandardFile, rule: Rule): boolean =>
  settings.allows.includes(rule.id) || settings.allows.includes(topicOf(rule.id));

/** What one folder's house standard loosens although nobody above allows it. */
function looseningsOf(chain: StandardChain, rules: readonly Rule[]): readonly StandardMistake[] {
  const own = chain.at(-1) as StandardFile;
  const found = new Map<string, StandardMistake>();
  for (const rule of rules)
    for (const [index, above] of chain.slice(0, -1).entries()) {
      if (allows(above, rule)) continue;
      const before = chain.slice(0, index + 1) as unknown as StandardChain;
      for (const practice of PRACTICES)
        for (const support of [undefined, ...SUPPORTS])
          for (const each of loosened(
            rule,
            inForce(rule, chain, practice, support),
            inForce(rule, before, practice, support),
          )) {
            // What a file above has loosened is that file's mistake.
            if (each.is.from.from !== "standard" || each.is.from.file !== own.file) continue;
            const mistake = mistakeOf(own, above, rule, each);
            const at = `${rule.id} ${each.key} ${mistake.place.line}:${mistake.place.column}`;
            if (!found.has(at)) found.set(at, mistake);
          }
    }
  return [...found.values()];
}

/**
 * A house standard of a folder may only make things stricter: neither than the one right above, nor than any above
 * that, unless the one it would loosen allows it by rule or topic.
 */
export const loosenings = (standards: Standards, rules: readonly Rule[]): readonly StandardMistake[] =>
  standards.folders.flatMap((standard) => looseningsOf(chainFor(standards, standard.folder), rules));
