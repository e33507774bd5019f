import type { StatedRule } from "@plumbmark/core";

/** A rule of a plugin as it states itself. */
export const stated = (id: string): StatedRule => ({
  id,
  states: "S.",
  level: "should",
  why: "w",
  judged: "j",
  sources: ["house"],
  plugin: "a-plugin",
});
