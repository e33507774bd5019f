import type { Kind } from "@plumbmark/calc";

/** `shall` requirement, `should` recommendation, `note` information, `none` not applied (ISO/IEC Directives, Part 2). */
export type Level = "shall" | "should" | "note" | "none";

/** What a setting of a rule may be. */
export type Setting = number | boolean | string | readonly string[];

/** One setting of a rule: its default, by practice where practices differ, and what it means. */
export interface SettingDefinition {
  /** Its default in `us` practice, in the unit its kind is kept in. */
  readonly us: Setting;
  /** Its default in `iec` practice. */
  readonly iec: Setting;
  /** What it means, in a few words. */
  readonly describe: string;
  /** Kind of quantity it is written as (`75 %`, `0.3 m`); a plain number or text when left out. */
  readonly kind?: Kind;
  /** Which way it gets stricter. Without it a house standard deeper in the tree may not change it unless allowed to. */
  readonly stricter?: "less" | "more";
  /** JSON Schema of what may be set, over the value as it is kept (`75 %` is 0.75); the default's own type when left out. */
  readonly schema?: Readonly<Record<string, unknown>>;
}
