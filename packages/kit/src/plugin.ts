import type { Rule } from "@plumbmark/core";

/** Version of the kit. It goes up when a plugin written for the one before would have to be changed. */
export const KIT = 1;

/** Somebody's own rules, with the version of the kit they are written for. */
export interface Plugin {
  /** The version of the kit its rules are written for. */
  readonly kit: typeof KIT;
  /** Its rules. */
  readonly rules: readonly Rule[];
}

/** Declares a plugin; it is the default export of its module: `export default plugin({ kit: 1, rules: [ … ] })`. */
export const plugin = (definition: Plugin): Plugin => definition;
