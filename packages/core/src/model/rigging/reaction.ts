import { type HungBeam, type Known, reactionValue } from "@plumbmark/calc";

/** The reaction of one hang, counted from the left, as a value; a slack hang carries nothing. */
export function reactionIn(
  hung: HungBeam & { readonly stable: true },
  index: number,
  inputs: readonly Known[],
  words: { readonly names: readonly string[]; readonly when?: string },
): Known<"mass"> {
  if (hung.slack.includes(index))
    return { known: true, value: 0, kind: "mass", origin: { from: "counted", what: "a hang found slack" } };
  const taut = hung.reactions.map((_, each) => each).filter((each) => !hung.slack.includes(each));
  const names = taut.map((each) => words.names[each] as string);
  return reactionValue(hung.solved, taut.indexOf(index), inputs, { names, when: words.when ?? "" }) as Known<"mass">;
}
