import { setTimeout } from "node:timers/promises";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { openRepository, type RepositoryFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, inject, test } from "vitest";
import { starter, TODAY } from "../documents/repository.js";

// ECMAScript 2024, 26.1: a WeakRef keeps its target to the end of the job it was made or looked at in, and no longer.
setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

const BANNER = "builds/over-stage-banner.md";
const STRIPS = "builds/side-strips.md";
const { deep } = inject("effort");
/** A quick run types less: as many builds have to be gone as it comes to in the turns before the last. */
const TURNS = deep ? 10 : 6;

/** What is edited and one more: every one of them is looked at first. */
const few = (): RepositoryFiles => {
  const { documents, ...files } = starter();
  const kept = documents.filter(({ path }) => [BANNER, STRIPS, "builds/small-screen.md"].includes(path));
  expect(kept).toHaveLength(3);
  return { ...files, documents: kept };
};

const revised = (text: string, turn: number): string =>
  text.replace(/^revision: \d+$/mu, () => `revision: ${turn + 20}`);

test.each([
  ["the front matter", [BANNER], revised],
  ["the body", [BANNER], (text: string, turn: number) => `${text}\nLine ${turn}.\n`],
  [
    "the height of a guess",
    [BANNER],
    (text: string, turn: number) => text.replace("trim: 11 ft", `trim: ${turn + 12} ft ?`),
  ],
  ["what cannot be read", [BANNER], (text: string, turn: number) => text.replace("trim: 11 ft", `trim: ${turn + 12}`)],
  ["two documents in turns", [BANNER, STRIPS], revised],
] as const)("what was worked out of a document before its last edits is let go: %s", async (_, edited, edit) => {
  const files = few();
  const repository = openRepository(files, rules, { today: TODAY, keep: "models", written: true });
  repository.all();
  const before: WeakRef<object>[] = [];
  for (let turn = 0; turn < TURNS; turn += 1) {
    const path = edited[turn % edited.length] as string;
    const text = files.documents.find((each) => each.path === path)?.text ?? "";
    const next = edit(text, turn);
    expect(next).not.toBe(text);
    repository.replace(path, next);
    before.push(new WeakRef(repository.one(path).build));
    await setTimeout(0);
  }
  collect();
  await setTimeout(0);
  collect();
  // The last one of each is there, and the one before it may be: it is compared with.
  const gone = before.slice(0, -2 * edited.length);
  expect(gone.length).toBeGreaterThan(0);
  expect(gone.filter((build) => build.deref() !== undefined)).toHaveLength(0);
});
