// Bundles the command line: all of it in one script, which is run by a small starter with what V8 made of it before.
import { createHash } from "node:crypto";
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { build } from "esbuild";
import { run, top } from "./steps.mjs";

const TO = `${top}packages/cli/dist/`;
const PROGRAM = "program.cjs";

// The script is evaluated as a function of what a module is given; its own address is that of its file.
const BEFORE = "(function (require, __filename) { 'use strict';";
const ADDRESS = 'const plumbmarkAddress = require("node:url").pathToFileURL(__filename).href;';
const AFTER = "return module.exports; })";

/** The starter finds its documents beside itself, so its address stays that of its package. */
const starter = {
  name: "starter",
  setup({ onLoad }) {
    onLoad({ filter: /packages.starter.src.index\.ts$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replaceAll(
        "import.meta.url",
        'require("node:url").pathToFileURL(require.resolve("@plumbmark/starter")).href',
      ),
      loader: "ts",
    }));
  },
};

/** What takes long to set up and is seldom asked: the first question sets it up. */
const late = {
  name: "late",
  setup({ onLoad, onResolve, resolve }) {
    onResolve({ filter: /^string-width$/ }, ({ importer, kind }) =>
      kind === "import-statement" ? { path: "string-width", namespace: "late", pluginData: importer } : undefined,
    );
    onLoad({ filter: /.*/, namespace: "late" }, async ({ path, pluginData }) => {
      const found = await resolve(path, {
        kind: "require-call",
        importer: pluginData,
        resolveDir: `${top}packages/cli`,
      });
      return {
        contents: `export default (text) => require(${JSON.stringify(found.path)}).default(text);`,
        resolveDir: top,
      };
    });
  },
};

export async function bundle() {
  await oneFiles();
  const { outputFiles, metafile } = await build({
    metafile: true,
    entryPoints: { program: `${top}packages/cli/src/program.ts` },
    outdir: TO,
    outExtension: { ".js": ".cjs" },
    bundle: true,
    platform: "node",
    // In one file, a part that is imported when it is needed is still only run then. Scripts can have what V8 made of
    // them kept beside; modules cannot in every Node.js that is supported.
    format: "cjs",
    target: "node20.19",
    // Straight from the sources: never from a build that is a step behind.
    conditions: ["source"],
    plugins: [starter, late],
    define: { "import.meta.url": "plumbmarkAddress" },
    banner: { js: `${BEFORE} const module = { exports: {} }; ${ADDRESS}` },
    footer: { js: AFTER },
    minifyWhitespace: true,
    legalComments: "eof",
    write: false,
    logLevel: "warning",
    logOverride: { "require-resolve-not-external": "silent" },
  });
  const started = await build({
    entryPoints: {
      plumbmark: `${top}packages/cli/src/start/command.ts`,
      thread: `${top}packages/cli/src/start/thread.ts`,
    },
    outdir: TO,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20.19",
    minifyWhitespace: true,
    write: false,
    logLevel: "warning",
  });
  put(stamped([...outputFiles, ...started.outputFiles]));
  writeFileSync(`${TO}bundled.json`, `${JSON.stringify(packagesIn(metafile), null, 2)}\n`);
}

/** The packages of others that stand in the bundle, as folders of the workspace: their licences go with it. */
export function packagesIn({ inputs }) {
  const folders = Object.keys(inputs).flatMap((path) => {
    const [folder] = /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/u.exec(path.replace(/^[a-z-]+:/u, "")) ?? [];
    return folder === undefined || folder.includes("@plumbmark/") ? [] : [folder];
  });
  return [...new Set(folders)].sort();
}

/** What a plugin and its process share, each package as one file; the kit is small and stays as it is. */
const oneFiles = () =>
  Promise.all(
    ["calc", "core"].map((name) =>
      build({
        entryPoints: { "one-file": `${top}packages/${name}/src/index.ts` },
        outdir: `${top}packages/${name}/dist`,
        bundle: true,
        // There is one `calc` for the core, the kit and the plugin.
        external: ["@plumbmark/*"],
        platform: "node",
        format: "esm",
        target: "node20.19",
        conditions: ["source"],
        // Packages of the older kind among those that are bundled may ask for a module of Node.js.
        banner: {
          js: 'import { createRequire as requireOf } from "node:module"; const require = requireOf(import.meta.url);',
        },
        minifyWhitespace: true,
        legalComments: "eof",
        logLevel: "warning",
      }),
    ),
  );

const MARK = "@@PLUMBMARK-EDITION@@";

/** A text without other than ASCII is kept and read by the byte. What is left of it stands in patterns and comments. */
const plain = (text) => text.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`);

/** What the process of a plugin runs, which is not bundled. */
const besides = () =>
  ["calc", "core", "kit", "cli"]
    .flatMap((name) => {
      const under = `${top}packages/${name}/dist/${name === "cli" ? "plugins/" : ""}`;
      return readdirSync(under, { recursive: true }).map((path) => under + path);
    })
    .filter((path) => path.endsWith(".js"))
    .sort();

/** Every file with the hash of all of them in place of the mark, so that results of other code are never taken for its own. */
function stamped(files) {
  const hash = createHash("sha256");
  for (const { contents } of files) hash.update(contents);
  for (const path of besides()) hash.update(readFileSync(path));
  const edition = hash.digest("hex");
  return files.map(({ path, text }) => ({ path, contents: Buffer.from(plain(text.replaceAll(MARK, edition))) }));
}

/** Writes what differs, and takes away the parts of earlier bundles. */
function put(files) {
  mkdirSync(TO, { recursive: true });
  let changed = false;
  for (const { path, contents } of files) {
    if (existsSync(path) && readFileSync(path).equals(contents)) continue;
    changed ||= basename(path) === PROGRAM;
    writeFileSync(path, contents);
  }
  chmodSync(`${TO}plumbmark.js`, 0o755);
  const old = changed ? /^part-|\.code$/u : /^part-/u;
  for (const name of readdirSync(TO)) if (old.test(name)) rmSync(`${TO}${name}`);
}

/** What V8 makes of the script is kept beside it, for this Node.js: others make it when they first run. */
export function compile() {
  const kept = readdirSync(TO).some((name) => name.endsWith(".code") && name.includes(process.version));
  return kept ? 0 : run("packages/build-tools/src/compile.mjs");
}
