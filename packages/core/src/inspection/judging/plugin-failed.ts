import { START } from "../../document/place.js";
import type { CheckEntry } from "../record.js";
import type { PluginResults } from "./plugin-results.js";

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

const UNMENDED = "Tell the plugin's author. Until it is mended its rules judge nothing, and the document is not ready.";

/** What a plugin's rule could not be told for, and why. It fails, in a draft too: nothing the author writes would mend it. */
export const failedEntry = (plugin: string, says: string, mend = UNMENDED): CheckEntry =>
  entry(plugin, "fails", says, mend);

/** A plugin that could not be used at all. What is not installed is nothing its author could mend. */
export const unusedEntry = ({ plugin, reason, absent }: PluginResults["failed"][number]): CheckEntry =>
  failedEntry(
    plugin,
    `The plugin ${plugin} could not be used: ${reason}.`,
    absent === undefined
      ? UNMENDED
      : `Run \`npm install\` in the docs repository; \`npm install ${absent}\` where its package.json does not list that. Until then the plugin's rules judge nothing, and the document is not ready.`,
  );

/** A plugin that whoever inspects did not let run. */
export const refusedEntry = (plugin: string): CheckEntry =>
  entry(
    plugin,
    "open",
    `The plugin ${plugin} was refused for this inspection, so its rules judged nothing.`,
    "Inspect without `--no-plugins` where the plugin may run.",
  );
