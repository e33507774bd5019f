import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import type { Data } from "../document/yaml.js";
import type { Build } from "../model/build.js";
import type { StandardFile } from "../standard/file.js";
import type { Level, RawCheck, Rule, Thing } from "./rule.js";
import { StandardError } from "./settings.js";

/** A rule without code, as the house standard writes it: JSON Schema over the computed build. */
interface OwnRule {
  readonly states: string;
  readonly why?: string;
  readonly level?: Level;
  readonly each: "build" | "faces" | "circuits" | "runs" | "chains" | "bars" | "hangs";
  readonly when?: Record<string, unknown>;
  readonly require: Record<string, unknown>;
  readonly mend?: string;
}

const thingsOf = (build: Build, each: OwnRule["each"]): readonly Thing[] =>
  each === "build" ? [build] : each === "hangs" ? build.bars.flatMap((bar) => bar.hangs) : build[each];

/** What is written under a thing and what is computed for it, in SI units; and the names of what cannot be told. */
function factsOf(
  build: Build,
  thing: Thing,
): { readonly facts: Readonly<Record<string, unknown>>; readonly unknown: readonly string[] } {
  const written = build.reader.data(thing.path);
  const facts: Record<string, unknown> = { ...(written as Record<string, Data>) };
  const unknown: string[] = [];
  const prefix = thing.path === "" ? "" : `${thing.path}.`;
  for (const [path, value] of build.values) {
    const key = path.slice(prefix.length);
    if (!path.startsWith(prefix) || key.includes(".")) continue;
    if (value.known) facts[key] = value.value;
    else unknown.push(key);
  }
  return { facts, unknown };
}

const keysOf = (...schemas: readonly (Record<string, unknown> | undefined)[]): readonly string[] =>
  schemas.flatMap((schema) => [
    ...Object.keys((schema?.properties as object | undefined) ?? {}),
    ...((schema?.required as string[] | undefined) ?? []),
  ]);

function checkOf(
  own: OwnRule,
  thing: Thing,
  build: Build,
  when: ValidateFunction | undefined,
  require: ValidateFunction,
): RawCheck | undefined {
  const { facts, unknown } = factsOf(build, thing);
  const label = thing.label;
  const open = (keys: readonly string[]): RawCheck => ({
    at: thing.path,
    form: "open",
    says: () =>
      `${label}: ${keys.map((key) => `\`${key}\``).join(", ")} cannot be told, so “${own.states}” cannot be either.`,
    mend: "Write it down, or what it is computed from.",
    gaps: keys,
  });
  const untold = keysOf(own.when, own.require).filter((key) => unknown.includes(key));
  if (untold.length > 0) return open(untold);
  if (when && !when(facts)) return undefined;
  const absent = keysOf(own.require).filter((key) => !(key in facts));
  if (absent.length > 0) return open([...new Set(absent)]);
  const holds = require(facts);
  const shown = [...new Set(keysOf(own.require))].map((key) => `${key} is ${JSON.stringify(facts[key])}`).join(", ");
  return {
    at: thing.path,
    form: "plain",
    holds,
    says: () => `${label}: ${own.states} Here ${shown}.`,
    ...(own.mend ? { mend: own.mend } : {}),
  };
}

/** The house standard's rules without code, as rules. @throws StandardError when a schema of theirs cannot be used. */
export function ownRules({ settings: standard }: StandardFile): readonly Rule[] {
  return Object.entries((standard["own-rules"] ?? {}) as unknown as Record<string, OwnRule>).map(([id, own]) => {
    const compile = (schema: Record<string, unknown>): ValidateFunction => {
      try {
        return new Ajv2020({ strict: false }).compile(schema);
      } catch (error) {
        throw new StandardError(
          `own-rules.${id}: the schema cannot be used: ${error instanceof Error ? error.message : String(error)}.`,
        );
      }
    };
    const [when, require] = [own.when ? compile(own.when) : undefined, compile(own.require)];
    return {
      id,
      states: own.states,
      level: own.level ?? "shall",
      why: own.why ?? "A rule of the house.",
      judged: `JSON Schema over each of the ${own.each} as computed, in SI units.`,
      sources: ["house"],
      *checks({ build }) {
        for (const thing of thingsOf(build, own.each)) {
          const check = checkOf(own, thing, build, when, require);
          if (check) yield check;
        }
      },
    };
  });
}
