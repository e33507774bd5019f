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

const isSource = (path) => /(?<!\.test)\.ts$/u.test(path);

export const sourceFiles = () => [
  ...filesIn("packages/calc/src").filter((path) => isSource(path) && !isApart(path)),
  ...filesIn("rules").filter((path) => isSource(path) && path !== "rules/index.ts"),
  ...filesIn("packages/core/src/takeoff").filter(isSource),
  ...filesIn("docs-site/src/drawings").filter((path) => isSource(path) && !path.endsWith("drawing-style.ts")),
];

/** The four parts whose shares are told. */
export const PARTS = ["packages/calc/src", "rules", "packages/core/src/takeoff", "docs-site/src/drawings"];

/** Tests of the computation, the rules, the schedules and the drawings; not those of reading, writing, pages and git. */
const TESTS =
  /^tests\/(?:reference|rules|properties|takeoff|venues|shared|site\/drawings)\/|^tests\/(?:architecture\/register|ready\/(?:approval|described|mistaken|rigging|waivers)|mend\/figures)\./u;

/** What needs a browser or a whole site, and what does not look at what a source does. */
const NO_USE = new Set([
  ...["layout", "well-formed"].map((name) => `tests/site/drawings/${name}.test.ts`),
  "tests/venues/site.test.ts",
]);

export const testFiles = () =>
  filesIn("tests").filter((path) => path.endsWith(".test.ts") && TESTS.test(path) && !NO_USE.has(path));

/**
 * What drawings are made from: no change of them touches it, so that it is built and opened once where drawings alone are
 * changed.
 */
export const KEPT_FOR_DRAWINGS = [
  ...["calc", "core", "draft", "in-place", "rules"].map((name) => `@plumbmark/${name}`),
  ...["documents/repository", "site/drawings/repository", "site/drawings/awkward", "site/drawings/read"].map(
    (name) => `${top}tests/${name}.ts`,
  ),
];

export const isOfDrawings = (path) => /(?:^|\/)(?:tests\/site\/drawings|docs-site)\//u.test(path);

/**
 * Whether a file of tests is tried on the changes of a source. Drawings come past all that is computed and look at little
 * of it: they are tried on drawings alone, and drawings by them alone.
 */
export const isTriedOn = (test, source) => isOfDrawings(test) === isOfDrawings(source);

/** The sources a source takes from, each as a path of the list. */
export const importsOf = (path, text) =>
  [...text.matchAll(/from "(\.[^"]+)\.js"/gu)].map(([, name]) => posix.join(posix.dirname(path), `${name}.ts`));
