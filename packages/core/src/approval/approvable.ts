import type { Markdown } from "../document/body/markdown.js";
import type { Section } from "../document/body/sections.js";
import type { BuildContext } from "../model/reading/build-context.js";
import type { Reader } from "../model/reading/reader.js";

/** What an approval has to know of a build: what is written, and what it is judged by. */
export interface Approvable {
  readonly reader: Reader;
  readonly markdown: Markdown;
  readonly sections: readonly Section[];
  readonly context: Pick<BuildContext, "standards" | "stock">;
}
