import type { TestModule, Vitest } from "vitest/node";

interface Meta {
  readonly reference?: { readonly source: string; readonly basis: string };
}

/** Prints, after the usual report, how many checks rest on each published source, what failed, and the closing line. */
export default class SourcesReporter {
  onInit(_vitest: Vitest): void {}

  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[] = []): void {
    const sources = new Map<string, number>();
    let passed = 0;
    let failed = unhandled.length;
    const names: string[] = [];
    for (const module of modules) {
      if (
        module.state() === "failed" &&
        [...module.children.allTests()].every((test) => test.result().state !== "failed")
      ) {
        failed += 1;
        names.push(module.relativeModuleId);
      }
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === "passed") passed += 1;
        else if (state === "failed") {
          failed += 1;
          names.push(`${module.relativeModuleId}: ${test.fullName}`);
        }
        const { reference } = test.meta() as Meta;
        if (reference)
          sources.set(
            `${reference.source} (${reference.basis})`,
            (sources.get(`${reference.source} (${reference.basis})`) ?? 0) + 1,
          );
      }
    }
    this.#table(sources);
    // Said once more beside the closing line: the sources push the report of a failure far up.
    for (const name of names) process.stdout.write(`\nfailed: ${name}`);
    process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  }

  #table(sources: ReadonlyMap<string, number>): void {
    if (sources.size === 0) return;
    const rows = [...sources].sort((one, other) => other[1] - one[1] || one[0].localeCompare(other[0]));
    const total = rows.reduce((sum, [, count]) => sum + count, 0);
    process.stdout.write(`\nSource → checks (${total} in all)\n`);
    for (const [source, count] of rows) process.stdout.write(`${String(count).padStart(5)}  ${source}\n`);
  }
}
