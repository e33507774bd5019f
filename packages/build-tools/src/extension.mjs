// Packs the extension for editors that take .vsix files: its client in one script, and the command with its language
// server beside it. The tool that packs is installed in a folder of its own, for nobody else needs it.
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { packagesIn } from "./bundle.mjs";
import { inCommand, notices, npm, stage } from "./pack.mjs";
import { top } from "./steps.mjs";
import { wholeSchema } from "./whole-schema.mjs";

const SOURCE = join(top, "packages/editor/extension");
const PACKING = fileURLToPath(new URL("../packing/", import.meta.url));
/** Those a file of an editor can be held against; the record is nothing that is written. */
const SCHEMAS = ["build", "house-standard", "parts", "stock", "survey", "wish"];

/** The tool, once it is installed: without what it needs to sign and to publish, which are programs of one machine. */
export function packer() {
  const tool = join(PACKING, "node_modules/@vscode/vsce/vsce");
  if (!existsSync(tool)) npm(PACKING, "ci", "--omit=optional", "--ignore-scripts", "--no-audit", "--no-fund");
  return tool;
}

/** Runs the tool in a folder; gives what it prints. @throws Error with what it says when it fails */
export function vsce(folder, ...words) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [packer(), ...words], {
    cwd: folder,
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`vsce ${words.join(" ")}: ${stdout}${stderr}`);
  return `${stdout}${stderr}`;
}

const readJson = (path) => JSON.parse(readFileSync(path, "utf8"));
const writeJson = (path, data) => writeFileSync(path, `${JSON.stringify(data, null, 2)}\n`);

/** The client in one script; gives the packages of others that stand in it. */
async function client(to) {
  const { metafile } = await build({
    metafile: true,
    entryPoints: [join(SOURCE, "src/extension.ts")],
    outfile: join(to, "extension.cjs"),
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20.19",
    // The editor itself gives it.
    external: ["vscode"],
    minifyWhitespace: true,
    legalComments: "eof",
    logLevel: "warning",
  });
  return packagesIn(metafile);
}

/** What of a package the server and the processes of plugins run. */
const RUN = [
  { folder: "packages/calc", files: ["dist/one-file.js"] },
  { folder: "packages/core", files: ["dist/one-file.js"] },
  { folder: "packages/kit", files: undefined },
  { folder: "packages/cli", files: ["dist/plumbmark.js", "dist/program.cjs", "dist/thread.js", "dist/plugins"] },
];

/** A package that is one file leads there by every way. */
const oneFile = ({ exports, ...rest }) => ({ ...rest, exports: { ".": "./dist/one-file.js" } });

function server(to) {
  for (const { folder, files } of RUN) {
    const whole = join(to, "whole", folder);
    stage(folder, whole);
    const { dependencies: _, ...own } = readJson(join(whole, "package.json"));
    const home = join(to, "node_modules", own.name);
    for (const path of files ?? ["dist"])
      cpSync(join(whole, path), join(home, path), {
        recursive: true,
        // Types are for those who write rules, who install the package.
        filter: (each) => !each.endsWith(".d.ts"),
      });
    writeJson(join(home, "package.json"), files?.includes("dist/one-file.js") ? oneFile(own) : own);
  }
  rmSync(join(to, "whole"), { recursive: true });
}

/** Puts everything of the extension into a folder, as it is packed. */
async function stageExtension(to) {
  const manifest = readJson(join(SOURCE, "package.json"));
  const { version } = readJson(join(top, "packages/plumbmark/package.json"));
  writeJson(join(to, "package.json"), { ...manifest, version });
  cpSync(join(SOURCE, "README.md"), join(to, "README.md"));
  cpSync(join(top, "packages/plumbmark/CHANGELOG.md"), join(to, "CHANGELOG.md"));
  cpSync(join(top, "LICENSE"), join(to, "LICENSE"));
  mkdirSync(join(to, "schema"));
  // An editor need not follow a reference from one schema to another: each is whole in itself.
  const all = Object.fromEntries(
    SCHEMAS.map((name) => `${name}.schema.json`).map((file) => [
      file,
      readJson(join(top, "packages/core/schema", file)),
    ]),
  );
  for (const [file, schema] of Object.entries(all))
    writeFileSync(join(to, "schema", file), `${JSON.stringify(wholeSchema(schema, all))}\n`);
  const inClient = await client(to);
  server(join(to, "server"));
  writeFileSync(join(to, "NOTICES.md"), notices([...new Set([...inCommand(), ...inClient])].sort(), "extension"));
}

/** Packs the extension into a folder; gives the path of the packed file and what the tool lists as its files. */
export async function packExtension(to) {
  if (!existsSync(join(top, "packages/cli/dist/program.cjs")))
    throw new Error("The command is not built; run `npm run build` first.");
  const staging = mkdtempSync(join(tmpdir(), "plumbmark-extension-"));
  try {
    await stageExtension(staging);
    const { name, version } = readJson(join(staging, "package.json"));
    const path = join(resolve(to), `${name}-${version}.vsix`);
    mkdirSync(dirname(path), { recursive: true });
    const files = vsce(staging, "ls", "--no-dependencies").trim().split("\n");
    vsce(staging, "package", "--no-dependencies", "--out", path);
    return { path, files };
  } finally {
    rmSync(staging, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [, , to = join(top, "packed")] = process.argv;
  const { path, files } = await packExtension(to);
  console.log(`${path}: ${files.length} files, ${(statSync(path).size / 1e6).toFixed(2)} MB`);
}
