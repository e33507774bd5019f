import type { DocumentFile, Rule } from "@plumbmark/core";
import { outcomesOn } from "./brought.js";
import type { Hand } from "./hand.js";
import type { Answers, Order, Sent } from "./messages.js";

/** Text and path: a text may be one that is read only when it is looked at. */
const sentBy =
  (rules: readonly Rule[]) =>
  ({ path, text }: DocumentFile): Sent => ({ path, text, outcomes: outcomesOn(rules, path) });

/**
 * Tells threads what to do, and gives a way to ask each: a document is read, and what plugins came to on it looked up,
 * when it is sent.
 * @param rules those of plugins among them, of which what they came to is sent
 */
export function sending<W extends Order["work"]>(
  crew: readonly Hand[],
  order: Order & { readonly work: W },
  rules: readonly Rule[] = [],
): readonly ((documents: readonly DocumentFile[]) => Promise<Answers[W] | undefined>)[] {
  return crew.map(({ tell, ask }) => {
    tell(order);
    return (documents) => ask(documents.map(sentBy(rules))) as Promise<Answers[W] | undefined>;
  });
}
