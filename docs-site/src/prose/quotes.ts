import { guessMark, type Value } from "@plumbmark/calc";
import { workingEntries } from "@plumbmark/core";
import type { ElementContent } from "hast";
import { h } from "hastscript";
import { withBelow } from "../html/subscripts.js";
import type { PublishedDocument } from "../site/published-document.js";

/** What stands in place of an author's link to a computed value; undefined when there is no such value. */
export type QuoteFor = (of: string, words: ElementContent[]) => ElementContent | undefined;

const lines = (value: Value, { print }: PublishedDocument): readonly string[] =>
  value.known
    ? [
        ...workingEntries([value], print).flatMap(({ formula, with: numbers }) => [formula, numbers]),
        `Computed: ${print(value.value, value.kind)}${guessMark(value)}`,
      ]
    : value.gaps.map(({ because, of, what }) => because ?? `${of ?? "The document"} has no ${what} written down.`);

/**
 * Figures quoted in the prose: the author's words as a button that shows the working behind them. It needs no script:
 * the browser itself opens and closes what the button points at.
 */
export function quotes(document: PublishedDocument): QuoteFor {
  let count = 0;
  return (of, words) => {
    const value = document.build?.valueAt(of);
    if (!value) return undefined;
    count += 1;
    const id = `Working-${count}`;
    const shown = `\n${lines(value, document).join("\n")}`;
    return h("span", { class: "quote", id: `Quoted-${count}` }, [
      h("button", { type: "button", popoverTarget: id }, words),
      h("span", { id, popover: "auto", class: "working" }, [h("b", of), ...withBelow(shown, (part) => h("sub", part))]),
    ]);
  };
}
