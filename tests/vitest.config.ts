import { defineConfig } from "vitest/config";

// Tests run against the sources (the "source" export condition), so that no stale build can pass them;
// the command line and the site are tested as built, see tests/command-line.
export default defineConfig({
  resolve: { conditions: ["source", "import", "module", "default"] },
  ssr: { resolve: { conditions: ["source", "import", "module", "default"] } },
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts", "packages/*/src/**/*.test.ts", "docs-site/src/**/*.test.ts"],
    exclude: ["**/node_modules/**", "**/dist/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: ["default", new URL("./reporter.ts", import.meta.url).pathname],
  },
});
