// Bundles the script of the site's search as one classic script: pages opened from a folder may load no modules.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { top } from "./steps.mjs";

const FOLDER = `${top}docs-site/src/generated/`;
const TO = `${FOLDER}search-script.ts`;

export async function generateSearchScript() {
  const { outputFiles } = await build({
    entryPoints: [`${top}docs-site/browser/search.ts`],
    bundle: true,
    minify: true,
    format: "iife",
    platform: "browser",
    target: "es2022",
    charset: "utf8",
    banner: { js: "/* The search of this site, with MiniSearch (MIT licence). */" },
    write: false,
  });
  const text = `// Generated from docs-site/browser/search.ts.\nexport const searchScript: string =\n  ${JSON.stringify(outputFiles[0].text)};\n`;
  mkdirSync(FOLDER, { recursive: true });
  if (!existsSync(TO) || readFileSync(TO, "utf8") !== text) writeFileSync(TO, text);
}
