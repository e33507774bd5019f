// Builds the workspace: what is generated first, then the compiler.
import { generate } from "./generate.mjs";
import { run } from "./steps.mjs";

await generate();
process.exitCode = run("node_modules/typescript/bin/tsc", "-b");
