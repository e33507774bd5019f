// The files whose figures and signs are changed, and the tests that have to notice.
import { readdirSync } from "node:fs";
import { posix } from "node:path";
import { top } from "../steps.mjs";

const filesIn = (folder) =>
  readdirSync(`${top}${folder}`, { withFileTypes: true }).flatMap((entry) => {
    if (["node_modules", "dist", "generated", "cases"].includes(entry.name)) return [];
    const path = `${folder}/${entry.name}`;
    return entry.isDirectory() ? filesIn(path) : [path];
  });

/** The register tells of the computation and is no part of it; its examples are checks themselves. */
const isApart = (path) =>
  path.startsWith("packages/calc/src/register/") || path.startsWith("packages/calc/src/sources/");

export const sourceFiles = () => [
  ...filesIn("packages/calc/src").filter((path) => /(?<!\.test)\.ts$/u.test(path) && !isApart(path)),
  ...filesIn("rules").filter((path) => path.endsWith("/rule.ts")),
];

/** Tests of the computation and the rules; not those of reading, writing, the terminal, the site and git. */
const TESTS = /^tests\/(?:reference|rules|properties)\/|^tests\/architecture\/register/u;

/** This one reads the sources' text and not what they do. */
const NO_USE = "tests/architecture/figures.test.ts";

export const testFiles = () =>
  filesIn("tests").filter((path) => path.endsWith(".test.ts") && TESTS.test(path) && path !== NO_USE);

/** The sources a source takes from, each as a path of the list. */
export const importsOf = (path, text) =>
  [...text.matchAll(/from "(\.[^"]+)\.js"/gu)].map(([, name]) => posix.join(posix.dirname(path), `${name}.ts`));
