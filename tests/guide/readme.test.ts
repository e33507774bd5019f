import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { plumbmark } from "../plumbmark.js";
import { notEmpty } from "../run/not-empty.js";

const top = fileURLToPath(new URL("../..", import.meta.url));
const readme = readFileSync(join(top, "README.md"), "utf8");
/** A command, and the block behind it that is what it prints. */
const SHOWN = /```\nplumbmark (.+)\n```\n\n```\n([\s\S]*?)\n```/gu;
const shown = [...readme.matchAll(SHOWN)].map(([, command = "", printed = ""]) => [command, printed] as const);

// `npm run build`, then `node packages/build-tools/src/tour.mjs` writes it anew.
test.each(notEmpty(shown))("README shows what `plumbmark %s` prints", async (command, printed) => {
  const words = command.replaceAll("my-builds", "packages/starter/repository").split(" ");
  const { status, out } = await plumbmark(top, words, { width: 110 });
  expect(status).not.toBe(2);
  expect(out.trimEnd()).toBe(printed);
});
