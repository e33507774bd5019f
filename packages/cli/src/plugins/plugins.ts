import { availableParallelism } from "node:os";
import {
  type HouseStandardSettings,
  type PluginResults,
  pluginRules,
  type Rule,
  type SourceFile,
} from "@plumbmark/core";
import type { ResultCache } from "../engine/cache/cache.js";
import { limitsOf } from "./limits.js";
import type { PluginInput, PluginRun } from "./run-plugin.js";
import { type Target, targetsOf } from "./target.js";

/** Whose plugins they are, and how far they are to go. */
export interface Plugins {
  readonly settings: HouseStandardSettings;
  readonly standard: SourceFile | undefined;
  /** The folder they are named from. */
  readonly folder: string | undefined;
  /** Ids of the built-in rules. */
  readonly taken: readonly string[];
  readonly warn: (text: string) => void;
  /** Refused by whoever inspects: nothing of them runs. */
  readonly refused?: boolean | undefined;
  /** Their results of earlier runs. */
  readonly cache?: ResultCache | undefined;
  /** What they are carried out on; left out, their rules are only listed. */
  readonly on?: PluginInput;
}

type Outcome = Pick<PluginResults, "rules" | "failed">;

/** Every plugin in a process of its own, as many at a time as there are processors. */
async function inTurns<Found>(
  targets: readonly Target[],
  run: (target: Target) => Promise<Found>,
): Promise<readonly Found[]> {
  const outcomes: Found[] = [];
  const left = [...targets.entries()];
  const turn = async (): Promise<void> => {
    for (let next = left.shift(); next; next = left.shift()) outcomes[next[0]] = await run(next[1]);
  };
  await Promise.all(Array.from({ length: Math.min(targets.length, availableParallelism()) }, turn));
  return outcomes;
}

/** A name that two plugins give a rule is the first one's; the other plugin is not used. */
function withoutTwins(outcomes: readonly Outcome[]): readonly Outcome[] {
  const taken = new Map<string, string>();
  return outcomes.map((outcome) => {
    const twin = outcome.rules.find(({ stated }) => taken.has(stated.id));
    for (const { stated } of twin ? [] : outcome.rules) taken.set(stated.id, String(stated.plugin));
    if (!twin) return outcome;
    const { id, plugin } = twin.stated;
    return {
      rules: [],
      failed: [{ plugin: String(plugin), reason: `its rule ${id} has the name of a rule of ${taken.get(id)}` }],
    };
  });
}

/** The plugins a house standard names, and how they are run; undefined where it names none. @throws Trouble */
async function pluginsOf({ settings, standard, folder, taken, warn }: Plugins) {
  if (settings["rules-from"].length === 0 || standard === undefined || folder === undefined) return undefined;
  const given: PluginRun = {
    folder,
    limits: limitsOf(settings),
    taken: [...taken, "plugin.failed", ...Object.keys(settings["own-rules"] ?? {})],
    warn,
  };
  return { given, targets: await targetsOf(settings, standard, folder) };
}

const carriedOut = (outcomes: readonly Outcome[]): readonly Rule[] =>
  pluginRules({
    rules: outcomes.flatMap(({ rules }) => rules),
    failed: outcomes.flatMap(({ failed }) => failed),
    refused: [],
  });

/** The rules of the plugins a house standard names, carried out. @throws Trouble when one is nowhere to be found */
export async function rulesOfPlugins(plugins: Plugins): Promise<readonly Rule[]> {
  const { settings, refused, cache, on } = plugins;
  if (refused) {
    const names = [...new Set(settings["rules-from"])];
    return names.length === 0 ? [] : pluginRules({ rules: [], failed: [], refused: names });
  }
  const found = await pluginsOf(plugins);
  if (!found) return [];
  const { targets, given } = found;
  // Loaded only now: an inspection without plugins does not pay for them.
  const [{ listPlugin }, { runCached }] = await Promise.all([import("./run-plugin.js"), import("./run-cached.js")]);
  return carriedOut(
    withoutTwins(
      await inTurns(targets, (target) => (on ? runCached(target, given, on, cache) : listPlugin(target, given))),
    ),
  );
}

/** The same on each of several inputs that know nothing of one another, each plugin in one process. @throws Trouble */
export async function rulesOnEach(
  plugins: Omit<Plugins, "on" | "cache" | "refused">,
  inputs: readonly PluginInput[],
): Promise<readonly (readonly Rule[])[]> {
  const found = await pluginsOf(plugins);
  if (!found) return inputs.map(() => []);
  const { runPluginOnEach } = await import("./run-plugin.js");
  const all = await inTurns(found.targets, (target) => runPluginOnEach(target, found.given, inputs));
  return inputs.map((_, index) => carriedOut(withoutTwins(all.map((each) => each[index] as Outcome))));
}
