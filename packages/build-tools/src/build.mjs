// Builds the workspace: what is generated first, then the compiler, then the command line in one piece.
import { bundle, compile } from "./bundle.mjs";
import { generateComputedPaths } from "./computed-paths.mjs";
import { generateExamples } from "./examples.mjs";
import { generate } from "./generate.mjs";
import { generateGuide } from "./guide.mjs";
import { generateSearchScript } from "./search-script.mjs";
import { run } from "./steps.mjs";

await generate();
await generateComputedPaths();
await generateExamples();
generateGuide();
await generateSearchScript();
process.exitCode = run("node_modules/typescript/bin/tsc", "-b");
if (process.exitCode === 0) {
  await bundle();
  process.exitCode = compile();
}
