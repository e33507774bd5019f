// Packs every package as it is published: built files only, without what is meant for the workspace.
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { transformSync } from "esbuild";
import { top } from "./steps.mjs";

const FOLDERS = [
  "packages/in-place",
  "packages/calc",
  "packages/core",
  "packages/kit",
  "rules",
  "packages/draft",
  "packages/starter",
  "docs-site",
  "packages/editor",
  "packages/cli",
];
/** What one machine or this workspace alone can use. */
const LEFT_OUT = /\.tsbuildinfo$|\.map$|\.code$|\.test\.(js|d\.ts)$/u;

/** Code nobody reads: half of it is blanks and long names. */
const GENERATED = ["dist/generated/validators.js"];

function shorten(to) {
  for (const path of GENERATED.map((each) => join(to, each)).filter((each) => existsSync(each))) {
    const { code } = transformSync(readFileSync(path, "utf8"), { format: "esm", minify: true, target: "node20" });
    writeFileSync(path, code);
  }
}

/** The condition that leads the workspace's tests to the sources leads nowhere outside of it. */
function published({ exports, devDependencies: _, private: __, scripts: ___, ...rest }) {
  const outside = Object.entries(exports).map(([path, { source: ____, ...conditions }]) => [path, conditions]);
  return { ...rest, exports: Object.fromEntries(outside) };
}

const readme = ({ name, description }) =>
  `# ${name}\n\n${description}. A part of Plumbmark: design-rule inspection for modular LED display build documents.\n\nIt supports, and does not replace, local codes, the maker's instructions and the judgement of licensed electricians, engineers and qualified riggers.\n`;

/** A package of ours as it is published, in a folder. */
export function stage(folder, to) {
  const own = JSON.parse(readFileSync(join(top, folder, "package.json"), "utf8"));
  mkdirSync(to, { recursive: true });
  for (const name of own.files)
    cpSync(join(top, folder, name), join(to, name), { recursive: true, filter: (path) => !LEFT_OUT.test(path) });
  shorten(to);
  cpSync(join(top, "LICENSE"), join(to, "LICENSE"));
  const more = join(top, folder, "README.md");
  writeFileSync(join(to, "README.md"), readme(own) + (existsSync(more) ? `\n${readFileSync(more, "utf8")}` : ""));
  writeFileSync(join(to, "package.json"), `${JSON.stringify(published(own), null, 2)}\n`);
}

/** Runs npm in a folder; gives what it prints. @throws Error with what it says when it fails */
export function npm(folder, ...words) {
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

/** What the one package to install is made of; the rest of the workspace is in the bundle of the command. */
const WHOLE = ["packages/calc", "packages/core", "packages/kit", "packages/starter", "packages/cli"];

const packageOf = (folder) => JSON.parse(readFileSync(join(top, folder, "package.json"), "utf8"));

const isOurs = (name) => name.startsWith("@plumbmark/");

/** The packages of others in the bundle of the command, as folders of the workspace. */
export const inCommand = () => JSON.parse(readFileSync(join(top, "packages/cli/dist/bundled.json"), "utf8"));

/** Licence and name of every package whose code stands in a bundle. */
export function notices(folders, of) {
  const texts = folders.map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(top, folder, "package.json"), "utf8"));
    const file = readdirSync(join(top, folder)).find((each) => /^licen[cs]e(\.|$)/iu.test(each));
    const text = file === undefined ? "" : `\n\n${readFileSync(join(top, folder, file), "utf8").trim()}`;
    return `## ${name} ${version} (${license ?? "see its licence"})${text}\n`;
  });
  return `# Work of others in the ${of}\n\n${texts.join("\n")}`;
}

/** Packs the one package to install: the command, the kit, the try-out and the schemas, with all of ours it is made of. */
export function packWhole(to) {
  const staging = mkdtempSync(join(tmpdir(), "plumbmark-pack-"));
  const staged = join(staging, "plumbmark");
  mkdirSync(to, { recursive: true });
  try {
    const own = packageOf("packages/plumbmark");
    mkdirSync(staged);
    for (const name of own.files.filter((each) => existsSync(join(top, "packages/plumbmark", each))))
      cpSync(join(top, "packages/plumbmark", name), join(staged, name), { recursive: true });
    cpSync(join(top, "packages/plumbmark/README.md"), join(staged, "README.md"));
    cpSync(join(top, "LICENSE"), join(staged, "LICENSE"));
    cpSync(join(top, "packages/core/schema"), join(staged, "schema"), { recursive: true });
    writeFileSync(join(staged, "NOTICES.md"), notices(inCommand(), "command"));
    const parts = WHOLE.map((folder) => ({ folder, own: packageOf(folder) }));
    for (const {
      folder,
      own: { name },
    } of parts) {
      stage(folder, join(staged, "node_modules", name));
      // What is in the bundle need not be there to be installed.
      const file = join(staged, "node_modules", name, "package.json");
      const { dependencies = {}, ...rest } = JSON.parse(readFileSync(file, "utf8"));
      const kept = Object.entries(dependencies).filter(
        ([each]) => !isOurs(each) || parts.some((one) => one.own.name === each),
      );
      writeFileSync(file, `${JSON.stringify({ ...rest, dependencies: Object.fromEntries(kept) }, null, 2)}\n`);
    }
    const others = parts.flatMap(({ own: { dependencies = {} } }) =>
      Object.entries(dependencies).filter(([name]) => !isOurs(name)),
    );
    const ours = parts.map(({ own: { name, version } }) => [name, version]);
    const manifest = {
      ...own,
      bin: { plumbmark: "./plumbmark.js" },
      dependencies: Object.fromEntries([...others, ...ours].sort(([one], [other]) => (one < other ? -1 : 1))),
      bundleDependencies: ours.map(([name]) => name),
    };
    writeFileSync(join(staged, "package.json"), `${JSON.stringify(manifest, null, 2)}\n`);
    const [{ filename }] = JSON.parse(npm(staged, "pack", "--json", "--pack-destination", resolve(to)));
    return join(resolve(to), filename);
  } finally {
    rmSync(staging, { recursive: true, force: true });
  }
}

/** Packs every package into a folder; gives the paths of the packed files, in the order they depend on one another. */
export function packAll(to) {
  const staging = mkdtempSync(join(tmpdir(), "plumbmark-pack-"));
  mkdirSync(to, { recursive: true });
  try {
    const staged = FOLDERS.map((folder) => {
      if (!existsSync(join(top, folder, "dist")))
        throw new Error(`${folder} is not built; run \`npm run build\` first.`);
      stage(folder, join(staging, folder));
      return `./${folder}`;
    });
    // All of them at once: npm takes longer to start than to pack.
    const packed = JSON.parse(npm(staging, "pack", ...staged, "--json", "--pack-destination", resolve(to)));
    if (packed.length !== FOLDERS.length) throw new Error(`npm packed ${packed.length} of ${FOLDERS.length} packages.`);
    return packed.map(({ filename }) => join(resolve(to), filename));
  } finally {
    rmSync(staging, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [, , to = join(top, "packed")] = process.argv;
  for (const path of [...packAll(to), packWhole(to)]) console.log(path);
}
