import { START } from "../../document/place.js";
import type { CheckEntry } from "../record.js";

export const PLUGIN_FAILED = "plugin.failed";

const entry = (plugin: string, outcome: "fails" | "open", says: string, mend: string): CheckEntry => ({
  rule: PLUGIN_FAILED,
  from: plugin,
  level: "shall",
  outcome,
  at: { path: "", ...START },
  says,
  mend,
  sources: [],
});

/** What a plugin's rule could not be told for, and why. It fails, in a draft too: nothing the author writes would mend it. */
export const failedEntry = (plugin: string, says: string): CheckEntry =>
  entry(
    plugin,
    "fails",
    says,
    "Tell the plugin's author. Until it is mended its rules judge nothing, and the document is not ready.",
  );

/** A plugin that could not be used at all. */
export const unusedEntry = (plugin: string, reason: string): CheckEntry =>
  failedEntry(plugin, `The plugin ${plugin} could not be used: ${reason}.`);

/** A plugin that whoever inspects did not let run. */
export const refusedEntry = (plugin: string): CheckEntry =>
  entry(
    plugin,
    "open",
    `The plugin ${plugin} was refused for this inspection, so its rules judged nothing.`,
    "Inspect without `--no-plugins` where the plugin may run.",
  );
