import { decode, LARGEST, type Text } from "../files/read-text.js";
import { answer } from "./run.js";

const NEWLINE = 10;

const gone: Text = {
  problem: { says: "Git does not have the content of the file.", mend: "Fetch it, or stage the file again." },
};

const large = (size: number): Text => ({
  problem: {
    says: `The file is ${(size / 1e6).toFixed(1)} MB large; at most ${(LARGEST / 1e6).toFixed(1)} MB are read.`,
    mend: "Split it, or move what is not a build document elsewhere.",
  },
});

/** Contents by git's names of them, all in one question: a program started for each would take a hundred times as long. */
export async function readBlobs(folder: string, ids: readonly string[]): Promise<ReadonlyMap<string, Text>> {
  const wanted = [...new Set(ids)];
  const texts = new Map<string, Text>();
  if (wanted.length === 0) return texts;
  const bytes = await answer(folder, ["cat-file", "--batch"], `${wanted.join("\n")}\n`);
  let at = 0;
  for (const id of wanted) {
    const end = bytes.indexOf(NEWLINE, at);
    const [, kind, written] = bytes.toString("latin1", at, end).split(" ");
    at = end + 1;
    if (kind !== "blob" || written === undefined) {
      texts.set(id, gone);
      continue;
    }
    const size = Number(written);
    texts.set(id, size > LARGEST ? large(size) : decode(bytes.subarray(at, at + size)));
    at += size + 1;
  }
  return texts;
}
