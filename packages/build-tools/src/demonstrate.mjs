// Inspects and publishes the starter's documents with the built command, as its user would.
import { run } from "./steps.mjs";

const CANNOT = 2;

console.log("$ plumbmark inspect packages/starter/repository\n");
const status = run("packages/cli/dist/plumbmark.js", "inspect", "packages/starter/repository");

console.log("\n$ plumbmark publish packages/starter/repository --to site\n");
const published = run("packages/cli/dist/plumbmark.js", "publish", "packages/starter/repository", "--to", "site");

// The starter holds a document that is not ready on purpose: only an inspection that could not be carried out is a failure.
process.exitCode = (status === 0 || status === 1) && published === 0 ? 0 : CANNOT;
