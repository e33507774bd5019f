import type { Markdown } from "../document/markdown.js";
import type { Section } from "../document/sections.js";
import type { BuildContext } from "../model/reading/build-context.js";
import type { Reader } from "../model/reading/reader.js";

/** What an approval has to know of a build: what is written, and what it is judged by. */
export interface Approvable {
  readonly reader: Reader;
  readonly markdown: Markdown;
  readonly sections: readonly Section[];
  readonly context: Pick<BuildContext, "standards" | "stock">;
}
