// Bundles the command line: one file to start from, and a file for each part that only some commands need.
import { createHash } from "node:crypto";
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { top } from "./steps.mjs";

const TO = `${top}packages/cli/dist/`;

// Modules of the older kind ask for those of Node.js by `require`.
const REQUIRE =
  'import { createRequire as plumbmarkRequire } from "node:module"; const require = plumbmarkRequire(import.meta.url);';

export async function bundle() {
  const { outputFiles } = await build({
    entryPoints: {
      plumbmark: `${top}packages/cli/src/command.ts`,
      thread: `${top}packages/cli/src/threads/thread.ts`,
    },
    outdir: TO,
    bundle: true,
    splitting: true,
    chunkNames: "part-[name]-[hash]",
    platform: "node",
    format: "esm",
    target: "node20.19",
    // Straight from the sources: never from a build that is a step behind.
    conditions: ["source"],
    // The starter finds its documents beside itself.
    external: ["@plumbmark/starter"],
    banner: { js: REQUIRE },
    minifyWhitespace: true,
    legalComments: "eof",
    charset: "utf8",
    write: false,
    logLevel: "warning",
  });
  put(stamped(outputFiles));
}

const MARK = "@@PLUMBMARK-EDITION@@";

/** Every file with the hash of all of them in place of the mark, so that results of other code are never taken for its own. */
function stamped(files) {
  const hash = createHash("sha256");
  for (const { contents } of files) hash.update(contents);
  const edition = hash.digest("hex");
  return files.map(({ path, text }) => ({ path, contents: Buffer.from(text.replaceAll(MARK, edition)) }));
}

/** Writes what differs, and takes away the parts of earlier bundles. */
function put(files) {
  mkdirSync(TO, { recursive: true });
  const kept = new Set(files.map(({ path }) => path));
  for (const { path, contents } of files)
    if (!existsSync(path) || !readFileSync(path).equals(contents)) writeFileSync(path, contents);
  chmodSync(`${TO}plumbmark.js`, 0o755);
  for (const name of readdirSync(TO)) if (name.startsWith("part-") && !kept.has(`${TO}${name}`)) rmSync(`${TO}${name}`);
}
