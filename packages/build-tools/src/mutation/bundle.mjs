// Bundles tests and sources into one function, so that a changed program starts afresh in milliseconds.
import { readFileSync, realpathSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { instrumented } from "./instrument.mjs";

/** What of the tests' own runner stands ready for them: `suite` of the tests' shim holds as much. */
export const OFFERED = [
  ...["test", "it", "describe", "expect", "inject"],
  ...["beforeAll", "afterAll", "beforeEach", "afterEach"],
];

const VITEST = `export const { ${OFFERED.join(", ")} } = globalThis.__tests;`;

/** What tests keep for a whole run is made anew with every change: what is drawn is among it. */
const ONCE_A_RUN = "export const onceARun = (name, make) => make();";

/** Source of a package of this workspace, or of a part it offers: `@plumbmark/kit/tryout`. */
function sourceOf(wanted) {
  const [scope, name, ...part] = wanted.split("/");
  const folder = realpathSync(`node_modules/${scope}/${name}`);
  const { exports } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return join(folder, exports[[".", ...part].join("/")].source);
}

/** Packages from elsewhere, and what is kept, are loaded once and handed in. */
const outside = (packages, kept) => ({
  name: "outside",
  setup({ onResolve, onLoad, resolve }) {
    const source = (path) => ({ path: kept.get(path) ?? path, ...(kept.has(path) ? { namespace: "outside" } : {}) });
    onResolve({ filter: /^vitest$/ }, () => ({ path: "vitest", namespace: "tests" }));
    onResolve({ filter: /\/run\/once-a-run\.js$/ }, () => ({ path: "once-a-run", namespace: "tests" }));
    onLoad({ filter: /.*/, namespace: "tests" }, ({ path }) => ({
      contents: path === "vitest" ? VITEST : ONCE_A_RUN,
      loader: "js",
    }));
    onResolve({ filter: /^\.+\// }, ({ path, resolveDir }) => {
      const wanted = join(resolveDir, path.replace(/\.js$/u, ".ts"));
      return kept.has(wanted) ? source(wanted) : undefined;
    });
    onResolve({ filter: /^[a-z@]/ }, async ({ path, kind, resolveDir, pluginData }) => {
      if (pluginData || path.startsWith("node:")) return undefined;
      if (path.startsWith("@plumbmark/")) return source(sourceOf(path));
      const found = await resolve(path, { kind, resolveDir, pluginData: true });
      return found.errors.length > 0 ? found : { path: found.path, namespace: "outside" };
    });
    onLoad({ filter: /.*/, namespace: "outside" }, async ({ path }) => {
      const url = pathToFileURL(path).href;
      packages.add(url);
      const names = Object.keys(await import(url)).filter(
        (name) => name !== "default" && /^[\p{L}_$][\p{L}\p{N}_$]*$/u.test(name),
      );
      const held = `globalThis.__outside.get(${JSON.stringify(url)})`;
      return {
        contents: `const held = ${held};\nexport default held.default;\n${names.map((name) => `const $${name} = held.${name}; export { $${name} as ${name} };`).join("\n")}`,
        loader: "js",
      };
    });
  },
});

const sources = (byPath) => ({
  name: "sources",
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/, namespace: "file" }, async ({ path }) => {
      const text = await readFile(path, "utf8");
      const url = JSON.stringify(pathToFileURL(path).href);
      const mutants = byPath.get(path);
      const written = mutants ? instrumented(text, mutants) : text;
      // In what is generated it stands in texts alone: samples of code.
      const contents = path.includes("/generated/") ? written : written.replaceAll("import.meta.url", url);
      return { contents, loader: "ts" };
    });
  },
});

const ONCE = "node_modules/.cache/mutation";

/** Packages from elsewhere stay where they are: what is kept and what starts afresh have the same ones. */
const apart = {
  name: "apart",
  setup({ onResolve, resolve }) {
    onResolve({ filter: /^[a-z@]/ }, async ({ path, kind, resolveDir, pluginData }) => {
      if (pluginData || path.startsWith("node:")) return undefined;
      if (path.startsWith("@plumbmark/")) return { path: sourceOf(path) };
      const found = await resolve(path, { kind, resolveDir, pluginData: true });
      return found.errors.length > 0 ? found : { path: pathToFileURL(found.path).href, external: true };
    });
  },
};

/**
 * Sources that no change touches, built as modules that stay loaded from one start to the next, by their paths.
 * @param names packages of this workspace and paths of files
 */
export async function builtOnce(names) {
  const paths = names.map((name) => (name.startsWith("@") ? sourceOf(name) : name));
  await build({
    entryPoints: paths.map((path, index) => ({ in: path, out: `kept-${index}` })),
    bundle: true,
    splitting: true,
    outdir: ONCE,
    outExtension: { ".js": ".mjs" },
    format: "esm",
    platform: "node",
    target: "node20",
    conditions: ["source", "import", "module", "default"],
    plugins: [apart, sources(new Map())],
    logLevel: "error",
  });
  return new Map(paths.map((path, index) => [path, join(process.cwd(), ONCE, `kept-${index}.mjs`)]));
}

/** One text of code that offers every file of tests when it is run, and the packages it needs. */
export async function bundled(testFiles, byPath, kept = new Map()) {
  const packages = new Set();
  const entry = testFiles.map(
    (file) => `globalThis.__tests.file(${JSON.stringify(file)}, () => require(${JSON.stringify(file)}));`,
  );
  const { outputFiles } = await build({
    stdin: { contents: entry.join("\n"), resolveDir: process.cwd(), loader: "js" },
    bundle: true,
    write: false,
    format: "cjs",
    platform: "node",
    target: "node20",
    conditions: ["source", "import", "module", "default"],
    plugins: [outside(packages, kept), sources(byPath)],
    logLevel: "error",
  });
  return { code: outputFiles[0].text, packages: [...packages] };
}
