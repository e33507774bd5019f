// Builds the workspace: what is generated first, then the compiler, then the command line in one piece.
//   node packages/build-tools/src/build.mjs [--without-tests]
// Without the tests: whether they are typed right is itself tried by a test, beside the others.
import { readFileSync } from "node:fs";
import { bundle, compile } from "./bundle.mjs";
import { generateComputedPaths } from "./computed-paths.mjs";
import { generateExamples } from "./examples.mjs";
import { generate } from "./generate.mjs";
import { generateGuide } from "./guide.mjs";
import { generateSearchScript } from "./search-script.mjs";
import { run, top } from "./steps.mjs";

/** Projects of the workspace but the tests. */
const withoutTests = () =>
  JSON.parse(readFileSync(`${top}tsconfig.json`, "utf8"))
    .references.map(({ path }) => path)
    .filter((path) => path !== "tests");

const projects = process.argv.includes("--without-tests") ? withoutTests() : [];

await generate();
await generateComputedPaths();
await generateExamples();
generateGuide();
await generateSearchScript();
process.exitCode = run("node_modules/typescript/bin/tsc", "-b", ...projects);
if (process.exitCode === 0) {
  await bundle();
  process.exitCode = compile();
}
