import type { StartFile, StartOptions } from "./starter-files.js";

const SCRIPT = "pipeline/inspect.sh";

/** What any pipeline runs. `BASE` is the branch a change is to go into. */
const script = `#!/bin/sh
# What a pipeline runs: judges what a branch changes since it parted from the one it goes into, and leaves the findings
# as SARIF 2.1.0 and a summary for whoever reviews. Ends with 1 where a document is not ready.
set -eu
cd "$(dirname "$0")/.."
base="\${BASE:-origin/main}"
npm ci
npx plumbmark inspect --since "$base" --as sarif > plumbmark.sarif || test $? -eq 1
npx plumbmark inspect --since "$base" --as markdown > plumbmark.md || test $? -eq 1
npx plumbmark inspect --since "$base"
`;

const github = `name: plumbmark
on:
  pull_request:
permissions:
  contents: read
  security-events: write
jobs:
  inspect:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
        with: {fetch-depth: 0}
      - uses: actions/setup-node@v4
        with: {node-version: 22}
      - run: sh ${SCRIPT}
        env: {BASE: "origin/\${{ github.base_ref }}"}
      - if: always()
        run: cat plumbmark.md >> "$GITHUB_STEP_SUMMARY"
      - if: always()
        uses: github/codeql-action/upload-sarif@v3
        with: {sarif_file: plumbmark.sarif}
`;

const gitlab = `plumbmark:
  image: node:22
  rules:
    - if: $CI_PIPELINE_SOURCE == "merge_request_event"
  variables: {GIT_DEPTH: 0}
  script:
    - git fetch origin "$CI_MERGE_REQUEST_TARGET_BRANCH_NAME"
    - BASE="origin/$CI_MERGE_REQUEST_TARGET_BRANCH_NAME" sh ${SCRIPT}
  artifacts:
    when: always
    paths: [plumbmark.sarif, plumbmark.md]
`;

/** The pipeline file of each forge, by the name of the forge. */
const FORGES: Readonly<Record<string, StartFile>> = {
  github: { path: ".github/workflows/plumbmark.yml", text: github },
  gitlab: { path: ".gitlab-ci.yml", text: gitlab },
};

export const forges: readonly string[] = Object.keys(FORGES);

const named = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9-]+/gu, "-")
    .replace(/^-+|-+$/gu, "");

const manifest = ({ name, version }: StartOptions): string =>
  `${JSON.stringify(
    {
      name: named(name) || "builds",
      private: true,
      // Rules of the house are modules, and Node.js says so on every run where it has to find out.
      type: "module",
      scripts: { inspect: "plumbmark inspect", publish: "plumbmark publish --to site" },
      devDependencies: { plumbmark: version },
    },
    null,
    2,
  )}\n`;

/** What a repository needs that people live with: the command pinned, what git leaves out, and what a pipeline runs. */
export function livingFiles(options: StartOptions): readonly StartFile[] {
  const forge = options.forge === undefined ? undefined : FORGES[options.forge];
  return [
    { path: ".gitignore", text: "node_modules/\n/site/\n/plumbmark.sarif\n/plumbmark.md\n" },
    { path: "package.json", text: manifest(options) },
    { path: SCRIPT, text: script, mode: 0o755 },
    ...(forge ? [forge] : []),
  ];
}
