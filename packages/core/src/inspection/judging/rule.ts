import type { SourceId, Value } from "@plumbmark/calc";
import type { Place } from "../../document/place.js";
import type { Turns } from "../../findings/turns.js";
import type { Mend } from "../../mends/mend.js";
import type { Build } from "../../model/build.js";
import type { Repository } from "../../model/repository.js";
import type { Level, Setting, SettingDefinition } from "../../standard/setting.js";
import type { CheckEntry } from "../record.js";

/** What a rule looks at; `path` leads to its place in the document. */
export interface Thing {
  /** Its place in the document; empty for the document as a whole. */
  readonly path: string;
  /** What messages call it. */
  readonly label: string;
  /** Place in the body, for what does not stand in the front matter. */
  readonly place?: Place;
}

/** Texts of a check are made with the values printed in the document's own units. */
export interface Words {
  /** What was found, printed in the document's own units. */
  readonly measured: string;
  /** What is allowed, printed likewise. */
  readonly allowed: string;
}

export type Sense = "at most" | "at least" | "within" | "exactly";

/** What a rule yields for each thing it looks at, holding or not. The engine compares. */
export interface RawCheck {
  /** Path of what it is about. */
  readonly at: string;
  /** Compared with a limit, a plain statement, or open. */
  readonly form: "compare" | "plain" | "open";
  /** What was found. */
  readonly measured?: Value;
  /** What is allowed. */
  readonly allowed?: Value;
  /** The upper end of what is allowed; only of `within`, where `allowed` is the lower. */
  readonly most?: Value;
  /** How the two are compared. */
  readonly sense?: Sense;
  /** Of a plain statement: whether it holds. */
  readonly holds?: boolean;
  /** What was found and what is allowed, as one sentence. */
  readonly says: (words: Words) => string;
  /** What would put it right. */
  readonly mend?: string;
  /** Changes of the document that would put it right. */
  readonly mends?: readonly Mend[];
  /** The one figure that would turn it. */
  readonly turns?: Turns | undefined;
  /** What has to be written down; only of an open check. */
  readonly gaps?: readonly string[];
  /** Place in the body, for what does not stand in the front matter. */
  readonly place?: Place;
  /** What this check alone rests on, where its rule names more. */
  readonly sources?: readonly SourceId[];
  /** Less grave than its rule: the level of this check is at most this. */
  readonly level?: "should" | "note";
  /** The document it is about; only of a rule over the whole repository. */
  readonly file?: string;
}

/** What a rule is given. */
export interface RuleContext {
  /** The document that is looked at. A rule over the whole repository has none. */
  readonly build: Build;
  /** Everything the docs repository holds, this document included. */
  readonly repository: Repository;
  /** What the house standard sets, or the default of the practice; quantities in the unit their kind is kept in. */
  readonly settings: Readonly<Record<string, Setting>>;
}

/** A rule as the engine runs it. */
export interface Rule {
  /** `topic.name`. */
  readonly id: string;
  /** The rule in one sentence. */
  readonly states: string;
  /** Its level, unless the house standard sets another. */
  readonly level: Level;
  /** What goes wrong on site without it. */
  readonly why: string;
  /** What is compared with what. */
  readonly judged: string;
  /** Ids of what it rests on. */
  readonly sources: readonly SourceId[];
  /** What a house standard may set of it. */
  readonly settings?: Readonly<Record<string, SettingDefinition>>;
  /** The plugin it comes from; left out for the built-in rules. */
  readonly plugin?: string;
  /** Left out: it looks at one document at a time. `repository`: it is asked once, and says of each check which document it is about. */
  readonly over?: "repository";
  /** Of a rule that was run elsewhere: its result. @throws Error when it could not be run. */
  readonly result?: (file: string) => readonly CheckEntry[];
  /** Yields one check for each thing it looks at, holding or not. */
  readonly checks: (context: RuleContext) => Iterable<RawCheck>;
}
