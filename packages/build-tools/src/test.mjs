// Runs every test; the reporter of tests/ prints the sources the checks rest on and the closing line.
import { vitest } from "./vitest.mjs";

process.exitCode = vitest(process.argv.slice(2));
