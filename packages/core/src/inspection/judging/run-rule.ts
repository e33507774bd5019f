import type { Print } from "@plumbmark/calc";
import type { Build } from "../../model/build.js";
import type { Repository } from "../../model/repository.js";
import type { StandardChain } from "../../standard/chain.js";
import type { CheckEntry } from "../record.js";
import { type Ask, applyRule } from "./apply-rule.js";
import { judge } from "./judge.js";
import { failedEntry } from "./plugin-failed.js";
import type { RawCheck, Rule, RuleContext } from "./rule.js";
import { MOST_CHECKS, refuseTooMany, refuseUnsound, refuseUnsoundText } from "./sound.js";

type Settings = RuleContext["settings"];

/** One document with what is needed to judge it. */
export interface Subject {
  readonly build: Build;
  /** The build as the rule is given it; the same when nothing is said. */
  readonly shown?: Build;
  readonly print: Print;
  /** The house standards above it, the root's first. */
  readonly chain: StandardChain;
  /** The repository as rules on this document look at it. */
  readonly repository: Repository;
  /** The repository as rules over all of it look at it, the same for every document; asking for it is noted. */
  readonly whole: () => Repository;
  /** Whether the checks that hold are going to be listed; they are when nothing is said. */
  readonly every?: boolean;
}

const reasonOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause)).slice(0, 500);

/** A plugin's mistake does not stop the inspection. Ours is an exception. */
function failed(rule: Rule, file: string, cause: unknown): CheckEntry {
  const reason = reasonOf(cause);
  if (rule.plugin === undefined)
    throw new Error(`the rule ${rule.id} could not be carried out on ${file}: ${reason}`, { cause });
  return failedEntry(rule.plugin, `The rule ${rule.id} of the plugin ${rule.plugin} failed on ${file}: ${reason}.`);
}

const ofRepository = new WeakMap<Repository, Map<Rule, Map<string, readonly RawCheck[]>>>();

/** A rule over the repository is asked once for the same settings; each document takes the checks that are about it. */
function overRepository(rule: Rule, { build, whole: wholeOf }: Subject, settings: Settings): readonly RawCheck[] {
  const whole = wholeOf();
  const rules = ofRepository.get(whole) ?? new Map<Rule, Map<string, readonly RawCheck[]>>();
  ofRepository.set(whole, rules);
  const asked = rules.get(rule) ?? new Map<string, readonly RawCheck[]>();
  rules.set(rule, asked);
  const key = JSON.stringify(settings);
  const all = asked.get(key) ?? [...rule.checks({ repository: whole, settings } as Parameters<Rule["checks"]>[0])];
  asked.set(key, all);
  if (all.some(({ file }) => file === undefined))
    throw new TypeError("it does not say which document a check is about: use `about(build, check)`");
  return all.filter(({ file }) => file === build.context.file);
}

const asker =
  (rule: Rule, subject: Subject): Ask =>
  (settings) =>
    rule.over === "repository"
      ? overRepository(rule, subject, settings)
      : rule.checks({ build: subject.shown ?? subject.build, repository: subject.repository, settings });

/** Runs one rule on one document, by the levels and settings of the house standards above it. */
export function runRule(rule: Rule, subject: Subject): readonly CheckEntry[] {
  const { build, chain, print, every = true } = subject;
  const checks: CheckEntry[] = [];
  try {
    // Levels and settings were applied where it was run.
    if (rule.result) return rule.result(build.context.file);
    for (const { raw, level } of applyRule(rule, build, chain, asker(rule, subject))) {
      if (rule.plugin !== undefined) refuseUnsound(raw);
      const entry = judge(rule, level, raw, build, print, every || rule.plugin !== undefined);
      if (rule.plugin !== undefined) refuseUnsoundText(entry.says);
      checks.push(entry);
      if (rule.plugin !== undefined) refuseTooMany(checks.length);
    }
  } catch (cause) {
    // More checks than anybody reads tell nothing.
    const kept = cause instanceof RangeError && checks.length > MOST_CHECKS ? [] : checks;
    return [...kept, failed(rule, build.context.file, cause)];
  }
  return checks;
}
