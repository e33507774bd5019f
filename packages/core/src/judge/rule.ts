import type { SourceId, Value } from "@plumbmark/calc";
import type { Place } from "../document/place.js";
import type { Build } from "../model/build.js";

/** `shall` requirement, `should` recommendation, `note` information, `none` not applied (ISO/IEC Directives, Part 2). */
export type Level = "shall" | "should" | "note" | "none";

export type Setting = number | boolean | string | readonly string[];

/** One setting of a rule: its default, by practice where practices differ, and what it means. */
export interface SettingDefinition {
  readonly us: Setting;
  readonly iec: Setting;
  readonly describe: string;
  /** Kind of quantity it is written as (`75 %`, `0.3 m`); a plain number or text when left out. */
  readonly kind?: "ratio" | "length" | "angle";
  /** Which way it gets stricter. Without it a house standard deeper in the tree may not change it unless allowed to. */
  readonly stricter?: "less" | "more";
}

/** What a rule looks at; `path` leads to its place in the document. */
export interface Thing {
  readonly path: string;
  readonly label: string;
  /** Place in the body, for what does not stand in the front matter. */
  readonly place?: Place;
}

/** Texts of a check are made with the values printed in the document's own units. */
export interface Words {
  readonly measured: string;
  readonly allowed: string;
}

export type Sense = "at most" | "at least" | "within" | "exactly";

/** What a rule yields for each thing it looks at, holding or not. The engine compares. */
export interface RawCheck {
  readonly at: string;
  readonly form: "compare" | "plain" | "open";
  readonly measured?: Value;
  readonly allowed?: Value;
  readonly sense?: Sense;
  /** Of a plain statement: whether it holds. */
  readonly holds?: boolean;
  readonly says: (words: Words) => string;
  readonly mend?: string;
  /** What has to be written down; only of an open check. */
  readonly gaps?: readonly string[];
  /** Place in the body, for what does not stand in the front matter. */
  readonly place?: Place;
}

export interface RuleContext {
  readonly build: Build;
  readonly settings: Readonly<Record<string, Setting>>;
}

export interface Rule {
  readonly id: string;
  readonly states: string;
  readonly level: Level;
  readonly why: string;
  readonly judged: string;
  readonly sources: readonly SourceId[];
  readonly settings?: Readonly<Record<string, SettingDefinition>>;
  /** The plugin it comes from; left out for the built-in rules. */
  readonly plugin?: string;
  readonly checks: (context: RuleContext) => Iterable<RawCheck>;
}
