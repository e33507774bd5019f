import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, inject, test } from "vitest";
import { plumbmark } from "../plumbmark.js";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";

const top = fileURLToPath(new URL("../..", import.meta.url));
const readme = readFileSync(join(top, "README.md"), "utf8");
/** A command, and the block behind it that is what it prints. */
const SHOWN = /```\nplumbmark (.+)\n```\n\n```\n([\s\S]*?)\n```/gu;
const shown = [...readme.matchAll(SHOWN)].map(([, command = "", printed = ""]) => [command, printed] as const);

/** All in a deep run; else two of them, others in each run. */
const { deep, seed } = inject("effort");
const tried = deep ? shown : some(shown, 2, seed);

test("README shows what commands print", () => expect(shown.length).toBeGreaterThan(4));

// `npm run build`, then `node packages/build-tools/src/tour.mjs` writes it anew.
test.each(notEmpty(tried))("README shows what `plumbmark %s` prints", async (command, printed) => {
  const words = command.replaceAll("my-builds", "packages/starter/repository").split(" ");
  const { status, out } = await plumbmark(top, words, { width: 110 });
  expect(status).not.toBe(2);
  expect(out.trimEnd()).toBe(printed);
});
