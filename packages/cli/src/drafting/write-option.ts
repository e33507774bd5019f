import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import type { Made } from "./made.js";
import { type DraftTarget, writeTo } from "./target.js";

/** Writes one option as a document. Gives the exit status: 1 when it needs what is not there. @throws Trouble */
export async function writeOption(
  { drafted }: Made,
  number: number,
  target: DraftTarget,
  replace: boolean,
  context: CommandContext,
): Promise<number> {
  const option = drafted.options[number - 1];
  if (!option) {
    const there = drafted.options.length;
    throw new Trouble(
      `There is no option ${number}.`,
      there === 0
        ? "No option meets the wish; draft it without `--option` to see why."
        : `There are ${there}: 1 to ${there}.`,
    );
  }
  await writeTo(target, option.document, replace);
  const left = option.toFindOut.length;
  context.print(
    `${target.file} is written: option ${number}, a draft. ${left} thing${left === 1 ? " is" : "s are"} still to be found out; they are listed in it under Scope.\n`,
  );
  return option.shortfall.length === 0 ? 0 : 1;
}
