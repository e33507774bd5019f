import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, expect, test } from "vitest";
import { plumbmark } from "../../../../tests/plumbmark.js";

// A plugin is code that is run. It comes from the docs repository or from an installed package, and from nowhere else.

const scratch = mkdtempSync(join(tmpdir(), "plumbmark-target-"));
const folder = join(scratch, "docs");
const mark = join(scratch, "was-run");
const outside = join(scratch, "outside.mjs");
mkdirSync(join(folder, "builds"), { recursive: true });
writeFileSync(join(folder, "builds/a.md"), "---\nbuild: a\n---\n");
writeFileSync(outside, `import { writeFileSync } from "node:fs";\nwriteFileSync(${JSON.stringify(mark)}, "");\n`);
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

test.each([
  pathToFileURL(outside).href,
  `data:text/javascript,import("node:fs").then(({writeFileSync:w})=>w(${JSON.stringify(mark)},""))`,
  outside,
  "../outside.mjs",
  "./builds/../../outside.mjs",
  "some-package/../../outside.mjs",
  "@scope/../../outside.mjs",
  "C:\\outside.mjs",
  "..\\outside.mjs",
  "%2e%2e/outside.mjs",
  "node:fs",
  "https://example.org/rules.mjs",
  "./outside.mjs\0.mjs",
  `./${"a".repeat(300)}.mjs`,
])("%j is not loaded, and told with its place", async (name) => {
  writeFileSync(
    join(folder, "house-standard.yaml"),
    `house-standard: House\nrules-from:\n  - ${JSON.stringify(name)}\n`,
  );
  const { status, err } = await plumbmark(folder, ["inspect"]);
  expect(status).toBe(2);
  expect(err).toContain("house-standard.yaml:3:5: ");
  expect(err).not.toContain("mistake in Plumbmark");
  expect(() => rmSync(mark)).toThrow("ENOENT");
});
