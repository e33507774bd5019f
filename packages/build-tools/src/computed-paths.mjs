// Writes down the path and kind of every computed value, so that an inspection need not work them out.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { runInThisContext } from "node:vm";
import { build } from "esbuild";
import { top } from "./steps.mjs";

const TO = `${top}packages/core/src/generated/computed-paths.ts`;
const FROM = `import { emptyBuild } from "./packages/core/src/own-rules/empty-build.ts";
export const paths = [...emptyBuild().values].map(([path, { kind }]) => [path, kind]);`;

export async function generateComputedPaths() {
  const { outputFiles } = await build({
    stdin: { contents: FROM, resolveDir: top, loader: "ts" },
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20.19",
    conditions: ["source"],
    write: false,
  });
  const module = { exports: {} };
  runInThisContext(`(function (module, require) {${outputFiles[0].text}\n})`)(module, createRequire(import.meta.url));
  const { paths } = module.exports;
  const type = "readonly (readonly [path: string, kind: string])[]";
  const text = `// Generated from the computed values of a build.\nexport const computedPaths: ${type} = ${JSON.stringify(paths)};\n`;
  if (!existsSync(TO) || readFileSync(TO, "utf8") !== text) writeFileSync(TO, text);
}
