// Packs every package as it is published: built files only, without what is meant for the workspace.
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { top } from "./steps.mjs";

const FOLDERS = [
  "packages/in-place",
  "packages/calc",
  "packages/core",
  "packages/kit",
  "rules",
  "packages/starter",
  "docs-site",
  "packages/cli",
];
const LEFT_OUT = /\.tsbuildinfo$|\.map$|\.test\.(js|d\.ts)$/u;

/** The condition that leads the workspace's tests to the sources leads nowhere outside of it. */
function published({ exports, devDependencies: _, private: __, scripts: ___, ...rest }) {
  const outside = Object.entries(exports).map(([path, { source: ____, ...conditions }]) => [path, conditions]);
  return { ...rest, exports: Object.fromEntries(outside) };
}

const readme = ({ name, description }) =>
  `# ${name}\n\n${description}. A part of Plumbmark: design-rule inspection for modular LED display build documents.\n\nIt supports, and does not replace, local codes, the maker's instructions and the judgement of licensed electricians, engineers and qualified riggers.\n`;

function stage(folder, to) {
  const own = JSON.parse(readFileSync(join(top, folder, "package.json"), "utf8"));
  mkdirSync(to, { recursive: true });
  for (const name of own.files)
    cpSync(join(top, folder, name), join(to, name), { recursive: true, filter: (path) => !LEFT_OUT.test(path) });
  cpSync(join(top, "LICENSE"), join(to, "LICENSE"));
  const more = join(top, folder, "README.md");
  writeFileSync(join(to, "README.md"), readme(own) + (existsSync(more) ? `\n${readFileSync(more, "utf8")}` : ""));
  writeFileSync(join(to, "package.json"), `${JSON.stringify(published(own), null, 2)}\n`);
}

function npm(folder, ...words) {
  const path = process.env.npm_execpath;
  const [command, args] = path ? [process.execPath, [path, ...words]] : ["npm", words];
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd: folder,
    encoding: "utf8",
    shell: !path && process.platform === "win32",
  });
  if (status !== 0) throw new Error(`npm ${words.join(" ")}: ${stderr}`);
  return stdout;
}

/** Packs every package into a folder; gives the paths of the packed files, in the order they depend on one another. */
export function packAll(to) {
  const staging = mkdtempSync(join(tmpdir(), "plumbmark-pack-"));
  mkdirSync(to, { recursive: true });
  try {
    return FOLDERS.map((folder) => {
      if (!existsSync(join(top, folder, "dist")))
        throw new Error(`${folder} is not built; run \`npm run build\` first.`);
      const staged = join(staging, folder);
      stage(folder, staged);
      const [{ filename }] = JSON.parse(npm(staged, "pack", "--json", "--pack-destination", resolve(to)));
      return join(resolve(to), filename);
    });
  } finally {
    rmSync(staging, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [, , to = join(top, "packed")] = process.argv;
  for (const path of packAll(to)) console.log(path);
}
