import { type CommandContext, main } from "@plumbmark/cli";

/** What a command came to: its exit status, and what it printed and told. */
export interface Told {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Carries a command out in a folder as the program does, without colour, 100 columns wide, on 2026-11-25 unless told. */
export async function plumbmark(
  folder: string,
  words: readonly string[],
  more: Partial<CommandContext> = {},
): Promise<Told> {
  let [out, err] = ["", ""];
  const context: CommandContext = {
    folder,
    today: "2026-11-25",
    width: 100,
    colour: 0,
    print: (text) => {
      out += text;
    },
    warn: (text) => {
      err += text;
    },
    ...more,
  };
  const status = await main(words, context, "0.0.0");
  return { status, out, err };
}
