import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { main } from "@plumbmark/cli";
import fc from "fast-check";
import { afterAll, beforeAll, describe } from "vitest";
import { SMALL } from "../documents/repository.js";
import { PARTS, RICH, STOCK, TODAY } from "./base.js";
import { fuzz } from "./cases.js";
import { NAMES } from "./odd.js";

let top: string;
/** A docs repository that nobody may change, deep enough that `../..` stays among these files. */
let docs: string;

const put = (path: string, text: string): void => {
  mkdirSync(join(docs, path, ".."), { recursive: true });
  writeFileSync(join(docs, path), text);
};

beforeAll(() => {
  top = mkdtempSync(join(tmpdir(), "plumbmark-fuzz-"));
  docs = join(top, "one/two/docs");
  put("house-standard.yaml", RICH);
  put("parts/all.yaml", PARTS);
  put("stock.yaml", STOCK);
  put("builds/a.md", SMALL);
  put("builds/broken.md", "---\nbuild: [\n---\n");
  put("notes.md", "# Notes\n");
});

afterAll(() => rmSync(top, { recursive: true, force: true }));

const COMMANDS = ["inspect", "workings", "takeoff", "rules", "publish", "start", "hook", "help", "inspekt"];
const OPTIONS = [
  "--as",
  "--as=json",
  "--every",
  "--staged",
  "--since",
  "--standard",
  "--no-plugins",
  "--against",
  "--to",
  "--remove",
  "--help",
  "--version",
  "-v",
  "-h",
  "-x",
  "--",
  "--to=",
  "--standard=house-standard.yaml",
];
const VALUES = [
  "json",
  "text",
  "sarif",
  "gnu",
  "markdown",
  "csv",
  "poem",
  "builds/a.md",
  "builds/broken.md",
  "builds",
  ".",
  "..",
  "../..",
  "notes.md",
  "house-standard.yaml",
  "parts/all.yaml",
  "nowhere.md",
  "/dev/null",
  "/dev/null/x",
  "HEAD",
  "-",
  "rule",
  "two-riggers",
  "parts",
  "cables",
  "faces",
  "power.circuit-load",
  "builds/a.md/x",
  "a".repeat(300),
  "site",
];
const word = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...OPTIONS) },
  { weight: 5, arbitrary: fc.constantFrom(...VALUES) },
  { weight: 1, arbitrary: fc.constantFrom(...NAMES) },
  // No word of a command line can hold a zero byte.
  {
    weight: 1,
    arbitrary: fc.string({ maxLength: 8, unit: "binary" }).map((text) => text.replaceAll("\0", "").replaceAll("/", "")),
  },
);

/** Files of the repository after a command: those that were there are as they were. */
function refuseChanged(work: string): void {
  for (const path of readdirSync(docs, { recursive: true, encoding: "utf8" })) {
    if (!statSync(join(docs, path)).isFile()) continue;
    if (readFileSync(join(docs, path), "utf8") !== readFileSync(join(work, path), "utf8"))
      throw new Error(`${path} was changed`);
  }
}

let runs = 0;

/** Every command line has a copy of its own to work in, and nothing outside it is touched. */
async function run(words: readonly string[]): Promise<void> {
  let [out, err] = ["", ""];
  runs += 1;
  const place = join(top, String(runs));
  const work = join(place, "one/two/docs");
  cpSync(docs, work, { recursive: true });
  try {
    const print = (text: string): void => {
      out += text;
    };
    const warn = (text: string): void => {
      err += text;
    };
    const status = await main(words, { folder: work, today: TODAY, width: 80, colour: 0, print, warn }, "0.0.0");
    if (![0, 1, 2].includes(status)) throw new Error(`the exit status is ${status}`);
    if (/mistake in Plumbmark|^\s+at /mu.test(err)) throw new Error(err);
    if (status === 2 && !/^plumbmark: \S/mu.test(err)) throw new Error(`status 2 and nothing said: ${err}`);
    if (status !== 2 && out === "") throw new Error(`status ${status} and nothing printed: ${err}`);
    refuseChanged(work);
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
}

const line = fc.oneof(
  fc
    .tuple(fc.constantFrom(...COMMANDS), fc.array(word, { maxLength: 4 }))
    .map(([command, words]) => [command, ...words]),
  fc.array(word, { maxLength: 3 }),
);

describe("whatever the command line, it is carried out or refused by a sentence", () => {
  fuzz("command lines", { share: 12, of: line, holds: run });
});
