import { type LocalLink, localLinksOf } from "../document/body/links.js";
import type { Markdown } from "../document/body/markdown.js";
import { type Quote, quotesOf } from "../document/body/quotes.js";
import { type Section, sectionsOf } from "../document/body/sections.js";
import { type Task, tasksOf } from "../document/body/tasks.js";
import { textUnder } from "../document/body/under.js";
import { once } from "./reading/once.js";

/** The body of a document, as rules look at it. */
export class Prose {
  constructor(readonly markdown: Markdown) {}

  /** Headings, with what stands below each. */
  get sections(): readonly Section[] {
    return once(this, "sections", () => sectionsOf(this.markdown));
  }

  /** Figures quoted in it. */
  get quotes(): readonly Quote[] {
    return once(this, "quotes", () => quotesOf(this.markdown.skeleton));
  }

  /** Links and images that lead to a file or a heading. */
  get links(): readonly LocalLink[] {
    return once(this, "links", () => localLinksOf(this.markdown.skeleton));
  }

  /** Every task. */
  get tasks(): readonly Task[] {
    return once(this, "tasks", () => tasksOf(this.markdown.tree));
  }

  /** Text below a heading; undefined without the heading. */
  textUnder(title: string): string | undefined {
    return textUnder(this.markdown, title);
  }
}
