import { setTimeout } from "node:timers/promises";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { starter, TODAY } from "../documents/repository.js";

// ECMAScript 2024, 26.1: a WeakRef keeps its target to the end of the job it was made or looked at in, and no longer.
setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

const EDITED = "builds/over-stage-banner.md";

test.each([
  ["the front matter", (text: string, turn: number) => text.replace("revision: 4", `revision: ${turn + 5}`)],
  ["the body", (text: string, turn: number) => `${text}\nLine ${turn}.\n`],
  ["the height of a guess", (text: string, turn: number) => text.replace("trim: 11 ft", `trim: ${turn + 9} ft ?`)],
  ["what cannot be read", (text: string, turn: number) => text.replace("trim: 11 ft", `trim: ${turn + 9}`)],
])("what was worked out of a document before its last edits is let go: %s", async (_, edited) => {
  const files = starter();
  const text = files.documents.find(({ path }) => path === EDITED)?.text ?? "";
  const repository = openRepository(files, rules, { today: TODAY, keep: "models", written: true });
  repository.all();
  const before: WeakRef<object>[] = [];
  for (let turn = 0; turn < 8; turn += 1) {
    const next = edited(text, turn);
    expect(next).not.toBe(text);
    repository.replace(EDITED, next);
    before.push(new WeakRef(repository.one(EDITED).build));
    await setTimeout(0);
  }
  collect();
  await setTimeout(0);
  collect();
  // The last one is there, and the one before may be: it is compared with.
  expect(before.slice(0, -2).filter((build) => build.deref() !== undefined)).toHaveLength(0);
});

test("and so where two documents are edited in turns", async () => {
  const files = starter();
  const repository = openRepository(files, rules, { today: TODAY, keep: "models", written: true });
  repository.all();
  const before: WeakRef<object>[] = [];
  for (let turn = 0; turn < 12; turn += 1) {
    const path = turn % 2 === 0 ? EDITED : "builds/side-strips.md";
    const text = files.documents.find((each) => each.path === path)?.text ?? "";
    const next = text.replace(/^revision: \d+$/mu, `revision: ${turn + 20}`);
    expect(next).not.toBe(text);
    repository.replace(path, next);
    before.push(new WeakRef(repository.one(path).build));
    await setTimeout(0);
  }
  collect();
  await setTimeout(0);
  collect();
  // Of each the last one, and the one before it.
  expect(before.slice(0, -4).filter((build) => build.deref() !== undefined)).toHaveLength(0);
});
