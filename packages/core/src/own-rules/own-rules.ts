import type { Data } from "../document/yaml/yaml.js";
import type { RawCheck, Rule, Thing } from "../inspection/judging/rule.js";
import type { Build } from "../model/build.js";
import { mistakeIn, type StandardFile, type StandardMistake } from "../standard/file.js";
import { refuse } from "../standard/refuse.js";
import type { Level } from "../standard/setting.js";
import { demandChecks, type JudgedDemand, type StatedDemand, untold } from "./demand-check.js";
import { type Each, ONE, shapeOf, thingsOf } from "./each.js";
import { at, type Facts, factsOf } from "./facts.js";
import { readSchema, type Schema } from "./read-schema.js";
import { compiledRest, restCheck, type Validate } from "./rest-check.js";
import { split } from "./split.js";
import { type Applies, whenOf } from "./when.js";
import { wordsOf } from "./words.js";

/** A rule without code, as the house standard writes it. */
interface Written {
  readonly states: string;
  readonly why?: string;
  readonly level?: Level;
  readonly each: Each;
  readonly when?: Data;
  readonly require: Data;
  readonly mend?: string;
}

interface Ready {
  readonly stated: StatedDemand;
  readonly when: Applies;
  readonly require: Schema;
  readonly rest: Validate | undefined;
  /** First words of the paths it looks at, when it is about the build itself. */
  readonly words: readonly string[] | "all";
}

function judgedOf({ stated, require, rest }: Ready, build: Build, thing: Thing, facts: Facts): readonly JudgedDemand[] {
  const parts = split(require);
  const judged = parts.demands.map(
    (each) => [each.keys.join("."), demandChecks(build, thing, facts, each, stated)] as const,
  );
  const told = new Set(judged.map(([path]) => path));
  const absent = parts.present.filter((keys) => !told.has(keys.join(".")) && at(facts.data, keys) === undefined);
  const missing = absent.map((keys) =>
    untold(thing, [thing.path, ...keys].filter((key) => key !== "").join("."), keys.join(" "), stated),
  );
  const all = [
    ...judged.flatMap(([, each]) => each),
    ...missing,
    ...(rest ? [restCheck(thing, facts, parts.rest, rest, stated)] : []),
  ];
  // Only presence was asked for, and everything is there.
  if (all.length > 0) return all;
  return [
    {
      raw: { at: thing.path, form: "plain", holds: true, says: () => `${thing.label}: ${stated.states}` },
      holds: true,
    },
  ];
}

const undecided = (thing: Thing, raw: RawCheck, { states }: StatedDemand): RawCheck => ({
  at: raw.at,
  form: "open",
  says: () => `${thing.label}: whether this is asked of it cannot be told. ${states}`,
  mend: "Write down what the rule decides by, or meet it.",
  gaps: [],
});

function* checksOf(ready: Ready, build: Build, thing: Thing): Iterable<RawCheck> {
  const facts = factsOf(build, thing, ready.words);
  const applies = ready.when(facts);
  if (applies === "no") return;
  for (const { raw, holds } of judgedOf(ready, build, thing, facts))
    yield applies === "unknown" && holds !== true ? undecided(thing, raw, ready.stated) : raw;
}

/** Reads both schemas of a rule; whatever is wrong with them is added to the mistakes. */
function readyOf(
  id: string,
  own: Written,
  standard: StandardFile,
  mistakes: StandardMistake[],
  accepted: boolean,
): Ready | undefined {
  const before = mistakes.length;
  const shape = shapeOf(own.each);
  const schemaAt = (key: "when" | "require", written: Data): Schema =>
    readSchema(written, {
      shape,
      path: `own-rules.${id}.${key}`,
      name: ONE[own.each],
      complain: (path, says, mend) => void mistakes.push(mistakeIn(standard, path, says, mend)),
    });
  const require = schemaAt("require", own.require);
  const when = own.when === undefined ? undefined : schemaAt("when", own.when);
  if (mistakes.length > before) return undefined;
  try {
    const stated = { id, states: own.states, ...(own.mend ? { mend: own.mend } : {}), shape };
    return {
      stated,
      when: whenOf(when, accepted),
      require,
      rest: compiledRest(split(require).rest, accepted),
      words: wordsOf([require, when]),
    };
  } catch (error) {
    mistakes.push(
      mistakeIn(
        standard,
        `own-rules.${id}`,
        `The schema cannot be used: ${(error as Error).message}.`,
        "Mend the schema.",
      ),
    );
    return undefined;
  }
}

const NOT_READY = (): never => {
  throw new Error("an own rule with mistakes was asked for its checks");
};

/**
 * The rules without code of a house standard, as rules.
 * @param accepted whether this very house standard was used before, by the same code
 * @throws StandardError with the place of everything in their schemas that could never match.
 */
export function ownRules(standard: StandardFile, accepted = false): readonly Rule[] {
  const mistakes: StandardMistake[] = [];
  const written = (standard.settings["own-rules"] ?? {}) as unknown as Readonly<Record<string, Written>>;
  const rules = Object.entries(written).map(([id, own]): Rule => {
    const ready = readyOf(id, own, standard, mistakes, accepted);
    return {
      id,
      states: own.states,
      level: own.level ?? "shall",
      why: own.why ?? "A rule of the house.",
      judged: `What ${standard.file} requires is looked up in what is written and computed for ${ONE[own.each]}, one by one.`,
      sources: ["house"],
      *checks({ build }) {
        for (const thing of thingsOf(build, own.each)) yield* checksOf(ready ?? NOT_READY(), build, thing);
      },
    };
  });
  refuse(mistakes);
  return rules;
}
